import { describe, expect, it } from 'vitest'
import { gateDrawings } from '../../shared/drawing/gateDrawings.ts'
import { pictureOf } from '../../shared/drawing/picture.ts'
import type { Primitive } from '../../shared/drawing/primitives.ts'
import { design } from '../../shared/gate/design.ts'
import { wholeGates } from './wholeGates.ts'

const drawn = wholeGates.flatMap(({ name, spec }) => {
  const outcome = design(spec)
  return outcome.made ? [{ name, drawings: gateDrawings(spec, outcome.design, 'mm') }] : []
})

describe('a picture of a gate', () => {
  it('is drawn of every example gate, just as wide as asked, with nothing past its edges', () => {
    expect(drawn.length).toBeGreaterThan(30)
    for (const { name, drawings } of drawn)
      for (const sizes of [true, false])
        for (const width of [60, 180, 400]) {
          const { back, face, section } = drawings
          const picture = pictureOf([back, face, section], { width, sizes, unit: 'mm' })
          expect([name, picture.width]).toEqual([name, width])
          const places = picture.primitives.flatMap((one) => (one.kind === 'path' ? one.points : []))
          if (width < 180) continue
          const across = places.map(([x]) => x)
          const down = places.map(([, y]) => y)
          expect(Math.min(...across), name).toBeGreaterThan(-1)
          expect(Math.max(...across), name).toBeLessThan(width + 1)
          expect(Math.min(...down), name).toBeGreaterThan(-1)
          expect(Math.max(...down), name).toBeLessThan(picture.height + 1)
        }
  })

  it('says its sizes, or nothing but the view’s name', () => {
    const [{ drawings } = { drawings: null }] = drawn
    if (!drawings) throw new Error('no gate')
    const words = (sizes: boolean) =>
      pictureOf([drawings.face], { width: 180, sizes, unit: 'mm' }).primitives.flatMap((one) =>
        one.kind === 'text' ? [one.text] : [],
      )
    expect(words(true).length).toBeGreaterThan(5)
    expect(words(false)).toEqual(['Face'])
  })

  it('draws back and face at one scale', () => {
    const [{ drawings } = { drawings: null }] = drawn
    if (!drawings) throw new Error('no gate')
    const { primitives } = pictureOf([drawings.back, drawings.face], { width: 180, sizes: false, unit: 'mm' })
    const boards = (side: (x: number) => boolean) =>
      primitives
        .flatMap((one: Primitive) => (one.kind === 'path' && one.fill === 'board' ? one.points : []))
        .map(([x]) => x)
        .filter(side)
    const [left, right] = [boards((x) => x < 90), boards((x) => x > 90)].map(
      (places) => Math.max(...places) - Math.min(...places),
    )
    expect(left).toBeGreaterThan(40)
    expect(right).toBeCloseTo(left ?? 0, 6)
    expect(() => pictureOf([], { width: 180, sizes: true, unit: 'mm' })).toThrow(RangeError)
  })
})
