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

function paintPrimitive(primitive: Primitive): SvgElement {
  switch (primitive.kind) {
    case 'path':
      return {
        tag: 'path',
        part: primitive.part,
        attributes: {
          class: `${penClass(primitive.pen)} ${fillClass(primitive.fill)}`,
          d: moves(primitive.points, primitive.closed),
          ...strokeOf(primitive.pen),
        },
      }
    case 'strokes':
      return {
        tag: 'path',
        part: primitive.part,
        attributes: {
          class: `${penClass(primitive.pen)} no-fill`,
          d: primitive.lines.map((line) => moves(line, false)).join(''),
          ...strokeOf(primitive.pen),
        },
      }
    case 'circle':
      return {
        tag: 'circle',
        part: primitive.part,
        attributes: {
          class: `${penClass(primitive.pen)} ${fillClass(primitive.fill)}`,
          cx: short(primitive.centre[0]),
          cy: short(primitive.centre[1]),
          r: primitive.radius,
          ...strokeOf(primitive.pen),
        },
      }
    case 'text':
      return {
        tag: 'text',
        part: primitive.part,
        words: primitive.text,
        attributes: {
          class: `words tone-${primitive.tone} weight-${primitive.weight}`,
          x: short(primitive.x),
          y: short(primitive.y),
          'font-size': primitive.size,
          'text-anchor': primitive.anchor,
          ...(primitive.angle === 0
            ? {}
            : {
                transform: `rotate(${short(-primitive.angle)} ${short(primitive.x)} ${short(primitive.y)})`,
              }),
        },
      }
  }
}

/** A laid-out drawing as SVG elements in painting order, in paper mm. Colours come from the style sheet by class. */
export const paintSvg = (laid: LaidOut): SvgElement[] => laid.primitives.map(paintPrimitive)

/**
 * Whether a mark of part belongs to what is lit. lit is a part's whole name or some of its words in order: 'ledge' lights
 * 'bottom ledge' and 'dimension ledge length', 'board 3' not 'board 13'. Fixings light only by their own name.
 */
export function isLit(part: string | undefined, lit: string | null): boolean {
  if (part === undefined || lit === null || lit === '') return false
  const [own, wanted] = [part.split(' '), lit.split(' ')]
  if (own[0] === 'fixings' && wanted[0] !== 'fixings') return false
  return own.some((_, start) => wanted.every((word, i) => own[start + i] === word))
}
