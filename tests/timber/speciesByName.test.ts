import { describe, expect, it } from 'vitest'
import { classDensity, ovenDryGravity, speciesNamed, speciesNames } from '../../shared/timber/species.ts'

describe('a species', () => {
  it('is found whatever its capitals, spaces and hyphens, and by its other names', () => {
    expect(speciesNamed('european REDWOOD')?.name).toBe('European redwood')
    expect(speciesNamed('Douglas fir')?.density).toBe(545)
    expect(speciesNamed('western red-cedar')?.name).toBe('western redcedar')
    expect(speciesNames.every((name) => speciesNamed(name) !== undefined)).toBe(true)
  })

  it('has the workshop’s own density before the listed one', () => {
    expect(speciesNamed('oak', { oak: { density: 689 } })).toMatchObject({
      density: 689,
      certainty: 'workshop',
    })
  })

  it('is unknown unless it is described with a density or a strength class', () => {
    expect(speciesNamed('ekki')).toBeUndefined()
    expect(speciesNamed('ekki', { ekki: { tangential: 0.003 } })).toBeUndefined()
    expect(speciesNamed('ekki', { ekki: { strengthClass: 'D24' } })).toMatchObject({
      density: 580,
      hardwood: true,
    })
    expect(speciesNamed('ekki', { Ekki: { density: 1010 } })?.density).toBe(1010)
  })

  it('is not found through what every object has', () => {
    for (const name of ['constructor', 'toString', '__proto__', 'hasOwnProperty']) {
      expect(speciesNamed(name)).toBeUndefined()
      expect(speciesNamed('ekki', { ekki: { strengthClass: name } })).toBeUndefined()
    }
  })

  it('is told from another in any script', () => {
    const own = { Дуб: { density: 701 } }
    expect(speciesNamed('дуб', own)?.density).toBe(701)
    expect(speciesNamed('Клён', own)).toBeUndefined()
    expect(speciesNamed('…', { '!!': { density: 500 } })).toBeUndefined()
  })
})

describe('ovenDryGravity', () => {
  it('rises with density', () => {
    const gravities = [370, 420, 510, 660, 720].map(ovenDryGravity)
    expect([...gravities].sort((a, b) => a - b)).toEqual(gravities)
    expect(Object.values(classDensity).every((density) => ovenDryGravity(density) < 1)).toBe(true)
  })
})
