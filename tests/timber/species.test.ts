import { describe, expect, it, test } from 'vitest'
import { isSure, leastSure, fact } from '../../shared/timber/fact.ts'
import { coefficientFromShrinkage, shrinkageFromCoefficient } from '../../shared/timber/shrinkage.ts'
import {
  classDensity,
  crossGrain,
  listedTimbers,
  speciesNamed,
  speciesNames,
  timberNamed,
} from '../../shared/timber/species.ts'
import { strengthClass } from '../../shared/timber/strengthClasses.ts'

const valued = [
  'density',
  'tangential',
  'radial',
  'tangentialShrinkage',
  'radialShrinkage',
  'movementStart',
  'strengthClass',
  'durability',
  'stainsIron',
  'corrodes',
  'fixings',
  'dust',
] as const

describe('the list', () => {
  test('holds nine timbers in the trade’s order', () => {
    expect(speciesNames).toEqual([
      'European redwood',
      'European whitewood',
      'Douglas-fir',
      'European larch',
      'western redcedar',
      'European oak',
      'sweet chestnut',
      'iroko',
      'acetylated pine',
    ])
  })

  test.each(listedTimbers.flatMap((timber) => valued.map((key) => ({ name: timber.name, key, timber }))))(
    '$name: $key has a source, and says when it is from memory',
    ({ key, timber }) => {
      const { value, source, certainty } = timber[key]
      expect(value).not.toBe('')
      expect(source).not.toBe('')
      if (source.includes('from memory')) expect(certainty).toBe('memory')
      if (certainty === 'memory') expect(source).toContain('from memory')
    },
  )

  test.each(listedTimbers.map((timber) => ({ name: timber.name, timber })))(
    '$name moves more along the rings than across them, and by one coefficient and shrinkage',
    ({ timber }) => {
      expect(timber.tangential.value).toBeGreaterThan(timber.radial.value)
      for (const [c, s] of [
        [timber.tangential, timber.tangentialShrinkage],
        [timber.radial, timber.radialShrinkage],
      ] as const)
        expect(
          Math.abs(coefficientFromShrinkage(s.value, timber.movementStart.value) - c.value),
        ).toBeLessThan(5e-6)
    },
  )

  test('every strength class of the list is a known one, of its own kind', () => {
    for (const { hardwood, strengthClass: grade } of listedTimbers)
      expect(strengthClass(grade.value)?.value.name.startsWith(hardwood ? 'D' : 'C')).toBe(true)
  })

  test('redcedar starts to shrink at 22 %, the rest at 30 %', () => {
    for (const { name, movementStart } of listedTimbers)
      expect(movementStart.value).toBe(name === 'western redcedar' ? 22 : 30)
  })
})

describe('a timber by name', () => {
  test('is found whatever its capitals, spaces and hyphens', () => {
    expect(timberNamed('douglas FIR')?.name).toBe('Douglas-fir')
    expect(timberNamed('Western Red Cedar')?.name).toBe('western redcedar')
    expect(speciesNamed('oak')).toEqual({
      name: 'European oak',
      hardwood: true,
      density: 720,
      source: 'typical density at 12 to 15 % moisture, trade tables, from memory',
      certainty: 'memory',
    })
    expect(timberNamed('ash')).toBeUndefined()
    expect(timberNamed('constructor')).toBeUndefined()
  })

  test('takes the workshop’s values before the listed ones, one by one', () => {
    const found = timberNamed('oak', { Oak: { density: 690, durability: '2', treated: true } })
    expect(found?.density).toEqual({ value: 690, source: 'this workshop’s setting', certainty: 'workshop' })
    expect(found?.durability?.value).toBe('2')
    expect(found?.treated).toBe(true)
    expect(found?.tangentialShrinkage?.value).toBe(9.7)
    expect(timberNamed('oak')?.treated).toBe(false)
  })

  test('with a coefficient of the workshop’s has the shrinkage that goes with it, and the other way', () => {
    const byCoefficient = timberNamed('cedar', { cedar: { tangential: 0.002, radial: 0.001 } })
    expect(byCoefficient?.tangentialShrinkage?.value).toBe(shrinkageFromCoefficient(0.002, 22))
    expect(byCoefficient?.radialShrinkage?.value).toBe(shrinkageFromCoefficient(0.001, 22))
    const byShrinkage = timberNamed('larch', { larch: { shrinkage: 7 } })
    expect(byShrinkage?.tangential?.value).toBe(coefficientFromShrinkage(7, 30))
    expect(byShrinkage?.radial).toEqual(timberNamed('larch')?.radial)
    const both = timberNamed('larch', { larch: { shrinkage: 7, tangential: 0.003 } })
    expect([both?.tangential?.value, both?.tangentialShrinkage?.value]).toEqual([0.003, 7])
  })

  test('that isn’t listed needs a density or a strength class, and nothing else is guessed', () => {
    const ash = timberNamed('ash', { ash: { density: 710 } })
    expect(ash?.hardwood).toBe(true)
    expect(ash?.durability).toBeUndefined()
    expect(ash && crossGrain(ash)).toBeUndefined()
    expect(speciesNamed('hem-fir', { 'Hem fir': { strengthClass: 'C24' } })).toEqual({
      name: 'hem-fir',
      hardwood: false,
      density: 420,
      source: 'EN 338:2016 table 1, mean density of C24',
      certainty: 'second-hand',
    })
    expect(timberNamed('ash', { ash: { strengthClass: 'toString' } })).toBeUndefined()
    expect(timberNamed('ash', { ash: { durability: '5' } })).toBeUndefined()
  })

  test('told by its strength class is a hardwood when the class is one', () => {
    expect(timberNamed('ash', { ash: { strengthClass: 'D30' } })?.hardwood).toBe(true)
    expect(timberNamed('fir', { fir: { strengthClass: 'C16', density: 640 } })?.hardwood).toBe(false)
    expect(classDensity['D40']).toBe(660)
  })
})

describe('what a timber does to metal', () => {
  it('is the workshop’s own word where it has given one, said so, and the list’s otherwise', () => {
    const own = { 'European redwood': { stainsIron: true, fixings: 'stainless' as const } }
    const told = timberNamed('European redwood', own)
    expect(told?.stainsIron).toMatchObject({ value: true, certainty: 'workshop' })
    expect(told?.fixings).toMatchObject({ value: 'stainless', certainty: 'workshop' })
    const listed = timberNamed('European redwood')
    expect(listed?.stainsIron?.value).toBe(false)
    expect(listed?.fixings?.value).toBe('galvanised')
  })
})

describe('across the grain', () => {
  test('the pair of values is no surer than the least sure of them', () => {
    const cedar = timberNamed('cedar')
    const douglas = timberNamed('Douglas-fir')
    if (!cedar || !douglas) throw new Error('not listed')
    expect(crossGrain(cedar)?.certainty).toBe('memory')
    expect(crossGrain(cedar)?.source).toContain('footnote, from memory')
    expect(crossGrain(douglas)?.certainty).toBe('second-hand')
    expect(crossGrain(douglas, 'radial')).toMatchObject({ shrinkage: 4.8, certainty: 'published' })
  })

  test('memory and common practice never settle a thing alone', () => {
    const of = (certainty: Parameters<typeof fact>[2]) => fact(1, 'somewhere', certainty)
    expect(isSure(of('memory'))).toBe(false)
    expect(isSure(of('common practice'))).toBe(false)
    expect(isSure(of('second-hand'))).toBe(true)
    expect(leastSure([of('published'), of('memory'), of('workshop')])).toBe('memory')
    expect(() => leastSure([])).toThrow(RangeError)
  })
})
