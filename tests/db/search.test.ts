import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { wordsSought } from '../../db/search.ts'
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
