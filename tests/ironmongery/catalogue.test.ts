import { describe, expect, it } from 'vitest'
import { catalogue, entryOf, finishOf } from '../../shared/ironmongery/catalogue.ts'
import { hookAndBandSets } from '../../shared/ironmongery/hookAndBand.ts'
import { teeHinges } from '../../shared/ironmongery/teeHinges.ts'

/** Steel in kg/mm³. */
const steel = 7.85e-6

describe('the list of ironmongery', () => {
  it('has every id once and something of each kind', () => {
    expect(new Set(catalogue.map(({ id }) => id)).size).toBe(catalogue.length)
    expect(new Set(catalogue.map(({ kind }) => kind))).toEqual(
      new Set(['hinge', 'latch', 'lock', 'bolt', 'handle']),
    )
  })

  it('gives an entry by id and kind, and none for another kind or an unknown id', () => {
    expect(entryOf('tee-450-galvanised', 'hinge')).toMatchObject({ strapLength: 450, maxLeafMassKg: 38 })
    expect(entryOf('tee-450-galvanised', 'lock')).toBeUndefined()
    expect(entryOf('no-such-thing', 'hinge')).toBeUndefined()
    expect(finishOf('drop-bolt-450-stainless')).toBe('stainless')
    expect(finishOf('no-such-thing')).toBeUndefined()
  })

  it.each([...teeHinges, ...hookAndBandSets])(
    'weighs $name at no less than its strap’s steel and no more than three times that',
    ({ strapLength, band, massKg }) => {
      const strap = strapLength * band.width * band.thickness * steel
      expect(massKg).toBeGreaterThan(strap)
      expect(massKg).toBeLessThan(3 * strap)
    },
  )

  it('carries more with every longer hinge of a kind', () => {
    for (const list of [teeHinges, hookAndBandSets]) {
      const own = list.filter(({ finish }) => finish === 'galvanised')
      for (const [index, hinge] of own.entries()) {
        const next = own[index + 1]
        if (!next) continue
        expect(next.strapLength).toBeGreaterThan(hinge.strapLength)
        expect(next.maxLeafMassKg).toBeGreaterThan(hinge.maxLeafMassKg)
      }
    }
  })

  // From 35 beyond the pin to 15 short of the tip.
  it('has screw holes that fill each strap at their spacing', () => {
    for (const { strapLength, screws } of [...teeHinges, ...hookAndBandSets])
      expect(Math.abs((screws.count - 1) * screws.spacing - (strapLength - 50))).toBeLessThan(10)
  })
})
