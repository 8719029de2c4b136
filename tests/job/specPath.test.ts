import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { canHold, placedAt, sameValue, valueAt } from '../../shared/job/specPath.ts'

describe('a path of keys', () => {
  it('leads to what stands there, own keys only', () => {
    const spec = { size: { width: 915 }, heights: [200, 1600] }
    expect([
      valueAt(spec, ['size', 'width']),
      valueAt(spec, ['heights', '1']),
      valueAt(spec, ['heights', 'length']),
      valueAt(spec, ['size', 'toString']),
      valueAt(spec, ['size', 'width', 'x']),
    ]).toEqual([915, 1600, 2, undefined, undefined])
  })

  it('can lead one past the end of a list and through keys still to be made, never through a number or a text', () => {
    const spec = { gap: 2, name: 'x', heights: [200] }
    expect(
      [
        ['heights', '0'],
        ['heights', '1'],
        ['heights', '2'],
        ['heights', '-1'],
        ['heights', '1e1'],
        ['site', 'gust'],
        ['gap', 'x'],
        ['name', '0'],
      ].map((path) => canHold(spec, path)),
    ).toEqual([true, true, false, false, false, true, false, false])
  })

  it('takes a key or a list’s item out, and makes nothing when there is nothing to take out', () => {
    expect(placedAt({ a: { b: 1, c: 2 } }, ['a', 'b'], undefined)).toEqual({ a: { c: 2 } })
    expect(placedAt({ a: [7, 8, 9] }, ['a', '1'], undefined)).toEqual({ a: [7, 9] })
    expect(placedAt({ a: 1 }, ['site', 'gust'], undefined)).toEqual({ a: 1 })
  })

  it('gives back what was placed at it, and leaves the original and the rest alone (300 seeded)', () => {
    const key = fc.constantFrom('a', 'b', 'c')
    const tree = fc.dictionary(key, fc.oneof(fc.integer(), fc.dictionary(key, fc.integer())))
    fc.assert(
      fc.property(tree, fc.array(key, { minLength: 1, maxLength: 2 }), fc.integer(), (spec, path, value) => {
        fc.pre(canHold(spec, path))
        const before = structuredClone(spec)
        const after = placedAt(spec, path, value)
        expect(valueAt(after, path)).toBe(value)
        expect(spec).toEqual(before)
        for (const other of Object.keys(spec))
          if (other !== path[0]) expect(valueAt(after, [other])).toEqual(spec[other])
      }),
      { seed: 20260305, numRuns: 300 },
    )
  })
})

describe('sameness', () => {
  it('looks at what is said, not at the order of keys; absent is null; a list is no object', () => {
    expect(sameValue({ a: 1, b: [2, { c: 3 }] }, { b: [2, { c: 3 }], a: 1 })).toBe(true)
    expect(sameValue({ a: undefined }, { a: null })).toBe(true)
    expect(sameValue(undefined, null)).toBe(true)
    expect([sameValue([], {}), sameValue([1], [1, 2]), sameValue(1, '1'), sameValue({ a: 1 }, null)]).toEqual(
      [false, false, false, false],
    )
  })
})
