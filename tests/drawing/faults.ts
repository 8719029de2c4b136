import type { Drawing } from '../../shared/drawing/drawing.ts'
import { fillingScale } from '../../shared/drawing/fitScale.ts'
import { layOut } from '../../shared/drawing/layOut.ts'
import { outside, overlaps, wordBoxes } from './wordBoxes.ts'

/** The box that a drawing has on a card, on a large screen and on a small one, mm. */
export const boxes = [
  { width: 145, height: 250 },
  { width: 240, height: 190 },
  { width: 130, height: 120 },
]

/** Words of a drawing that collide or leave the box, in each of the boxes that it may be laid out on. */
export function faults(drawing: Drawing): string[] {
  return boxes.flatMap((box) => {
    const { primitives } = layOut(drawing, { ...box, scale: fillingScale(drawing, box) })
    const words = wordBoxes(primitives)
    const found = [
      ...overlaps(words),
      ...outside(words, { left: 0, top: 0, right: box.width, bottom: box.height }).map(
        (text) => `${text} leaves the box`,
      ),
    ]
    return found.map((fault) => `${drawing.title} ${box.width} × ${box.height}: ${fault}`)
  })
}
