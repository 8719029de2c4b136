import { betweenLedges, type Brace } from '../gate/leaf.ts'
import type { Point } from '../geometry/point.ts'
import type { Aside, Mark } from './drawing.ts'
import type { FigureText } from './figureText.ts'
import { stileWidth } from './leafLines.ts'
import type { PlacedLeaf } from './placeLeaves.ts'

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

/** What a brace's figures are placed by: its corners between the ledges, its slope in radians, and how far a stile reaches in. */
type Sloped = {
  brace: Brace
  foot: Point
  toe: Point
  head: Point
  heel: Point
  turn: number
  stile: number
}

function slopedOf(brace: Brace, stile: number): Sloped | undefined {
  const [foot, toe, head, heel] = betweenLedges(brace)
  if (!foot || !toe || !head || !heel) return undefined
  return { brace, foot, toe, head, heel, turn: (brace.angle * Math.PI) / 180, stile }
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
  const { brace, foot, heel, turn, stile } = sloped
  const longPoint = figures.write(brace.length)
  return {
    kind: 'dimension',
    from: foot,
    to: along(sloped, foot, brace.length),
    offset: 5,
    // Between stiles the longer words would run over the stile beside the brace's foot.
    texts:
      stile > 0
        ? [longPoint]
        : [`${longPoint} long point to long point`, `${longPoint} long points`, longPoint],
    over: 'board',
    within: brace.edgeLength,
    room: Math.sin(turn) * ((foot[0] + heel[0]) / 2 - stile),
    aside: asideOf(sloped, { dy: secondDrop, least: 22 }, `${longPoint} long`),
    part: `dimension ${brace.name} brace length`,
  }
}

/** How far in from the hanging edge ironmongery on the back begins beside a brace's foot, mm: figures keep clear of it. */
function freeUpTo({ leaf, fittings }: PlacedLeaf, { toe, head, stile }: Sloped): number {
  const xs = fittings
    .filter(({ surface, kind }) => surface === 'back' && kind !== 'hinge')
    .flatMap(({ shapes }) => shapes.map(({ outline }) => outline))
    .filter((outline) => outline.some(([, y]) => y > toe[1] && y < head[1]))
    .map((outline) => Math.min(...outline.map(([x]) => x)))
  return Math.min(leaf.width - stile, ...xs)
}

function angleFigure(sloped: Sloped, free: number): Mark {
  const { brace, toe, head } = sloped
  const text = `${brace.angle.toFixed(1)}°`
  return {
    kind: 'angle',
    apex: toe,
    start: 0,
    end: brace.angle,
    radius: 13,
    room: { x: free - toe[0], y: head[1] - toe[1] },
    text,
    over: 'board',
    aside: asideOf(sloped, { dy: firstDrop, least: 14 }, text),
    part: `dimension ${brace.name} brace angle`,
  }
}

/** A turned leaf has the dimensions beside it, where nothing else finds room. */
const withoutAside = (mark: Mark): Mark =>
  mark.kind === 'dimension' || mark.kind === 'angle'
    ? { ...mark, aside: { ...mark.aside, least: Infinity } }
    : mark

/**
 * A brace's name, its angle at the foot, its length from long point to long point, and the arrow of the leaf's weight pressing down
 * to the hinge. Where a leaf is too slim for the figures they stand under the name.
 */
export function braceFigures(placed: PlacedLeaf, brace: Brace, figures: FigureText): Mark[] {
  const sloped = slopedOf(brace, stileWidth(placed))
  if (!sloped) return []
  const measured = [lengthFigure(sloped, figures), angleFigure(sloped, freeUpTo(placed, sloped))]
  if (placed.turned) return [thrustArrow(sloped), ...measured.map(withoutAside)]
  return [nameOf(sloped), thrustArrow(sloped), ...measured]
}
