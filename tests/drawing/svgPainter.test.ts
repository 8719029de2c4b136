import { describe, expect, it } from 'vitest'
import { isLit, paintSvg } from '../../renderer/drawing/svgPainter.ts'
import { fillingScale } from '../../shared/drawing/fitScale.ts'
import { gateDrawings } from '../../shared/drawing/gateDrawings.ts'
import { layOut } from '../../shared/drawing/layOut.ts'
import { designOf, gate } from '../fixtures/gates.ts'

describe('what is lit', () => {
  it('is a part by its whole name, or every part whose name holds those words in order', () => {
    expect(isLit('bottom ledge', 'bottom ledge')).toBe(true)
    expect(isLit('bottom ledge', 'ledge')).toBe(true)
    expect(isLit('dimension ledge length', 'ledge')).toBe(true)
    expect(isLit('bottom ledge', 'top ledge')).toBe(false)
    expect(isLit('board 13', 'board 1')).toBe(false)
    expect(isLit('board 13', 'board')).toBe(true)
  })

  it('is no fixing unless fixings are asked for, and nothing when nothing is', () => {
    expect(isLit('fixings ledge', 'ledge')).toBe(false)
    expect(isLit('fixings ledge', 'fixings')).toBe(true)
    expect(isLit('board 1', null)).toBe(false)
    expect(isLit('board 1', '')).toBe(false)
    expect(isLit(undefined, 'board')).toBe(false)
  })
})

describe('the screen’s painter', () => {
  const { back } = gateDrawings(gate, designOf(gate), 'mm')
  const box = { width: 180, height: 160 }
  const laid = layOut(back, { ...box, scale: fillingScale(back, box) })
  const elements = paintSvg(laid)

  it('paints one element for each primitive, in order, with its part', () => {
    expect(elements.map((element) => element.part)).toEqual(
      laid.primitives.map((primitive) => primitive.part),
    )
  })

  it('keeps words forwards and their figures whole', () => {
    const words = elements.filter((element) => element.tag === 'text')
    expect(words.map((element) => element.words)).toEqual(
      expect.arrayContaining(['950', '1780', 'hanging side', 'H']),
    )
    expect(words.every((element) => !String(element.attributes['transform'] ?? '').includes('scale'))).toBe(
      true,
    )
  })

  it('gives lines the width of their pen whatever the gate’s size', () => {
    const widths = new Set(
      elements.map((element) => element.attributes['stroke-width']).filter((width) => width !== undefined),
    )
    expect([...widths].every((width) => Number(width) >= 0.18 && Number(width) <= 0.5)).toBe(true)
  })
})
