import { describe, expect, test } from 'vitest'
import { densityAt } from '../../shared/timber/density.ts'
import { ovenDryGravity } from '../../shared/timber/species.ts'
import { densityPerPoundCubicFoot } from '../../shared/units/imperial.ts'

describe('density at a moisture content', () => {
  test('Wood Handbook FPL-GTR-190 ch. 4 as a university forestry page cites it: 0.40 at 12 % is 448 kg/m³', () => {
    expect(densityAt(0.4, 12)).toBeCloseTo(448, 9)
  })

  test('the same page: 0.40 at 12 % is 27.968 lb/ft³', () => {
    expect(densityAt(0.4, 12) / densityPerPoundCubicFoot).toBeCloseTo(27.968, 2)
  })

  test('Oregon State University wood data: Douglas-fir 0.48 at 12 % weighs 545 kg/m³ within 2 %', () => {
    expect(Math.abs(densityAt(0.48, 12) / 545 - 1)).toBeLessThan(0.02)
  })

  test('Oregon State University wood data: western larch 0.52 at 12 % weighs 577 kg/m³ within 2 %', () => {
    expect(Math.abs(densityAt(0.52, 12) / 577 - 1)).toBeLessThan(0.02)
  })
})

describe('oven-dry specific gravity', () => {
  test('NDS relation as an engineering table cites it: 28.08 lb/ft³ at 12 % is 0.42', () => {
    expect(ovenDryGravity(28.08 * densityPerPoundCubicFoot)).toBeCloseTo(0.42, 3)
  })
})
