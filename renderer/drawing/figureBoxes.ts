import type { FigureSource } from '../../shared/drawing/drawing.ts'
import { capHeight } from '../../shared/drawing/pens.ts'
import type { Primitive } from '../../shared/drawing/primitives.ts'
import { textWidth } from '../../shared/drawing/textWidth.ts'

/** A figure of a drawing that comes from somewhere: its words, the dimension it belongs to, and the box round it in pixels. */
export type FigureBox = {
  key: string
  words: string
  part: string
  source: FigureSource
  left: number
  top: number
  width: number
  height: number
}

type Words = Extract<Primitive, { kind: 'text' }>

/** The upright box round a line of words, whichever way they run, mm of paper. */
function boxOf({ x, y, text, size, weight, anchor, angle }: Words) {
  const width = textWidth(text, size, weight)
  const rise = capHeight * size
  const turn = (angle * Math.PI) / 180
  const from = { start: 0, middle: -0.5, end: -1 }[anchor] * width
  const corners = [from, from + width].flatMap((along) =>
    [0, rise].map((up) => [
      x + along * Math.cos(turn) - up * Math.sin(turn),
      y - along * Math.sin(turn) - up * Math.cos(turn),
    ]),
  )
  const [xs, ys] = [corners.map(([left]) => left ?? 0), corners.map(([, top]) => top ?? 0)]
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) }
}

/** The figures of a laid-out drawing that come from somewhere, in the order they are drawn. air is the drawing's distance from the box's edges. */
export function figureBoxes(
  primitives: readonly Primitive[],
  { air, pixels }: { air: number; pixels: number },
): FigureBox[] {
  const counts = new Map<string, number>()
  return primitives.flatMap((primitive) => {
    if (primitive.kind !== 'text' || !primitive.source || primitive.part === undefined) return []
    const { part, source, text } = primitive
    const count = counts.get(part) ?? 0
    counts.set(part, count + 1)
    const { left, right, top, bottom } = boxOf(primitive)
    return [
      {
        key: `${part} ${count}`,
        words: text,
        part,
        source,
        left: (left + air) * pixels,
        top: (top + air) * pixels,
        width: (right - left) * pixels,
        height: (bottom - top) * pixels,
      },
    ]
  })
}
