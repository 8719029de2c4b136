import { describe, expect, it } from 'vitest'
import { heldUnits } from '../../shared/units/heldUnits.ts'

describe('figures and their units', () => {
  it('stay on one line, in brackets or not', () => {
    expect(heldUnits('no run along the ledge (−40 mm)')).toBe('no run along the ledge (−40\u00a0mm)')
    expect(heldUnits('3.5 kg, 12 % and 7 m² in all')).toBe('3.5\u00a0kg, 12\u00a0% and 7\u00a0m² in all')
  })

  it('stay on one line with their own fractions, and feet with their inches', () => {
    expect(heldUnits('about 38 ¾″ or 38 ¹¹⁄₁₆″')).toBe('about 38\u00a0¾″ or 38\u00a0¹¹⁄₁₆″')
    expect(heldUnits('2\' 11 1/2", 5′ 6″')).toBe('2\'\u00a011\u00a01/2", 5′\u00a06″')
  })

  it('leave every other space as it is', () => {
    for (const text of ['9 boards', '12 metres', 'less than 3', '3 Nov 2026', 'page 2 of 9', '1 in 20'])
      expect(heldUnits(text)).toBe(text)
  })
})
