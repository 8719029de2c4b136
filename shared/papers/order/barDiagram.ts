import type { Point } from '../../geometry/point.ts'
import type { OrderLength } from '../../ordering/orderModel.ts'
import type { Measure, PageMark } from '../page.ts'

/** Pieces alike behind each other in one length. */
export type CutGroup = { length: number; mark: string; count: number }

/** The pieces of a length, those alike behind each other counted together. */
export function cutGroups(cuts: OrderLength['cuts']): CutGroup[] {
  const groups: CutGroup[] = []
  for (const { length, mark } of cuts) {
    const last = groups.at(-1)
    if (last && last.length === length && last.mark === mark) last.count += 1
    else groups.push({ length, mark, count: 1 })
  }
  return groups
}

/** How a length is drawn: mm of paper to a mm of timber, what a cut takes, what squaring the end takes, what is worth keeping, and how sizes are written. */
export type BarScale = {
  perMm: number
  kerf: number
  endTrim: number
  leastOffcut: number
  write: (mm: number) => string
  measure: Measure
}

/** Height of a bar, mm. */
export const barHeight = 10

/** Height of the numbers over a bar, mm: next to nothing where there is one kind of piece, which needs none. */
export const numbersOver = (groups: readonly CutGroup[]): number => (groups.length > 1 ? 5 : 1)

/** Thinnest that a saw cut is drawn, mm: a copier loses less. */
const thinnest = 0.3

const label = (
  text: string,
  at: { x: number; y: number },
  look: { size: number; strong: boolean },
): PageMark => ({
  ...{ kind: 'text', ...at, text, size: look.size, ink: 'black', anchor: 'middle' },
  weight: look.strong ? 'semibold' : 'regular',
})

/** A piece in its place: the length in it where it has room. */
function pieceMarks(length: number, box: { x: number; y: number }, scale: BarScale): PageMark[] {
  const width = length * scale.perMm
  const words = scale.write(length)
  const fits = scale.measure(words, 14, 'semibold') + 1.2 <= width
  return [
    { kind: 'box', ...box, width, height: barHeight, stroke: { width: 0.4, ink: 'black' } },
    ...(fits
      ? [label(words, { x: box.x + width / 2, y: box.y + barHeight / 2 + 1.8 }, { size: 14, strong: true })]
      : []),
  ]
}

/** What is left at the end: dashed, with its size; only a line where next to nothing is. */
function offcutMarks(offcut: number, box: { x: number; y: number }, scale: BarScale): PageMark[] {
  const width = offcut * scale.perMm
  if (width < 0.8) return []
  const { x, y } = box
  const [right, foot] = [x + width, y + barHeight]
  const line = ([x1, y1]: Point, [x2, y2]: Point): PageMark => ({
    ...{ kind: 'line', x1, y1, x2, y2, width: 0.25, ink: 'black' },
    dash: [1.4, 1],
  })
  const kept = offcut >= scale.leastOffcut
  const words = kept ? `${scale.write(offcut)} to rack` : scale.write(offcut)
  const fits = [words, scale.write(offcut)].find((text) => scale.measure(text, 11, 'regular') + 1 <= width)
  return [
    ...[line([x, y], [right, y]), line([right, y], [right, foot]), line([right, foot], [x, foot])],
    ...(fits === undefined
      ? []
      : [label(fits, { x: x + width / 2, y: y + barHeight / 2 + 1.4 }, { size: 11, strong: false })]),
  ]
}

/**
 * One length to scale as it is cut from the left: the end squared (black), each piece with its length, the saw's cuts as black lines, what is left
 * dashed. Over the first of pieces alike stands their number in the list under it, where there is more than one kind.
 */
export function barMarks(
  { from, cuts, offcut }: Pick<OrderLength, 'from' | 'cuts' | 'offcut'>,
  corner: { x: number; y: number },
  scale: BarScale,
): PageMark[] {
  const groups = cutGroups(cuts)
  const y = corner.y + numbersOver(groups)
  const trim = from === 'merchant' ? scale.endTrim : 0
  const cut = Math.max(scale.kerf * scale.perMm, thinnest)
  const marks: PageMark[] = []
  let x = corner.x
  let numbered = -Infinity
  const solid = (width: number): void => {
    if (width > 0) marks.push({ kind: 'box', x, y, width, height: barHeight, fill: 'black' })
  }
  solid(trim * scale.perMm)
  x += trim * scale.perMm
  groups.forEach((group, place) => {
    const width = group.length * scale.perMm
    const [number, middle] = [String(place + 1), x + width / 2]
    const half = scale.measure(number, 11, 'regular') / 2
    // Pieces too slim for a number each still follow one another as in the list.
    if (groups.length > 1 && middle - half > numbered + 0.6) {
      marks.push(label(number, { x: middle, y: y - 1 }, { size: 11, strong: false }))
      numbered = middle + half
    }
    for (let i = 0; i < group.count; i += 1) {
      marks.push(...pieceMarks(group.length, { x, y }, scale))
      x += group.length * scale.perMm
      if (place < groups.length - 1 || i < group.count - 1 || offcut > 0) solid(cut)
      x += scale.kerf * scale.perMm
    }
  })
  return [...marks, ...offcutMarks(offcut, { x, y }, scale)]
}
