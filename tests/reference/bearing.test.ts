import { describe, expect, test } from 'vitest'
import { bearingStrength, hankinson } from '../../shared/gate/bearing.ts'
import { strengthClass } from '../../shared/timber/strengthClasses.ts'
import { stepJointDepth } from '../../shared/gate/stepJoint.ts'

const angles = [0, 15, 30, 45, 50, 55, 60, 75, 90]

// Worked out by hand from the class's strengths in EN 338:2016 table 1.
const worked: [string, number[]][] = [
  ['C16', [17, 11.719, 6.339, 3.896, 3.436, 3.083, 2.812, 2.336, 2.2]],
  ['C18', [18, 12.153, 6.439, 3.921, 3.452, 3.093, 2.819, 2.337, 2.2]],
  ['C24', [21, 14.04, 7.368, 4.468, 3.931, 3.52, 3.206, 2.657, 2.5]],
  ['D24', [21, 17.212, 11.529, 7.946, 7.172, 6.553, 6.062, 5.165, 4.9]],
  ['D30', [24, 19.412, 12.752, 8.683, 7.816, 7.127, 6.582, 5.592, 5.3]],
  ['D40', [27, 21.397, 13.655, 9.138, 8.197, 7.452, 6.867, 5.81, 5.5]],
]

const cases = worked.flatMap(([name, values]) =>
  values.map((value, i) => ({ name, angle: angles[i] ?? NaN, value })),
)

const strengthOf = (name: string) => {
  const found = strengthClass(name)
  if (!found) throw new Error(`no class ${name}`)
  return { along: found.value.compression, across: found.value.compressionAcross }
}

describe('bearing at an angle to the grain', () => {
  test.each(cases)(
    'EN 1995-1-1 eq. 6.16 on EN 338:2016 table 1: $name at $angle° is $value N/mm²',
    ({ name, angle, value }) => {
      expect(Math.abs(bearingStrength(strengthOf(name), angle) - value)).toBeLessThanOrEqual(0.0006)
    },
  )

  test('EN 1995-1-1 eq. 6.16 with kc90 1.5: C24 at 45° is 6.364 N/mm²', () => {
    expect(bearingStrength(strengthOf('C24'), 45, 1.5)).toBeCloseTo(6.364, 3)
  })

  test('Hankinson’s formula as an encyclopaedia gives it: at 45° it is twice the product over the sum', () => {
    expect(hankinson({ along: 37.1, across: 6.3 }, 45)).toBeCloseTo((2 * 37.1 * 6.3) / (37.1 + 6.3), 12)
  })
})

describe('depth of a step joint', () => {
  test.each([
    [150, 45, 37.5],
    [150, 55, 31.25],
    [150, 65, 25],
  ])(
    'German annex to EN 1995-1-1 as a structural library cites it: %i deep at %i° allows %f mm',
    (h, angle, depth) => {
      expect(stepJointDepth(h, angle)).toBeCloseTo(depth, 9)
    },
  )
})
