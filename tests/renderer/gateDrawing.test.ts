import { mount } from '@vue/test-utils'
import { describe, expect, it } from 'vitest'
import GateDrawing from '../../renderer/drawing/GateDrawing.vue'
import { gateDrawings } from '../../shared/drawing/gateDrawings.ts'
import { designOf, gate } from '../fixtures/gates.ts'
import { heldUnits } from '../../shared/units/heldUnits.ts'

const { back } = gateDrawings(gate, designOf(gate), 'mm')
const shown = (lit: string | null = null) => mount(GateDrawing, { props: { drawing: back, lit } })

describe('the drawing on screen', () => {
  it('is one picture with a title and a sentence for those who don’t see it', () => {
    const svg = shown().get('svg')
    expect(svg.attributes('role')).toBe('img')
    const ids = svg.attributes('aria-labelledby')?.split(' ') ?? []
    expect(ids.map((id) => svg.get(`[id="${id}"]`).text())).toEqual(
      [back.title, back.description].map(heldUnits),
    )
  })

  it('carries a scale bar and every figure', () => {
    const words = shown()
      .findAll('text')
      .map((text) => text.text())
    expect(words).toEqual(expect.arrayContaining(['950', '1780', 'H']))
    expect(words.some((text) => /^\d+ mm$/.test(text))).toBe(true)
  })

  it('lights the part it is told to and nothing else', () => {
    const parts = new Set(
      shown('bottom ledge')
        .findAll('.lit')
        .map((mark) => mark.attributes('data-part')),
    )
    expect([...parts].sort()).toEqual([
      'bottom ledge',
      'dimension bottom ledge width',
      'dimension foot to bottom ledge',
    ])
    expect(shown().findAll('.lit')).toEqual([])
  })

  it('tells which part the pointer is on, once, and which is picked', async () => {
    const drawing = shown()
    const brace = drawing.get('[data-part="single brace"]')
    await brace.trigger('pointerover')
    await brace.trigger('pointerover')
    await brace.trigger('click')
    await drawing.get('svg').trigger('pointerleave')
    expect(drawing.emitted('hover')).toEqual([['single brace'], [null]])
    expect(drawing.emitted('pick')).toEqual([['single brace']])
  })
})
