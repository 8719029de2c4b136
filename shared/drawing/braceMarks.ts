import type { Brace, Leaf } from '../gate/leaf.ts'
import type { Point } from '../geometry/point.ts'
import type { Aside, Mark } from './drawing.ts'
import type { FigureText } from './figureText.ts'

/** A brace's own outline. */
export const braceShape = (brace: Brace): Mark => ({
  kind: 'polygon',
  points: brace.outline,
  fill: 'brace',
  pen: 'visible',
  part: `${brace.name} brace`,
})

/** Baseline of a brace's name beside the leaf, and of the first and second figure under it, mm on paper from its middle. */
const [nameDrop, firstDrop, secondDrop] = [-1.1, -5.1, -9.1]

/**
 * A brace's name, its angle at the foot, its length from long point to long point, and the arrow of the leaf's weight pressing down
 * to the hinge. Where a leaf is too slim for the figures they stand under the name.
 */
export function braceFigures(leaf: Leaf, brace: Brace, figures: FigureText): Mark[] {
  const part = `dimension ${brace.name} brace`
  const [foot, toe, head, heel] = brace.outline
  if (!foot || !toe || !head || !heel) return []
  const turn = (brace.angle * Math.PI) / 180
  const along = (from: Point, by: number): Point => [
    from[0] + Math.cos(turn) * by,
    from[1] + Math.sin(turn) * by,
  ]
  const half = brace.section.width / 2
  const axisFoot: Point = [(foot[0] + toe[0]) / 2, (foot[1] + toe[1]) / 2]
  const middle = (foot[1] + head[1]) / 2
  const aside = (dy: number, least: number, text: string): Aside => ({
    text,
    at: [0, middle],
    dx: -3,
    dy,
    anchor: 'end',
    height: head[1] - foot[1],
    least,
  })
  const longPoint = figures.write(brace.length)
  return [
    {
      kind: 'text',
      at: [0, middle],
      dx: -3,
      dy: nameDrop,
      text: brace.name === 'single' ? 'brace' : `${brace.name} brace`,
      size: 'small',
      anchor: 'end',
      height: { model: head[1] - foot[1], least: 6 },
      part: `${brace.name} brace`,
    },
    {
      kind: 'arrow',
      from: along(axisFoot, half + brace.edgeLength * 0.24),
      to: along(axisFoot, half * 1.2),
      pen: 'thrust',
      part: `${brace.name} brace`,
    },
    {
      kind: 'dimension',
      from: foot,
      to: along(foot, brace.length),
      offset: 5,
      texts: [`${longPoint} long point to long point`, `${longPoint} long points`, longPoint],
      over: 'board',
      within: brace.edgeLength,
      room: (Math.sin(turn) * (foot[0] + heel[0])) / 2,
      aside: aside(secondDrop, 22, `${longPoint} long pt`),
      part: `${part} length`,
    },
    {
      kind: 'angle',
      apex: toe,
      start: 0,
      end: brace.angle,
      radius: 13,
      room: { x: leaf.width - toe[0], y: head[1] - toe[1] },
      text: `${brace.angle.toFixed(1)}°`,
      over: 'board',
      aside: aside(firstDrop, 14, `${brace.angle.toFixed(1)}°`),
      part: `${part} angle`,
    },
  ]
}
