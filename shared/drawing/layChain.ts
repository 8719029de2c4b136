import type { Point } from '../geometry/point.ts'
import type { Chain } from './drawing.ts'
import { capHeight, textSizes } from './pens.ts'
import { placeLabels, type PlacedLabel } from './placeLabels.ts'
import type { Primitive, TextPrimitive } from './primitives.ts'
import { textWidth } from './textWidth.ts'

/** Paper mm: gap before an extension line, its run past the dimension line, half a tick, a figure's lift off the line. */
const [gap, overrun, halfTick, lift] = [1.5, 1.4, 1, 1.1]

/** From model mm to the place on paper. */
export type ToPaper = (point: Point) => Point

/**
 * A chain as lines, ticks and figures. A chain along y is laid out as if it ran along x and then stood up, reading from the right.
 * page is the width and height of the paper it may use.
 */
export function layChain(
  chain: Chain,
  toPaper: ToPaper,
  page: { width: number; height: number },
): Primitive[] {
  const upright = chain.axis === 'y'
  const across = upright ? toPaper([chain.base, 0])[0] : toPaper([0, chain.base])[1]
  const line = upright ? across + chain.offset : across - chain.offset
  const stops = chain.stops.map((stop) => (upright ? -toPaper([0, stop])[1] : toPaper([stop, 0])[0]))
  const place = (along: number, off: number): Point => (upright ? [off, -along] : [along, off])
  const [start, end] = [stops[0] ?? 0, stops.at(-1) ?? 0]
  // Left of the object the side beyond the line is crossed by extension lines, so long figures stay on the free side.
  const toLeft = upright && chain.offset < 0
  const sheet = upright ? { before: 3.6, after: 14.5 } : { before: start, after: page.width - end }
  const placed = placeLabels(stops, chain.labels, { ...(chain.reach ?? sheet), oneSide: toLeft })
  const outer = placed.filter((label) => label.outside)
  const from = Math.min(start, ...outer.map((label) => label.at - label.width / 2))
  const to = Math.max(end, ...outer.map((label) => label.at + label.width / 2))
  const away = Math.sign(line - across) || 1
  const part = chain.part
  const extensions = stops
    .filter((stop) => !isInside(stop, placed))
    .map((stop): [Point, Point] => [place(stop, across + away * gap), place(stop, line + away * overrun)])
  return [
    { kind: 'strokes', pen: 'dimension', part, lines: [[place(from, line), place(to, line)], ...extensions] },
    {
      kind: 'strokes',
      pen: 'tick',
      part,
      lines: stops.filter((stop) => !isCrowded(stop, placed)).map((stop) => tick(place(stop, line))),
    },
    ...placed.flatMap((label) => figure(label, { line, place, upright, toLeft, part })),
  ]
}

/** Whether a stop lies within lengths written once: its extension line would strike the figure through. */
const isInside = (stop: number, placed: PlacedLabel[]): boolean =>
  placed.some((label) => stop > label.from + 1e-6 && stop < label.to - 1e-6)

/** Ticks within lengths written once are left out where they would run together. */
const isCrowded = (stop: number, placed: PlacedLabel[]): boolean =>
  placed.some(
    (label) =>
      stop > label.from + 1e-6 && stop < label.to - 1e-6 && label.to - label.from < label.count * 2.6,
  )

/** The architect's oblique stroke, rising to the right on the page whichever way the chain runs. */
const tick = ([x, y]: Point): [Point, Point] => [
  [x - halfTick, y + halfTick],
  [x + halfTick, y - halfTick],
]

type Row = {
  line: number
  place: (along: number, off: number) => Point
  upright: boolean
  toLeft: boolean
  part: string | undefined
}

function figure(placed: PlacedLabel, row: Row): Primitive[] {
  const part = placed.label.part ?? row.part
  const { source } = placed.label
  const write = (text: string, size: number, off: number): TextPrimitive => {
    const [x, y] = row.place(placed.at, row.line + off)
    const angle = row.upright ? 90 : 0
    return {
      kind: 'text',
      x,
      y,
      text,
      size,
      weight: 'regular',
      anchor: 'middle',
      angle,
      tone: 'dimension',
      part,
    }
  }
  const size = textSizes[placed.size]
  const clearOfTicks = overrun + 0.4
  const beyond = (type: number) => clearOfTicks + capHeight * type
  if (placed.row === 'beyond')
    return [{ ...write(placed.text, size, row.toLeft ? -clearOfTicks : beyond(size)), source }]
  const out: TextPrimitive[] = [{ ...write(placed.text, size, -lift - (placed.count > 1 ? 0.6 : 0)), source }]
  const second = placed.label.secondary
  if (second !== undefined && textWidth(second, textSizes.figure) <= placed.width * 3)
    out.push(write(second, textSizes.figure, beyond(textSizes.figure)))
  return out
}
