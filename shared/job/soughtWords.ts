/** Words too small to be looked for beside others: "the wide oak one in Marsh Lane" looks for wide, oak, marsh and lane. */
export const smallWords: ReadonlySet<string> = new Set(
  'a an and are at but by for from had has he her his i in is it its me my of on one ones or our she some that the their them they this to was we were which who with'.split(
    ' ',
  ),
)

/** Words that say a size beside the usual, so that they stand for figures and need not be written anywhere. */
const sizeWords = new Set(
  'wide wider widest broad narrow narrower narrowest tall taller tallest high low lower short shorter big small'.split(
    ' ',
  ),
)

export const wordPattern = /[\p{L}\p{N}\p{M}]+/gu

/** Letters as they are looked for: without accents and capitals. 'Müller' is 'muller'. */
export const folded = (text: string): string =>
  text
    .normalize('NFD')
    .replace(/\p{M}+/gu, '')
    .toLowerCase()

/** Every run of letters and digits that was typed, folded, without small words unless nothing else was typed. Twelve at most. */
export function soughtWords(search: string): string[] {
  const all = [...new Set((search.match(wordPattern) ?? []).map(folded))]
  const large = all.filter((word) => !smallWords.has(word))
  return (large.length > 0 ? large : all).filter((word) => word !== '').slice(0, 12)
}

/** Whether a word says a size ('wide') and need not be found as a word. */
export const saysSize = (word: string): boolean => sizeWords.has(word)

/** A part of a text, and whether it is what was looked for. */
export type MarkedPart = { text: string; sought: boolean }

/** How much of a token stands for a folded word: 'Müller' and 'mu' give 2. */
function coveredBy(token: string, word: string): number {
  let [covered, length] = ['', 0]
  for (const sign of token) {
    if (covered.length >= word.length && !/\p{M}/u.test(sign)) break
    covered += folded(sign)
    length += sign.length
  }
  return length
}

/**
 * A text cut where a word of it begins with one that is looked for. markedParts('Marsh Lane', ['mar']) marks 'Mar' and nothing else.
 * words as `soughtWords` gives them.
 */
export function markedParts(text: string, words: readonly string[]): MarkedPart[] {
  const parts: MarkedPart[] = []
  let done = 0
  for (const { 0: token, index } of words.length === 0 ? [] : text.matchAll(wordPattern)) {
    const plain = folded(token)
    const word = words.filter((one) => plain.startsWith(one)).sort((a, b) => b.length - a.length)[0]
    if (word === undefined) continue
    if (index > done) parts.push({ text: text.slice(done, index), sought: false })
    done = index + coveredBy(token, word)
    parts.push({ text: text.slice(index, done), sought: true })
  }
  if (done < text.length) parts.push({ text: text.slice(done), sought: false })
  return parts
}

/** Those of the words that no text has a word beginning with. */
export const unseenWords = (words: readonly string[], texts: readonly string[]): string[] => {
  const tokens = texts.flatMap((text) => text.match(wordPattern) ?? []).map(folded)
  return words.filter((word) => !saysSize(word) && !tokens.some((token) => token.startsWith(word)))
}

/** About so many letters of a long text are shown. */
const pieceLength = 70

/** The piece of a text that stands about the first word looked for, on one line with … where it is cut; undefined where there is none. */
export function pieceAbout(text: string, words: readonly string[]): string | undefined {
  const line = text.replace(/\s+/gu, ' ').trim()
  const at = [...line.matchAll(wordPattern)].find(({ 0: token }) =>
    words.some((word) => folded(token).startsWith(word)),
  )?.index
  if (at === undefined) return undefined
  const from = at < 24 ? 0 : line.lastIndexOf(' ', at - 16) + 1
  const cut = line.slice(from, from + pieceLength)
  const to = from + pieceLength >= line.length ? cut.length : Math.max(cut.lastIndexOf(' '), at - from + 12)
  return `${from > 0 ? '…' : ''}${line.slice(from, from + to)}${from + to < line.length ? '…' : ''}`
}
