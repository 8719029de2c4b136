import { describe, expect, test } from 'vitest'
import {
  bareLeaf,
  durabilityAdvice,
  durabilitySpan,
  dustAdvice,
  useClass,
} from '../../shared/timber/advice.ts'
import { fixingMetal, metalAdvice, stainlessGrade } from '../../shared/timber/fixingMetal.ts'
import { listedTimbers, timberNamed } from '../../shared/timber/species.ts'
import type { TimberFacts } from '../../shared/timber/timberFacts.ts'
import type { Timber } from '../../shared/gate/spec.ts'

const timber = (name: string, own?: Timber): TimberFacts => {
  const found = timberNamed(name, own && { [name]: own })
  if (!found) throw new Error(`${name} is not listed`)
  return found
}
const inGround = { ...bareLeaf, groundContact: true }
const byTheSea = { ...bareLeaf, coast: true }
const levels = (name: string, own?: Timber, exposure = bareLeaf) =>
  durabilityAdvice(timber(name, own), exposure)
    .filter(({ id }) => id === 'timber-durability')
    .map(({ level }) => level)

describe('use class', () => {
  test('is 3.2 for a bare leaf, 3.1 for a coated one, 4 in the ground', () => {
    expect(useClass(bareLeaf).value).toBe('3.2')
    expect(useClass({ ...bareLeaf, coated: true }).value).toBe('3.1')
    expect(useClass({ ...inGround, coated: true }).value).toBe('4')
    expect(useClass(inGround).certainty).toBe('second-hand')
    expect(useClass(bareLeaf).certainty).toBe('memory')
  })
})

describe('durability', () => {
  test('a class or a span is read as numbers', () => {
    expect(durabilitySpan('3–4')).toEqual({ best: 3, worst: 4 })
    expect(durabilitySpan('DC 2')).toEqual({ best: 2, worst: 2 })
    expect(durabilitySpan('not known')).toBeUndefined()
  })

  test('above the ground is a note for untreated softwoods, oak and redcedar; of iroko nothing', () => {
    for (const name of ['redwood', 'whitewood', 'larch', 'Douglas-fir'])
      expect(levels(name)).toEqual(['note'])
    for (const name of ['oak', 'redcedar']) expect(levels(name)).toEqual(['note'])
    for (const name of ['iroko', 'chestnut', 'acetylated pine']) expect(levels(name)).toEqual([])
  })

  test('in the ground only class 1 does untreated', () => {
    expect(levels('chestnut', undefined, inGround)).toEqual(['caution'])
    expect(levels('acetylated pine', undefined, inGround)).toEqual([])
    expect(levels('redwood', { treated: true }, inGround)).toEqual([])
  })

  test('is told by its class and where the part stands', () => {
    const told = (name: string, where = bareLeaf) => durabilityAdvice(timber(name), where)[0]?.message
    expect(told('larch')).toBe(
      'European larch is of durability class 3 to 4 and untreated, in use class 3.2.',
    )
    expect(told('chestnut', inGround)).toBe(
      'Sweet chestnut is of durability class 2 and untreated, too little for use class 4, in the ground.',
    )
  })

  test('that nobody told is a note to ask', () => {
    expect(levels('ash', { density: 700 })).toEqual(['note'])
  })

  test('treated timber brings the care that it wants; untreated, the warning on sapwood', () => {
    const ids = (own?: Timber) => durabilityAdvice(timber('redwood', own), bareLeaf).map(({ id }) => id)
    expect(ids({ treated: true })).toEqual(['timber-treated'])
    expect(ids()).toEqual(['timber-durability', 'timber-sapwood'])
    expect(durabilityAdvice(timber('acetylated pine'), bareLeaf)).toEqual([])
  })

  test('never does more than caution, and says where it comes from', () => {
    for (const { name } of listedTimbers)
      for (const exposure of [bareLeaf, inGround, byTheSea])
        for (const one of [
          ...durabilityAdvice(timber(name), exposure),
          ...metalAdvice(timber(name), exposure),
          ...dustAdvice(timber(name)),
        ]) {
          expect(['caution', 'note']).toContain(one.level)
          expect(one.source).not.toBe('')
          expect(one.remedy).toMatch(/\.$/)
        }
  })
})

describe('metal of fixings (common practice)', () => {
  test('is stainless in oak, chestnut, redcedar and acetylated pine', () => {
    for (const name of ['oak', 'chestnut', 'redcedar', 'acetylated pine'])
      expect(fixingMetal(timber(name), bareLeaf).value).toBe('stainless')
    expect(metalAdvice(timber('oak'), bareLeaf, 'galvanised')[0]).toMatchObject({
      level: 'caution',
      message: 'Iron stains European oak, and its acids eat zinc-coated steel.',
      remedy: 'Use stainless fixings and ironmongery, A2 (304).',
    })
    expect(metalAdvice(timber('oak'), bareLeaf, 'stainless')).toEqual([])
  })

  test('is stainless for choice in Douglas-fir and larch, galvanised at least elsewhere', () => {
    expect(fixingMetal(timber('larch'), bareLeaf).value).toBe('stainless preferred')
    expect(metalAdvice(timber('larch'), bareLeaf, 'galvanised')).toEqual([])
    expect(metalAdvice(timber('larch'), bareLeaf, 'zinc plated')).toHaveLength(1)
    expect(fixingMetal(timber('redwood'), bareLeaf).value).toBe('galvanised')
    expect(metalAdvice(timber('redwood', { treated: true }), bareLeaf, 'zinc plated')[0]?.message).toBe(
      'Copper in treated European redwood eats bare and thinly coated steel.',
    )
  })

  test('is A4 stainless on the coast, whatever the timber', () => {
    expect(fixingMetal(timber('redwood'), byTheSea).value).toBe('stainless')
    expect(stainlessGrade(byTheSea)).toBe('A4 (316)')
    expect(metalAdvice(timber('redwood'), byTheSea, 'galvanised')[0]?.message).toBe(
      'Sea air eats zinc-coated steel.',
    )
  })

  test('without a metal in hand it is a note of what to use', () => {
    expect(metalAdvice(timber('redwood'), bareLeaf).map(({ level }) => level)).toEqual(['note'])
  })
})

describe('dust', () => {
  test('of redcedar and iroko can bring on asthma, of hardwoods harms; of redwood no more than any', () => {
    expect(dustAdvice(timber('redcedar'))[0]?.message).toBe('Dust of western redcedar can bring on asthma.')
    expect(dustAdvice(timber('iroko'))[0]?.message).toContain('asthma')
    expect(dustAdvice(timber('oak'))[0]?.message).toContain('nose and lungs')
    expect(dustAdvice(timber('redwood'))).toEqual([])
  })
})
