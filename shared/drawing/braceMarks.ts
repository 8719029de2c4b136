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

/** What a brace's figures are placed by: its corners, its slope in radians, and the figures' writer. */
type Sloped = { brace: Brace; foot: Point; toe: Point; head: Point; heel: Point; turn: number }

function slopedOf(brace: Brace): Sloped | undefined {
  const [foot, toe, head, heel] = brace.outline
  if (!foot || !toe || !head || !heel) return undefined
  return { brace, foot, toe, head, heel, turn: (brace.angle * Math.PI) / 180 }
}

const along = ({ turn }: Sloped, from: Point, by: number): Point => [
  from[0] + Math.cos(turn) * by,
  from[1] + Math.sin(turn) * by,
]

/** A figure beside the leaf, under the brace's name, for a leaf too slim to hold it. */
const asideOf = ({ foot, head }: Sloped, at: { dy: number; least: number }, text: string): Aside => ({
  text,
  at: [0, (foot[1] + head[1]) / 2],
  dx: -3,
  dy: at.dy,
  anchor: 'end',
  height: head[1] - foot[1],
  least: at.least,
})

function nameOf({ brace, foot, head }: Sloped): Mark {
  return {
    kind: 'text',
    at: [0, (foot[1] + head[1]) / 2],
    dx: -3,
    dy: nameDrop,
    text: brace.name === 'single' ? 'brace' : `${brace.name} brace`,
    size: 'small',
    anchor: 'end',
    height: { model: head[1] - foot[1], least: 6 },
    part: `${brace.name} brace`,
  }
}

/** The leaf's weight pressing down the brace to the hinge. */
function thrustArrow(sloped: Sloped): Mark {
  const { brace, foot, toe } = sloped
  const half = brace.section.width / 2
  const axisFoot: Point = [(foot[0] + toe[0]) / 2, (foot[1] + toe[1]) / 2]
  return {
    kind: 'arrow',
    from: along(sloped, axisFoot, half + brace.edgeLength * 0.24),
    to: along(sloped, axisFoot, half * 1.2),
    pen: 'thrust',
    part: `${brace.name} brace`,
  }
}

function lengthFigure(sloped: Sloped, figures: FigureText): Mark {
  const { brace, foot, heel, turn } = sloped
  const longPoint = figures.write(brace.length)
  return {
    kind: 'dimension',
    from: foot,
    to: along(sloped, foot, brace.length),
    offset: 5,
    texts: [`${longPoint} long point to long point`, `${longPoint} long points`, longPoint],
    over: 'board',
    within: brace.edgeLength,
    room: (Math.sin(turn) * (foot[0] + heel[0])) / 2,
    aside: asideOf(sloped, { dy: secondDrop, least: 22 }, `${longPoint} long pt`),
    part: `dimension ${brace.name} brace length`,
  }
}

function angleFigure(sloped: Sloped, leaf: Leaf): Mark {
  const { brace, toe, head } = sloped
  const text = `${brace.angle.toFixed(1)}°`
  return {
    kind: 'angle',
    apex: toe,
    start: 0,
    end: brace.angle,
    radius: 13,
    room: { x: leaf.width - toe[0], y: head[1] - toe[1] },
    text,
    over: 'board',
    aside: asideOf(sloped, { dy: firstDrop, least: 14 }, text),
    part: `dimension ${brace.name} brace angle`,
  }
}

/**
 * A brace's name, its angle at the foot, its length from long point to long point, and the arrow of the leaf's weight pressing down
 * to the hinge. Where a leaf is too slim for the figures they stand under the name.
 */
export function braceFigures(leaf: Leaf, brace: Brace, figures: FigureText): Mark[] {
  const sloped = slopedOf(brace)
  if (!sloped) return []
  return [nameOf(sloped), thrustArrow(sloped), lengthFigure(sloped, figures), angleFigure(sloped, leaf)]
}
