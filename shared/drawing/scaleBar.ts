import type { LengthUnit } from '../job/job.ts'
import type { Point } from '../geometry/point.ts'
import { textSizes } from './pens.ts'
import type { Primitive } from './primitives.ts'

/** Round lengths a scale bar may show, mm, with what is written at its end. */
const lengths: Record<LengthUnit, { mm: number; words: string }[]> = {
  mm: [10, 20, 50, 100, 200, 500, 1000].map((mm) => ({ mm, words: `${mm} mm` })),
  in: [
    ...[1, 2, 3, 6].map((inches) => ({ mm: inches * 25.4, words: `${inches}″` })),
    ...[1, 2, 3].map((feet) => ({ mm: feet * 304.8, words: `${feet}′` })),
  ],
}

/** Longest a scale bar gets on the page, mm. */
const longest = 26

/** A bar of a round length at a drawing's scale, its left end at x, y (paper mm), parted in two, its length written after it. */
export function scaleBar(scale: number, unit: LengthUnit, at: { x: number; y: number }): Primitive[] {
  const fitting = lengths[unit].filter((length) => length.mm / scale <= longest)
  const shown = fitting.at(-1) ?? lengths[unit][0]
  if (!shown) return []
  const width = shown.mm / scale
  const [low, high] = [at.y, at.y - 1.3]
  const half = (from: number, to: number, fill: 'ink' | 'paper'): Primitive => {
    const points: Point[] = [
      [from, low],
      [to, low],
      [to, high],
      [from, high],
    ]
    return { kind: 'path', points, closed: true, fill, pen: 'narrow' }
  }
  return [
    half(at.x, at.x + width / 2, 'ink'),
    half(at.x + width / 2, at.x + width, 'paper'),
    {
      kind: 'text',
      x: at.x + width + 1.5,
      y: at.y,
      text: shown.words,
      size: textSizes.small,
      weight: 'regular',
      anchor: 'start',
      angle: 0,
      tone: 'dimension',
    },
  ]
}
