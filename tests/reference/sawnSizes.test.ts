import { describe, expect, test } from 'vitest'
import {
  planedSize,
  planingAllowance,
  sawnFor,
  targetSizes,
  tolerance,
} from '../../shared/timber/sawnSizes.ts'

describe('target sizes', () => {
  test.each([
    [50, 47],
    [63, 60],
    [75, 72],
    [100, 97],
    [125, 120],
    [150, 145],
    [175, 170],
    [200, 195],
    [225, 220],
    [250, 245],
    [300, 295],
  ])('BS EN 336, Building Construction Handbook 8th ed.: sawn %i planes to %i', (sawn, planed) => {
    expect(planedSize(sawn)).toBe(planed)
    expect(sawnFor(planed)).toBe(sawn)
  })

  test('BS EN 336: eleven sizes, and none between', () => {
    expect(targetSizes).toHaveLength(11)
    expect(planedSize(110)).toBeUndefined()
    expect(sawnFor(115)).toBe(125)
    expect(sawnFor(296)).toBeUndefined()
  })

  test.each([
    [100, 'sawn', -1, 3],
    [125, 'sawn', -2, 4],
    [97, 'planed', -1, 1],
    [120, 'planed', -1.5, 1.5],
  ] as const)('BS EN 336, two construction books: %i %s may be %f to %f off', (size, finish, under, over) => {
    expect(tolerance(size, finish)).toEqual({ under, over })
  })
})

describe('planing allowances (BS 4471:1978 from memory, so no more than a proposal)', () => {
  test('matching ex 125 × 25 comes to 119 × 21, as matchboard is sold (common practice)', () => {
    expect([125 - planingAllowance(125, 'matching'), 25 - planingAllowance(25, 'matching')]).toEqual([
      119, 21,
    ])
  })

  test('constructional allowances agree with the published planed sizes', () => {
    for (const { sawn, planed } of targetSizes)
      expect(sawn - planingAllowance(sawn, 'constructional')).toBe(planed)
  })
})
