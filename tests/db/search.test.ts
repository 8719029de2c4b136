import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { wordsSought } from '../../db/search.ts'
import { standardDraft } from '../../shared/gate/standardSpec.ts'
import { newJob, openedBook, valueOf } from './temporaryBook.ts'

const person = (name: string, town = '', phone = '') => ({ name, address: '', town, phone, email: '' })

describe('finding jobs', () => {
  it('goes by number, name, town, phone, title and notes, from a word’s beginning, accents and capitals aside', () => {
    const book = openedBook()
    const { id } = book.jobs.create(
      newJob({
        customer: person('Zoé Müller-Ångström', 'Saint-Rabot', '01632 960107'),
        title: 'Portillon du potager',
      }),
    )
    valueOf(book.jobs.change(id, [{ path: 'notes', value: 'ИВАНОВ rang' }]))
    book.jobs.create(newJob({ customer: person('Bob'), title: 'Another' }))
    const found = (search: string) => book.jobs.list(search, null).rows.map((row) => row.id)
    const words = [
      'zoe',
      'MULLER',
      'angstr',
      'rabot',
      '960107',
      'potag',
      'иванов',
      '2026-001',
      'zoe portillon',
      'Müller',
    ]
    expect(words.map(found)).toEqual(words.map(() => [id]))
    expect(found('oé')).toEqual([])
    expect(found('zoe another')).toEqual([])
  })

  it('finds composed and decomposed letters alike', () => {
    const book = openedBook()
    const { id } = book.jobs.create(newJob({ customer: person('Zoe\u0301 Gru\u0308n') }))
    expect(book.jobs.list('Zoé Grün', null).rows.map((row) => row.id)).toEqual([id])
    expect(book.jobs.list('zoe\u0301', null).rows.map((row) => row.id)).toEqual([id])
  })

  it('goes by the leaf’s sizes in mm, inches and feet, and follows a change', () => {
    const book = openedBook()
    const { id } = book.jobs.create(newJob())
    valueOf(
      book.jobs.change(id, [
        { path: 'spec.size.width', value: 930.275 },
        { path: 'spec.size.height', value: 1803.4 },
      ]),
    )
    const found = (search: string) => book.jobs.list(search, null).rows.length
    expect(['930', '1803', '1803.4', '36 5/8"', '71"', `5' 11"`].map(found)).toEqual([1, 1, 1, 1, 1, 1])
    valueOf(book.jobs.change(id, [{ path: 'spec.size.width', value: 1016 }]))
    expect([found('930'), found('40"')]).toEqual([0, 1])
  })

  it('leaves small words aside, and goes by timber, make, ironmongery and address: the wide oak one in Marsh Lane', () => {
    const book = openedBook()
    const oak = { ...standardDraft(), size: { from: 'leaf' as const, width: 1140, height: 1720 } }
    const wide = book.jobs.create(
      newJob({
        customer: { ...person('Wenna Kerf', 'Upper Tenon'), address: '14 Marsh Lane' },
        spec: {
          ...oak,
          boards: { ...oak.boards, section: { ...oak.boards.section, species: 'European oak' } },
          ironmongery: [{ id: 'ring', kind: 'latch', name: 'ring latch', quantity: 1 }],
        },
      }),
    )
    book.jobs.create(newJob({ customer: { ...person('Bram Splay'), address: '3 Marsh Lane' } }))
    const found = (search: string) => book.jobs.list(search, null).rows.map((row) => row.id)
    const asked = ['the wide oak one in Marsh Lane', 'ring latch', 'ledged and braced with a latch', 'WIDE']
    expect(asked.map(found)).toEqual(asked.map(() => [wide.id]))
    expect(found('the narrow oak one in Marsh Lane')).toEqual([])
    expect(found('marsh lane')).toHaveLength(2)
    expect(found('the')).toEqual([])
    valueOf(book.jobs.change(wide.id, [{ path: 'customer.address', value: '9 Mill Row' }]))
    expect([found('oak marsh lane'), found('oak mill row')]).toEqual([[], [wide.id]])
  })

  it('finds the jobs at one stage by it, which nobody finds by typing its name', () => {
    const book = openedBook()
    const [one, other] = [book.jobs.create(newJob()), book.jobs.create(newJob())]
    valueOf(book.jobs.change(other.id, [{ path: 'stage', value: 'hung' }]))
    const found = (search: string, stage: 'enquiry' | 'hung' | null) =>
      book.jobs.list(search, stage).rows.map((row) => row.id)
    expect([found('peg', 'hung'), found('peg', 'enquiry'), found('hung', null)]).toEqual([
      [other.id],
      [one.id],
      [],
    ])
  })

  it('puts a name or a number before the same word elsewhere, a whole word before a beginning, and says when there are more', () => {
    const book = openedBook()
    const inTitle = book.jobs.create(newJob({ title: 'Ashes', customer: person('Zed') })).id
    const begins = book.jobs.create(newJob({ title: 'Gate', customer: person('Ashley Fern') })).id
    const whole = book.jobs.create(newJob({ title: 'Gate', customer: person('Ida Ash') })).id
    const inTown = book.jobs.create(newJob({ title: 'Gate', customer: person('Zed', 'Ashford') })).id
    expect(book.jobs.list('ash', null)).toMatchObject({
      rows: [{ id: whole }, { id: begins }, { id: inTitle }, { id: inTown }],
      limited: false,
    })
    book.together(() => {
      for (let place = 0; place < 500; place += 1) book.jobs.create(newJob({ customer: person('Common') }))
    })
    const { rows, limited } = book.jobs.list('common', null)
    expect([rows.length, limited]).toEqual([500, false])
    book.jobs.create(newJob({ customer: person('Common') }))
    expect(book.jobs.list('common', null)).toMatchObject({ limited: true })
    expect(book.jobs.list('common', null).rows).toHaveLength(500)
  })

  it('takes any text without tripping, and signs the index gives a meaning to (300 seeded texts)', () => {
    const book = openedBook()
    book.jobs.create(newJob({ title: 'NOT AND "quoted" (x) *' }))
    for (const text of ['NOT', '"', '*', 'a AND', 'NEAR(', 'title:gate', '^x', '{a b}', '-', '\0'])
      book.jobs.list(text, null)
    expect(book.jobs.list('not and quot', null).rows).toHaveLength(1)
    expect(book.jobs.list(' " ', null).rows).toHaveLength(1)
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 60 }), (text) => {
        book.jobs.list(text, null)
        book.customers.find(text)
      }),
      { seed: 20260303, numRuns: 300 },
    )
  })

  it('quotes every word', () => {
    expect(wordsSought(`Müller 5' 11"`)).toBe('"Müller"* "5"* "11"*')
    expect(wordsSought(' "*" ')).toBe('')
  })
})

describe('finding customers', () => {
  it('takes a name’s, town’s or phone’s beginning; without words the latest come first', () => {
    const book = openedBook()
    book.jobs.create(newJob({ customer: person('Ida Stile', 'Kerf', '01632 960201') }))
    book.jobs.create(newJob({ customer: person('Élodie Rail', 'Bench', '01632 960202') }))
    const names = (search: string) => book.customers.find(search).map((customer) => customer.name)
    expect([names('elod'), names('kerf'), names('960202'), names('')]).toEqual([
      ['Élodie Rail'],
      ['Ida Stile'],
      ['Élodie Rail'],
      ['Élodie Rail', 'Ida Stile'],
    ])
  })

  it('takes the same name, town and phone for the same person, and never a bare name', () => {
    const book = openedBook()
    const customerOf = (name: string, town: string) =>
      book.jobs.create(newJob({ customer: person(name, town) })).customer.id
    expect(customerOf('Ida Stile', 'Kerf')).toBe(customerOf(' ida STILE', 'kerf'))
    expect(customerOf('Ida Stile', '')).not.toBe(customerOf('Ida Stile', ''))
    expect(customerOf('', '')).not.toBe(customerOf('', ''))
  })
})
