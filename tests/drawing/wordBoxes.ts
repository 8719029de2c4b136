import { capHeight } from '../../shared/drawing/pens.ts'
import type { Primitive, TextPrimitive } from '../../shared/drawing/primitives.ts'
import { textWidth } from '../../shared/drawing/textWidth.ts'
import type { Point } from '../../shared/geometry/point.ts'

/** The box about a line of words from its baseline to the head of its capitals, turned as they are. */
export type WordBox = { text: string; corners: Point[] }

type Words = Pick<TextPrimitive, 'x' | 'y' | 'text' | 'size' | 'weight' | 'anchor' | 'angle'>

/** size in the unit of x and y; width as measured. */
export function wordBox(words: Words, width = textWidth(words.text, words.size, words.weight)): WordBox {
  const start = { start: 0, middle: -0.5, end: -1 }[words.anchor] * width
  const turn = (-words.angle * Math.PI) / 180
  const at = (along: number, up: number): Point => [
    words.x + along * Math.cos(turn) + up * Math.sin(turn),
    words.y + along * Math.sin(turn) - up * Math.cos(turn),
  ]
  const rise = capHeight * words.size
  return {
    text: words.text,
    corners: [at(start, 0), at(start + width, 0), at(start + width, rise), at(start, rise)],
  }
}

export const wordBoxes = (primitives: Primitive[]): WordBox[] =>
  primitives.flatMap((primitive) => (primitive.kind === 'text' ? [wordBox(primitive)] : []))

/** Whether two boxes share more than a hair's breadth, by the separating-axis theorem. */
export function overlap(a: WordBox, b: WordBox, hair = 0.05): boolean {
  const axes = [a, b].flatMap(({ corners: [p, q, , s] }) =>
    p && q && s ? [q, s].map((r): Point => [r[0] - p[0], r[1] - p[1]]) : [],
  )
  return axes.every(([x, y]) => {
    const length = Math.hypot(x, y)
    const spans = [a, b].map(({ corners }) =>
      corners.map((corner) => (corner[0] * x + corner[1] * y) / length),
    )
    const [one, other] = spans.map((span) => [Math.min(...span), Math.max(...span)] as const)
    return one !== undefined && other !== undefined && one[0] < other[1] - hair && other[0] < one[1] - hair
  })
}

/** The upright box about words, however they are turned. */
const upright = ({ corners }: WordBox) => ({
  left: Math.min(...corners.map(([x]) => x)),
  right: Math.max(...corners.map(([x]) => x)),
  top: Math.min(...corners.map(([, y]) => y)),
  bottom: Math.max(...corners.map(([, y]) => y)),
})

/** Every pair of words that lie over one another. Only those whose upright boxes meet are looked at closely. */
export function overlaps(boxes: WordBox[]): string[] {
  const about = boxes.map((box) => ({ box, ...upright(box) }))
  return about.flatMap((one, i) =>
    about.slice(i + 1).flatMap((other) => {
      const apart =
        one.right < other.left || other.right < one.left || one.bottom < other.top || other.bottom < one.top
      return !apart && overlap(one.box, other.box) ? [`${one.box.text} | ${other.box.text}`] : []
    }),
  )
}

/** Words that reach past a sheet's edges. */
export const outside = (
  boxes: WordBox[],
  sheet: { left: number; top: number; right: number; bottom: number },
): string[] =>
  boxes
    .filter(({ corners }) =>
      corners.some(
        ([x, y]) =>
          x < sheet.left - 0.01 || x > sheet.right + 0.01 || y < sheet.top - 0.01 || y > sheet.bottom + 0.01,
      ),
    )
    .map((box) => box.text)
