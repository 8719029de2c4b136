import type { Point } from '../geometry/point.ts'
import type { AngleDimension, Dimension, Fill } from './drawing.ts'
import type { ToPaper } from './layChain.ts'
import { capHeight, textSizes } from './pens.ts'
import type { Primitive } from './primitives.ts'
import { textWidth } from './textWidth.ts'

const plus = (p: Point, direction: Point, by: number): Point => [
  p[0] + direction[0] * by,
  p[1] + direction[1] * by,
]

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
  return {
    kind: 'path',
    points: [corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)],
    closed: true,
    fill,
  }
}

/** A dimension along a slope: line, ticks square to the slope's own 45°, extension lines, the fullest figure that has room. */
export function layDimension(mark: Dimension, toPaper: ToPaper): Primitive[] {
  const [from, to] = [toPaper(mark.from), toPaper(mark.to)]
  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  if (length < 6) return []
  const along: Point = [(to[0] - from[0]) / length, (to[1] - from[1]) / length]
  const left: Point = [along[1], -along[0]]
  const [a, b] = [plus(from, left, mark.offset), plus(to, left, mark.offset)]
  const reach = Math.sign(mark.offset)
  const text =
    mark.texts.find((words) => textWidth(words, textSizes.normal) + 4 <= length) ?? mark.texts.at(-1) ?? ''
  const { part } = mark
  const slant: Point = [(along[0] + left[0]) * 0.9, (along[1] + left[1]) * 0.9]
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
    ...slopingWords(mark, { middle: [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2], along, text }),
  ]
}

function slopingWords(mark: Dimension, slope: { middle: Point; along: Point; text: string }): Primitive[] {
  const size = textSizes.normal
  let angle = (-Math.atan2(slope.along[1], slope.along[0]) * 180) / Math.PI
  if (angle > 90) angle -= 180
  if (angle <= -90) angle += 180
  const turn = (angle * Math.PI) / 180
  const up: Point = [-Math.sin(turn), -Math.cos(turn)]
  const [x, y] = plus(slope.middle, up, 0.9)
  const centre = plus(slope.middle, up, 0.9 + (capHeight * size) / 2)
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
    },
  ]
}

/** Least radius at which an angle can still be read off, mm on paper. */
const leastRadius = 5

/** An angle's arc with a tick at each end and its figure on the bisector beyond it. Drawn smaller where room is short. */
export function layAngle(mark: AngleDimension, toPaper: ToPaper, scale: number): Primitive[] {
  const radius = Math.min(mark.radius, (mark.room / scale) * 0.55)
  if (radius < leastRadius) return []
  const apex = toPaper(mark.apex)
  const at = (degrees: number, r: number): Point => {
    const turn = (degrees * Math.PI) / 180
    return [apex[0] + r * Math.cos(turn), apex[1] - r * Math.sin(turn)]
  }
  const steps = 16
  const points = Array.from({ length: steps + 1 }, (_, i) =>
    at(mark.start + ((mark.end - mark.start) * i) / steps, radius),
  )
  const size = textSizes.normal
  const width = textWidth(mark.text, size)
  const middle = (mark.start + mark.end) / 2
  const out = radius + 1.4 + (width / 2) * Math.abs(Math.cos((middle * Math.PI) / 180)) + 1.5
  const centre = at(middle, out)
  return [
    { kind: 'path', points, closed: false, fill: 'none', pen: 'dimension', part: mark.part },
    patch({ centre, width, size, angle: 0 }, mark.over),
    {
      kind: 'text',
      x: centre[0],
      y: centre[1] + (capHeight * size) / 2,
      text: mark.text,
      size,
      weight: 'regular',
      anchor: 'middle',
      angle: 0,
      tone: 'dimension',
      part: mark.part,
    },
  ]
}
