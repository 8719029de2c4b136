/** What a person wrote: names, titles, notes. It is shown as it stands in every language. */
export type OwnWords = {
  add: (text: string) => void
  has: (text: string) => boolean
  /** Those of two words or more that stand in a text, the longest first: no message may be found across their edges. */
  within: (text: string) => string[]
  /** Grows with each word not seen before. */
  count: () => number
}

const starts = /[\p{L}\p{N}][\p{L}\p{M}\p{N}’'-]*/gu

export function ownWords(): OwnWords {
  const known = new Set<string>()
  /** Those of two words or more, by the word they begin with. */
  const long = new Map<string, string[]>()

  function addLine(text: string): void {
    if (!/\p{L}{2}/u.test(text) || known.has(text)) return
    known.add(text)
    const [first] = text.match(starts) ?? []
    if (first !== undefined && /\s/.test(text)) long.set(first, [...(long.get(first) ?? []), text])
  }
  return {
    // Each line of a longer text may be shown by itself.
    add: (text) => [text, ...text.split('\n')].forEach((line) => addLine(line.trim())),
    has: (text) => known.has(text),
    within: (text) =>
      [...new Set(text.match(starts) ?? [])]
        .flatMap((word) => long.get(word) ?? [])
        .filter((own) => text.includes(own))
        .sort((a, b) => b.length - a.length),
    count: () => known.size,
  }
}

/**
 * Entries of what the book answers that hold what a person wrote. Everything else in an answer is a figure, a key or one of the
 * program's own sentences.
 */
const writtenByHand = new Set(
  `title customer customerName town name notes note address phone email website workshop workshopName terms included notIncluded
   supplier supplierName place number code origin folder`.split(/\s+/),
)

/** Entries that are named alike and are never a person's. */
const kinds = new Set([
  'left',
  'right',
  'hours',
  'timber',
  'hanging',
  'closing',
  'single',
  'lower',
  'upper',
  'bottom',
  'middle',
  'top',
])

/** Notes every word a person wrote in what the book answered, however deep. */
export function noteOwnWords(answer: unknown, own: OwnWords, key = ''): void {
  if (typeof answer === 'string') {
    if (writtenByHand.has(key) && !kinds.has(answer)) own.add(answer)
    return
  }
  if (typeof answer !== 'object' || answer === null) return
  for (const [under, value] of Object.entries(answer))
    noteOwnWords(value, own, Array.isArray(answer) ? key : under)
}
