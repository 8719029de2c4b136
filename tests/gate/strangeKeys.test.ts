import { describe, expect, it } from 'vitest'
import { readRequest } from '../../electron/handlers/longRequest.ts'
import { strangeKeys } from '../../shared/gate/strangeKeys.ts'

/** A list that says what its own methods should make: sent by a window, it keeps this. */
const withConstructor = (list: unknown[]): unknown[] =>
  Object.assign(list, { constructor: { [Symbol.species]: 7 } })

describe('names that every object has already', () => {
  it('are found at any depth, in lists and on lists', () => {
    expect(strangeKeys({ spec: [{ toString: 1 }, { top: { valueOf: 2 } }] })).toEqual([
      ['spec', 0, 'toString'],
      ['spec', 1, 'top', 'valueOf'],
    ])
    expect(strangeKeys({ heights: withConstructor([810, 1420]) })).toEqual([['heights', 'constructor']])
  })

  it('are found once, not what stands under them, and in a circle too', () => {
    const circle: Record<string, unknown> = { constructor: { prototype: 1 } }
    circle['back'] = { again: circle }
    expect(strangeKeys(circle)).toEqual([['constructor']])
  })

  it('on a long list of prices change nothing in how it is read', async () => {
    const read = await readRequest('prices.preview', { prices: withConstructor(Array(1500).fill('7')) })
    expect(read.ok).toBe(false)
  })
})
