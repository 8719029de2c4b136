import type { Fill } from '../../shared/drawing/drawing.ts'
import { pens } from '../../shared/drawing/pens.ts'
import type { LaidOut, Primitive } from '../../shared/drawing/primitives.ts'
import type { Point } from '../../shared/geometry/point.ts'

/** One SVG element with its attributes; words are text. Plain data, so that a screen can render it and a test can read it. */
export type SvgElement = {
  tag: 'path' | 'circle' | 'text'
  attributes: Record<string, string | number>
  part?: string
  words?: string
  /** A dimension's figure that is an entry of the form. */
  entered?: boolean
}

/** Two places after the point: a hundredth of a millimetre on paper. */
const short = (value: number): string => String(Math.round(value * 100) / 100)

const moves = (points: Point[], closed: boolean): string =>
  points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${short(x)} ${short(y)}`).join('') + (closed ? 'Z' : '')

const fillClass = (fill: Fill): string => (fill === 'none' ? 'no-fill' : `fill-${fill}`)

const strokeOf = (pen: keyof typeof pens | undefined): Record<string, string | number> => {
  if (pen === undefined) return {}
  const { width, dash } = pens[pen]
  return { 'stroke-width': width, ...(dash.length > 0 ? { 'stroke-dasharray': dash.join(' ') } : {}) }
}

const penClass = (pen: keyof typeof pens | undefined): string => (pen === undefined ? 'no-pen' : `pen-${pen}`)

type Kind<K extends Primitive['kind']> = Extract<Primitive, { kind: K }>

const pathOf = ({ part, pen, fill, points, closed }: Kind<'path'>): SvgElement => ({
  tag: 'path',
  part,
  attributes: {
    class: `${penClass(pen)} ${fillClass(fill)}`,
    d: moves(points, closed),
    ...strokeOf(pen),
  },
})

const strokesOf = ({ part, pen, lines }: Kind<'strokes'>): SvgElement => ({
  tag: 'path',
  part,
  attributes: {
    class: `${penClass(pen)} no-fill`,
    d: lines.map((line) => moves(line, false)).join(''),
    ...strokeOf(pen),
  },
})

const circleOf = ({ part, pen, fill, centre, radius }: Kind<'circle'>): SvgElement => ({
  tag: 'circle',
  part,
  attributes: {
    class: `${penClass(pen)} ${fillClass(fill)}`,
    cx: short(centre[0]),
    cy: short(centre[1]),
    r: radius,
    ...strokeOf(pen),
  },
})

const wordsOf = ({
  part,
  text,
  tone,
  weight,
  x,
  y,
  size,
  anchor,
  angle,
  source,
}: Kind<'text'>): SvgElement => ({
  tag: 'text',
  part,
  words: text,
  entered: source?.entry !== undefined,
  attributes: {
    class: `words tone-${tone} weight-${weight}`,
    x: short(x),
    y: short(y),
    'font-size': size,
    'text-anchor': anchor,
    ...(angle === 0 ? {} : { transform: `rotate(${short(-angle)} ${short(x)} ${short(y)})` }),
  },
})

function paintPrimitive(primitive: Primitive): SvgElement {
  switch (primitive.kind) {
    case 'path':
      return pathOf(primitive)
    case 'strokes':
      return strokesOf(primitive)
    case 'circle':
      return circleOf(primitive)
    case 'text':
      return wordsOf(primitive)
  }
}

/** A laid-out drawing as SVG elements in painting order, in paper mm. Colours come from the style sheet by class. */
export const paintSvg = (laid: LaidOut): SvgElement[] => laid.primitives.map(paintPrimitive)

/** Pens and parts that say something about a gate without being a piece of it. */
const said = new Set(['dimension', 'tick', 'hatch'])

/** Whether a mark is the shape of a piece: no words, no dimensions, no lines that belong to none. */
export const isShape = (primitive: Primitive): boolean => {
  if (primitive.kind === 'text' || (primitive.pen !== undefined && said.has(primitive.pen))) return false
  if (primitive.part === undefined) return primitive.pen === 'visible'
  return !primitive.part.startsWith('dimension') && !primitive.part.endsWith('hinge line')
}

const isPartOf = (own: string[], wanted: string[]): boolean => {
  if (own.includes('fixings') && !wanted.includes('fixings')) return false
  return own.some((_, start) => wanted.every((word, i) => own[start + i] === word))
}

/**
 * Whether a mark of part belongs to what is lit. lit is a part's whole name or some of its words in order, or several such with commas
 * between: 'ledge' lights 'second leaf bottom ledge' and 'dimension ledge length', 'board 3' not 'board 13'. Fixings light only by
 * their own name.
 */
export function isLit(part: string | undefined, lit: string | null): boolean {
  if (part === undefined || lit === null || lit === '') return false
  const own = part.split(' ')
  return lit.split(', ').some((wanted) => isPartOf(own, wanted.split(' ')))
}
