import type { Point } from '../geometry/point.ts'
import type { AngleDimension, Aside, Dimension, FigureSource, Fill } from './drawing.ts'
import type { ToPaper } from './layChain.ts'
import { capHeight, textSizes } from './pens.ts'
import type { Primitive } from './primitives.ts'
import { textWidth } from './textWidth.ts'

const plus = (p: Point, direction: Point, by: number): Point => [
  p[0] + direction[0] * by,
  p[1] + direction[1] * by,
]

const size = textSizes.normal
const cap = capHeight * size

/** A patch behind words, so that the lines under them don't strike through: centred on their middle, turned with them. */
export function patch(
  words: { centre: Point; width: number; size: number; angle: number },
  fill: Fill,
): Primitive {
  const turn = (-words.angle * Math.PI) / 180
  const along: Point = [Math.cos(turn), Math.sin(turn)]
  const up: Point = [Math.sin(turn), -Math.cos(turn)]
  const [half, rise] = [words.width / 2 + 0.7, (capHeight * words.size) / 2 + 0.6]
  const corner = (a: number, b: number) => plus(plus(words.centre, along, a * half), up, b * rise)
  const points = [corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)]
  return { kind: 'path', points, closed: true, fill }
}

/** A figure without room at its own place, written small beside the leaf; nothing where there is none either. */
function layAside(
  aside: Aside,
  page: { toPaper: ToPaper; scale: number; part?: string; source?: FigureSource },
): Primitive[] {
  if (aside.height / page.scale < aside.least) return []
  const at = page.toPaper(aside.at)
  return [
    {
      kind: 'text',
      x: at[0] + aside.dx,
      y: at[1] - aside.dy,
      text: aside.text,
      size: textSizes.figure,
      weight: 'regular',
      anchor: aside.anchor,
      angle: 0,
      tone: 'dimension',
      part: page.part,
      source: page.source,
    },
  ]
}

/** Space a sloping dimension takes beside the middle of what it measures, mm: line, figure and a little air. */
const slopeNeeds = 8.6

/** A dimension along a slope: line, ticks, extension lines and the fullest figure with room; written aside where there is none. */
export function layDimension(mark: Dimension, toPaper: ToPaper, scale: number): Primitive[] {
  const [from, to] = [toPaper(mark.from), toPaper(mark.to)]
  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  const stretch = Math.min(mark.within / scale, length)
  const text =
    mark.texts.find((words) => textWidth(words, size) + 6 <= stretch) ?? shortest(mark.texts, stretch)
  if (text === undefined || mark.room / scale < slopeNeeds)
    return layAside(mark.aside, { toPaper, scale, part: mark.part, source: mark.source })
  const along: Point = [(to[0] - from[0]) / length, (to[1] - from[1]) / length]
  const left: Point = [along[1], -along[0]]
  return slopingLine(mark, {
    from,
    to,
    along,
    left,
    offset: mark.offset,
    reach: Math.sign(mark.offset),
    stretch,
    text,
  })
}

/** The shortest figure, where at least that can stand between the ticks. */
const shortest = (texts: string[], length: number): string | undefined => {
  const last = texts.at(-1)
  return last !== undefined && textWidth(last, size) + 4 <= length ? last : undefined
}

type Slope = {
  from: Point
  to: Point
  along: Point
  left: Point
  offset: number
  reach: number
  stretch: number
  text: string
}

function slopingLine(mark: Dimension, slope: Slope): Primitive[] {
  const { from, to, along, left, offset, reach, stretch, text } = slope
  const { part } = mark
  const [a, b] = [plus(from, left, offset), plus(to, left, offset)]
  const slant: Point = [(along[0] + left[0]) * 0.8, (along[1] + left[1]) * 0.8]
  const tick = (p: Point): [Point, Point] => [plus(p, slant, -1), plus(p, slant, 1)]
  return [
    {
      kind: 'strokes',
      pen: 'dimension',
      part,
      lines: [
        [a, b],
        [plus(from, left, reach), plus(a, left, reach * 1.4)],
        [plus(to, left, reach), plus(b, left, reach * 1.4)],
      ],
    },
    { kind: 'strokes', pen: 'tick', part, lines: [tick(a), tick(b)] },
    ...slopingWords(mark, { middle: plus(a, along, stretch / 2), along, text }),
  ]
}

