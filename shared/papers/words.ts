import type { Ink, Measure, PageText, Weight } from './page.ts'

/** A stretch of words in one weight. */
export type Run = { text: string; weight: Weight }

/** One set line: its stretches with their places from the left, mm. */
export type SetLine = { text: string; weight: Weight; x: number }[]

/** Height from baseline to baseline for a type size in points, mm. */
export const lineHeight = (size: number): number => size * 0.41

/** How words are set: in lines no wider than width (mm), in a type size (points), measured with the faces they are printed in. */
export type Setting = { width: number; size: number; measure: Measure }

/** Scripts whose letters join, turn about or come from another face: a line of them isn't as wide as its words together. */
const foreign = /[\u0300-\u1FFF\u2C00-\uFFFF]/

/** Letters as a reader counts them, each with its accents: what a line may be broken between. */
const letters = (text: string): string[] =>
  [...new Intl.Segmenter('en', { granularity: 'grapheme' }).segment(text)].map(({ segment }) => segment)

/** A word in pieces no wider than a line, where it is wider. */
function pieces(word: string, weight: Weight, { width, size, measure }: Setting): string[] {
  if (measure(word.trimEnd(), size, weight) <= width) return [word]
  const out: string[] = ['']
  for (const letter of letters(word)) {
    const grown = (out.at(-1) ?? '') + letter
    if (measure(grown.trimEnd(), size, weight) > width && out.at(-1) !== '') out.push(letter)
    else out[out.length - 1] = grown
  }
  return out
}

/** Sets runs of words into lines. A word longer than a line is broken where it must be. */
export function setLines(runs: Run[], setting: Setting): SetLine[] {
  const { width, size, measure } = setting
  const lines: SetLine[] = [[]]
  let x = 0
  for (const { text, weight } of runs)
    for (const word of (measure.said?.(text) ?? text)
      .split(/(?<=\s)/)
      .flatMap((whole) => pieces(whole, weight, setting))) {
      const endOf = (words: string): number => {
        const last = lines.at(-1)?.at(-1)
        return last?.weight === weight && foreign.test(last.text + words)
          ? last.x + measure(last.text + words, size, weight)
          : x + measure(words, size, weight)
      }
      if (endOf(word.trimEnd()) > width && x > 0) {
        lines.push([])
        x = 0
      }
      const end = endOf(word)
      const line = lines.at(-1)
      const last = line?.at(-1)
      if (last && last.weight === weight) last.text += word
      else line?.push({ text: word, weight, x })
      x = end
    }
  return lines.map((line) =>
    line.map((piece, i) => (i === line.length - 1 ? { ...piece, text: piece.text.trimEnd() } : piece)),
  )
}

/** Set lines as page marks, the first baseline at y. */
export const linesAt = (lines: SetLine[], at: { x: number; y: number; size: number; ink: Ink }): PageText[] =>
  lines.flatMap((line, i) =>
    line.map((piece): PageText => ({
      kind: 'text',
      x: at.x + piece.x,
      y: at.y + i * lineHeight(at.size),
      text: piece.text,
      size: at.size,
      weight: piece.weight,
      ink: at.ink,
      anchor: 'start',
    })),
  )

/** The type size between most and least (points) at which words fit a width, and the words, cut with … when even the least is too wide. */
export function fitWords(
  words: string,
  fit: { width: number; most: number; least: number; weight: Weight },
  measure: Measure,
): { text: string; size: number } {
  const text = measure.said?.(words) ?? words
  for (let size = fit.most; size >= fit.least; size -= 0.5)
    if (measure(text, size, fit.weight) <= fit.width) return { text, size }
  const all = letters(text)
  const cut = (count: number) => `${all.slice(0, count).join('').trimEnd()}…`
  let [kept, over] = [0, all.length]
  while (over - kept > 1) {
    const tried = (kept + over) >> 1
    if (measure(cut(tried), fit.least, fit.weight) <= fit.width) kept = tried
    else over = tried
  }
  return { text: cut(kept), size: fit.least }
}
