import { describe, expect, it } from 'vitest'
import { readableNames } from '../../renderer/drawing/readableNames.ts'
import { extraDrawings } from '../../shared/drawing/extraDrawings.ts'
import { fillingScale } from '../../shared/drawing/fitScale.ts'
import { gateDrawings } from '../../shared/drawing/gateDrawings.ts'
import { layOut } from '../../shared/drawing/layOut.ts'
import { designOf } from '../fixtures/gates.ts'
import { outside, overlaps, wordBoxes } from './wordBoxes.ts'
import { wholeGates } from './wholeGates.ts'

/** The drawing's place in a window of 1093 × 614 px, in mm of its paper at 2.9 px each. */
const pixels = 2.9
const box = { width: 440 / pixels - 5, height: 405 / pixels - 11 }

describe('names in a drawing of a small window', () => {
  it('are 9.5 px high, and figures as they were', () => {
    const [sized] = wholeGates
    const spec = sized?.spec
    if (!spec) throw new Error('there is no example')
    const { back } = gateDrawings(spec, designOf(spec), 'mm')
    const { primitives } = layOut(back, { ...box, scale: fillingScale(back, box) })
    const sizes = (of: typeof primitives) =>
      of.flatMap((one) => (one.kind === 'text' ? [Math.round(one.size * pixels * 10) / 10] : []))
    expect(Math.min(...sizes(primitives))).toBe(8.7)
    expect(Math.min(...sizes(readableNames(primitives, pixels)))).toBe(9.5)
    expect(sizes(readableNames(primitives, pixels)).filter((size) => size > 9.5)).toEqual(
      sizes(primitives).filter((size) => size > 9.5),
    )
  })

  it.each(wholeGates)('lie over no other words and reach past no edge: $name', ({ spec }) => {
    const made = designOf(spec)
    for (const drawing of Object.values({
      ...gateDrawings(spec, made, 'mm'),
      ...extraDrawings(spec, made, 'mm'),
    })) {
      const { primitives } = layOut(drawing, { ...box, scale: fillingScale(drawing, box) })
      const before = wordBoxes(primitives)
      const after = wordBoxes(readableNames(primitives, pixels))
      expect({ view: drawing.title, over: overlaps(after) }).toEqual({
        view: drawing.title,
        over: overlaps(before),
      })
      const sheet = { left: 0, top: 0, right: box.width, bottom: box.height }
      expect(outside(after, sheet)).toEqual(outside(before, sheet))
    }
  })
})