function slopingWords(mark: Dimension, slope: { middle: Point; along: Point; text: string }): Primitive[] {
  let angle = (-Math.atan2(slope.along[1], slope.along[0]) * 180) / Math.PI
  if (angle > 90) angle -= 180
  if (angle <= -90) angle += 180
  const turn = (angle * Math.PI) / 180
  const up: Point = [-Math.sin(turn), -Math.cos(turn)]
  const [x, y] = plus(slope.middle, up, 1)
  const centre = plus(slope.middle, up, 1 + cap / 2)
  return [
    patch({ centre, width: textWidth(slope.text, size), size, angle }, mark.over),
    {
      kind: 'text',
      x,
      y,
      text: slope.text,
      size,
      weight: 'regular',
      anchor: 'middle',
      angle,
      tone: 'dimension',
      part: mark.part,
      source: mark.source,
    },
  ]
}

/** Least radius at which an arc still shows, mm on paper. */
const leastRadius = 4

/**
 * How far along the bisector the middle of an angle's figure stands, mm, so that it clears the arc and both legs; undefined when
 * it would leave the room. half is half the angle, in radians.
 */
function figureReach(
  { radius, half }: { radius: number; half: number },
  width: number,
  room: { x: number; y: number },
): number | undefined {
  const [w, h] = [width / 2 + 1.2, cap / 2 + 1]
  for (let reach = radius + 1; reach < room.x; reach += 0.5) {
    const [x, y] = [reach * Math.cos(half), reach * Math.sin(half)]
    if (x + w > room.x || y + h > room.y) return undefined
    const clearsLegs = y - h >= 0 && (x - w) * Math.tan(2 * half) >= y + h
    if (clearsLegs && Math.hypot(x - w, Math.max(0, y - h)) >= radius + 0.3) return reach
  }
  return undefined
}

/** An angle's arc and its figure on the bisector beyond it. Written aside where the room is short. */
export function layAngle(mark: AngleDimension, toPaper: ToPaper, scale: number): Primitive[] {
  const room = { x: mark.room.x / scale, y: mark.room.y / scale }
  const radius = Math.min(mark.radius, room.x * 0.4, room.y * 0.6)
  const width = textWidth(mark.text, size)
  const half = ((mark.end - mark.start) * Math.PI) / 360
  const reach = radius < leastRadius ? undefined : figureReach({ radius, half }, width, room)
  if (reach === undefined)
    return layAside(mark.aside, { toPaper, scale, part: mark.part, source: mark.source })
  const apex = toPaper(mark.apex)
  const at = (degrees: number, r: number): Point => {
    const turn = (degrees * Math.PI) / 180
    return [apex[0] + r * Math.cos(turn), apex[1] - r * Math.sin(turn)]
  }
  const steps = 16
  const points = Array.from({ length: steps + 1 }, (_, i) =>
    at(mark.start + ((mark.end - mark.start) * i) / steps, radius),
  )
  const centre = at((mark.start + mark.end) / 2, reach)
  return [
    { kind: 'path', points, closed: false, fill: 'none', pen: 'dimension', part: mark.part },
    patch({ centre, width, size, angle: 0 }, mark.over),
    {
      kind: 'text',
      x: centre[0],
      y: centre[1] + cap / 2,
      text: mark.text,
      size,
      weight: 'regular',
      anchor: 'middle',
      angle: 0,
      tone: 'dimension',
      part: mark.part,
      source: mark.source,
    },
  ]
}
