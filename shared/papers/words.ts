import type { Ink, Measure, PageText, Weight } from './page.ts'

/** A stretch of words in one weight. */
export type Run = { text: string; weight: Weight }

/** One set line: its stretches with their places from the left, mm. */
export type SetLine = { text: string; weight: Weight; x: number }[]

/** Height from baseline to baseline for a type size in points, mm. */
export const lineHeight = (size: number): number => size * 0.41

/** How words are set: in lines no wider than width (mm), in a type size (points), measured with the faces they are printed in. */
export type Setting = { width: number; size: number; measure: Measure }

/** Sets runs of words into lines. A word longer than a line is broken where it must be. */
export function setLines(runs: Run[], { width, size, measure }: Setting): SetLine[] {
  const lines: SetLine[] = [[]]
  let x = 0
  for (const run of runs)
    for (const word of run.text.split(/(?<=\s)/).flatMap((whole) => pieces(whole, run.weight))) {
      const bare = measure(word.trimEnd(), size, run.weight)
      if (x + bare > width && x > 0) {
        lines.push([])
        x = 0
      }
      const line = lines.at(-1)
      const last = line?.at(-1)
      if (last && last.weight === run.weight) last.text += word
      else line?.push({ text: word, weight: run.weight, x })
      x += measure(word, size, run.weight)
    }
  return lines.map((line) =>
    line.map((piece, i) => (i === line.length - 1 ? { ...piece, text: piece.text.trimEnd() } : piece)),
  )

  function pieces(word: string, weight: Weight): string[] {
    if (measure(word.trimEnd(), size, weight) <= width) return [word]
    const out: string[] = ['']
    for (const character of word) {
      const grown = (out.at(-1) ?? '') + character
      if (measure(grown, size, weight) > width && out.at(-1) !== '') out.push(character)
      else out[out.length - 1] = grown
    }
    return out
  }
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
  text: string,
  fit: { width: number; most: number; least: number; weight: Weight },
  measure: Measure,
): { text: string; size: number } {
  for (let size = fit.most; size >= fit.least; size -= 0.5)
    if (measure(text, size, fit.weight) <= fit.width) return { text, size }
  const characters = [...text]
  const cut = (count: number) => `${characters.slice(0, count).join('').trimEnd()}…`
  let [kept, over] = [0, characters.length]
  while (over - kept > 1) {
    const tried = (kept + over) >> 1
    if (measure(cut(tried), fit.least, fit.weight) <= fit.width) kept = tried
    else over = tried
  }
  return { text: cut(kept), size: fit.least }
}
