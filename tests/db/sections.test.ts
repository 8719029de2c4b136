import { describe, expect, it } from 'vitest'
import { standardSections } from '../../shared/gate/standardSpec.ts'
import { speciesNamed } from '../../shared/timber/species.ts'
import { openedBook } from './temporaryBook.ts'

describe('kept sections', () => {
  it('of a new book are twelve usual ones, marked common practice, the standard gate’s among them', () => {
    const sections = openedBook().sections.list()
    expect(sections).toHaveLength(12)
    expect(new Set(sections.map((kept) => kept.source))).toEqual(new Set(['common practice']))
    for (const use of ['boards', 'ledges', 'braces'] as const)
      expect(sections.filter((kept) => kept.use === use).map((kept) => kept.section)).toContainEqual(
        standardSections[use],
      )
    expect(sections.filter(({ section }) => !speciesNamed(section.species))).toEqual([])
  })

  it('are added, set right and removed, and are the workshop’s own from then on', () => {
    const { sections } = openedBook()
    const section = { name: 'ex 44 × 150 planed', species: 'European oak', thickness: 39, width: 145 }
    sections.add('ledges', section)
    const added = sections.list().find((kept) => kept.section.name === section.name)
    expect(added).toEqual({ id: added?.id, use: 'ledges', source: 'this workshop', section })
    expect(sections.change(1, { ...standardSections.boards, width: 113 })).toBe(true)
    expect(sections.list()[0]).toMatchObject({
      id: 1,
      source: 'this workshop',
      section: { width: 113, tongue: 7 },
    })
    expect([sections.remove(1), sections.remove(1), sections.change(1, section)]).toEqual([
      true,
      false,
      false,
    ])
    expect(sections.list()).toHaveLength(12)
  })
})

describe('settings', () => {
  it('stand at the usual ones until changed, each by itself', () => {
    const { settings } = openedBook()
    const usual = settings.read()
    expect(usual).toMatchObject({ name: '', unit: 'mm', paper: 'a4', workshop: { clearance: 0.5 } })
    expect(settings.change({ paper: 'letter' })).toEqual({ ...usual, paper: 'letter' })
    const workshop = { ...usual.workshop, drills: [3, 5.5] }
    settings.change({ workshop, name: 'Test bench' })
    expect(settings.read()).toEqual({ ...usual, name: 'Test bench', paper: 'letter', workshop })
  })
})
