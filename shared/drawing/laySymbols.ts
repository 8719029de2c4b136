import type { Point } from '../geometry/point.ts'
import type { Arrow, Badge, Symbol } from './drawing.ts'
import type { ToPaper } from './layChain.ts'
import { capHeight, textSizes } from './pens.ts'
import type { Primitive } from './primitives.ts'

/** Radius of a screw's head on paper, mm: large enough to be seen on a leaf drawn at 1 : 20. */
const headRadius = 0.85

/** A screw's head with its slots crossed, or a nail's dot. */
export function laySymbol(mark: Symbol, toPaper: ToPaper): Primitive[] {
  const [x, y] = toPaper(mark.at)
  const { part } = mark
  if (mark.shape === 'nail') return [{ kind: 'circle', centre: [x, y], radius: 0.5, fill: 'ink', part }]
  const arm = headRadius * 0.72
  return [
    { kind: 'circle', centre: [x, y], radius: headRadius, fill: 'paper', pen: 'narrow', part },
    {
      kind: 'strokes',
      pen: 'narrow',
      part,
      lines: [
        [
          [x - arm, y - arm],
          [x + arm, y + arm],
        ],
        [
          [x - arm, y + arm],
          [x + arm, y - arm],
        ],
      ],
    },
  ]
}

/** A line with a solid head at its end; nothing where it would be all head. */
export function layArrow(mark: Arrow, toPaper: ToPaper): Primitive[] {
  const [a, b] = [toPaper(mark.from), toPaper(mark.to)]
  const length = Math.hypot(b[0] - a[0], b[1] - a[1])
  if (length < 4) return []
  const [ux, uy] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length]
  const base: Point = [b[0] - ux * 2.8, b[1] - uy * 2.8]
  const head: Point[] = [
    b,
    [base[0] - uy * 0.9, base[1] + ux * 0.9],
    [base[0] + uy * 0.9, base[1] - ux * 0.9],
  ]
  return [
    { kind: 'path', points: [a, base], closed: false, fill: 'none', pen: mark.pen, part: mark.part },
    { kind: 'path', points: head, closed: true, fill: 'accent', part: mark.part },
  ]
}

/** A letter in a ring. */
export function layBadge(mark: Badge, toPaper: ToPaper): Primitive[] {
  const at = toPaper(mark.at)
  const centre: Point = [at[0] + (mark.dx ?? 0), at[1] - (mark.dy ?? 0)]
  const size = textSizes.normal
  const { part } = mark
  return [
    { kind: 'circle', centre, radius: 2.7, fill: 'paper', pen: 'outline', part },
    {
      kind: 'text',
      x: centre[0],
      y: centre[1] + (capHeight * size) / 2,
      text: mark.text,
      size,
      weight: 'semibold',
      anchor: 'middle',
      angle: 0,
      tone: 'ink',
      part,
    },
  ]
}
