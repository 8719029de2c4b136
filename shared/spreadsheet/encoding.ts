/** How a list's letters were written down. The first three are told by a mark at the start or by being right throughout. */
export type Writing = 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252'

const startsWith = (bytes: Uint8Array, ...mark: number[]): boolean =>
  mark.every((byte, index) => bytes[index] === byte)

/** The writing that a mark at the very start names (EF BB BF, FF FE, FE FF); undefined where there is no mark. */
export function markedWriting(first: Uint8Array): Writing | undefined {
  if (startsWith(first, 0xef, 0xbb, 0xbf)) return 'utf-8'
  if (startsWith(first, 0xff, 0xfe)) return 'utf-16le'
  if (startsWith(first, 0xfe, 0xff)) return 'utf-16be'
  return undefined
}

/** Watches a list go by, piece by piece, and tells its writing: UTF-8 while every byte of it is right, else windows-1252. */
export type WritingWatch = { feed: (bytes: Uint8Array) => void; end: () => Writing }

/**
 * Starts a watch over a list's bytes. A mark at the start decides at once. Text of one byte a letter that happens to be right UTF-8
 * throughout is taken as such: for plain letters the two are the same.
 */
export function watchWriting(): WritingWatch {
  const strict = new TextDecoder('utf-8', { fatal: true })
  let found: Writing | undefined
  let begun = false
  const tryOut = (bytes: Uint8Array, more: boolean) => {
    try {
      strict.decode(bytes, { stream: more })
    } catch (error) {
      if (!(error instanceof TypeError)) throw error
      found = 'windows-1252'
    }
  }
  return {
    feed: (bytes) => {
      if (!begun) found = markedWriting(bytes)
      begun = true
      if (found === undefined) tryOut(bytes, true)
    },
    end: () => {
      if (found === undefined) tryOut(new Uint8Array(), false)
      return found ?? 'utf-8'
    },
  }
}

/** Turns bytes of a writing into text, piece by piece; its mark at the start is left out, a letter cut by two pieces is kept whole. */
export function textOf(writing: Writing): (bytes: Uint8Array, more: boolean) => string {
  const decoder = new TextDecoder(writing)
  return (bytes, more) => decoder.decode(bytes, { stream: more })
}

const others: [mark: number[], sentence: string][] = [
  [
    [0x50, 0x4b, 0x03, 0x04],
    'This is a workbook. Open it in your spreadsheet and keep the sheet as CSV, then choose that.',
  ],
  [
    [0xd0, 0xcf, 0x11, 0xe0],
    'This is an older workbook. Open it in your spreadsheet and keep the sheet as CSV, then choose that.',
  ],
  [
    [0x25, 0x50, 0x44, 0x46],
    'This is a printed page (PDF). Ask the merchant for the list as CSV or as a spreadsheet.',
  ],
]

/** Why a thing can't be a list at all, from its first bytes, in a sentence with the way out; undefined where it may be one. */
export function notAList(first: Uint8Array): string | undefined {
  if (first.length === 0) return 'There is nothing in it. Choose another list.'
  const known = others.find(([mark]) => startsWith(first, ...mark))
  if (known) return known[1]
  if (markedWriting(first)?.startsWith('utf-16')) return undefined
  const blanks = first.reduce((count, byte) => count + (byte === 0 ? 1 : 0), 0)
  return blanks > first.length / 50
    ? 'This isn’t a list of words and figures. Ask the merchant for the list as CSV.'
    : undefined
}
