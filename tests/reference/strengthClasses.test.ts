import { describe, expect, test } from 'vitest'
import { loadFactor, materialFactor, strengthClass } from '../../shared/timber/strengthClasses.ts'

// Read in two open structural libraries that agree, but for D40's stiffness (one prints 13600; 13000 fits E90 = E0 / 15).
describe('strength classes', () => {
  test.each([
    ['C16', 16, 8.5, 17, 2.2, 3.2, 8000, 5400, 500, 310, 370],
    ['C18', 18, 10, 18, 2.2, 3.4, 9000, 6000, 560, 320, 380],
    ['C24', 24, 14.5, 21, 2.5, 4.0, 11000, 7400, 690, 350, 420],
    ['D24', 24, 14, 21, 4.9, 3.7, 10000, 8400, 630, 485, 580],
    ['D30', 30, 18, 24, 5.3, 3.9, 11000, 9200, 690, 530, 640],
    ['D40', 40, 24, 27, 5.5, 4.2, 13000, 10900, 810, 550, 660],
    // Read in one library only.
    ['C14', 14, 7.2, 16, 2.0, 3.0, 7000, 4700, 440, 290, 350],
    ['C20', 20, 11.5, 19, 2.3, 3.6, 9500, 6400, 590, 330, 400],
    ['C22', 22, 13, 20, 2.4, 3.8, 10000, 6700, 630, 340, 410],
    ['C27', 27, 16.5, 22, 2.5, 4.0, 11500, 7700, 720, 360, 430],
    ['C30', 30, 19, 24, 2.7, 4.0, 12000, 8000, 750, 380, 460],
  ])('EN 338:2016 table 1: %s', (name, ...row) => {
    const found = strengthClass(name)?.value
    expect(found).toEqual({
      name,
      bending: row[0],
      tension: row[1],
      compression: row[2],
      compressionAcross: row[3],
      shear: row[4],
      stiffness: row[5],
      stiffnessLow: row[6],
      shearStiffness: row[7],
      densityLow: row[8],
      density: row[9],
    })
  })
})

describe('load duration', () => {
  test.each([
    ['permanent', 0.6, 0.5],
    ['long', 0.7, 0.55],
    ['medium', 0.8, 0.65],
    ['short', 0.9, 0.7],
    ['instantaneous', 1.1, 0.9],
  ] as const)(
    'EN 1995-1-1 table 3.1, solid timber, %s: %f under cover and %f in the weather',
    (duration, dry, wet) => {
      expect(loadFactor(1, duration)).toBe(dry)
      expect(loadFactor(2, duration)).toBe(dry)
      expect(loadFactor(3, duration)).toBe(wet)
    },
  )

  test('EN 1995-1-1 table 2.3: the factor on solid timber is 1.3', () => {
    expect(materialFactor).toBe(1.3)
  })
})
