import { describe, expect, it } from 'vitest'
import { offerLines } from '../../shared/pricing/offerLines.ts'
import { pence } from '../../shared/pricing/pence.ts'
import { standardMoney } from '../../shared/pricing/standardMoney.ts'
import { aBook, line, section, timberFacts, work } from './aWorkedEstimate.ts'

describe('an estimate worked by hand', () => {
  const book = aBook()
  const whole = work(book, { finish: { itemId: book.finish, coats: null }, kilometres: 24 })

  it('has timber by the metre with its waste: 3.202 m and 10 % are 3.53 m, £12.18', () => {
    expect(line(whole, 'timber.ex 32 × 150')).toMatchObject({
      quantity: 3.53,
      unit: 'metre',
      each: 345,
      pence: 1218,
      metres: 3.53,
    })
  })

  it('has screws by their share of a box: 68 of 200 at £9.50 are £3.23, or £9.50 by the box', () => {
    expect(line(whole, 'fixings.screw 5 × 40')).toMatchObject({ unit: 'box', each: 950, pence: 323 })
    expect(line(work(book, {}, { fixingsBy: 'box' }), 'fixings.screw 5 × 40')).toMatchObject({
      quantity: 1,
      pence: 950,
    })
  })

  it('has three hinges as two pairs', () => {
    expect(line(whole, 'ironmongery.tee-450')).toMatchObject({ quantity: 2, unit: 'pair', pence: 4200 })
  })

  it('has the finish in whole tins or by its share: 1.577 litres are two tins of 1; in three coats 0.473 of a 5', () => {
    expect(line(whole, 'finish.coats')).toMatchObject({ quantity: 2, unit: 'tin', each: 1400, pence: 2800 })
    const share = line(
      work(book, { finish: { itemId: book.finish, coats: 3 } }, { finishBy: 'share' }),
      'finish.coats',
    )
    // 9.46 × 3 / 12 = 2.365 litres; 2.365 / 5 × £55.00 = £26.015.
    expect(share).toMatchObject({ each: 5500, pence: 2602 })
  })

  it('has work by the standard minutes: 68 × 0.75 at £38.00 are £32.30; 9.46 m² × 2 coats × 6 are £71.90', () => {
    expect(line(whole, 'making.fixing')).toMatchObject({
      quantity: 51,
      unit: 'minute',
      each: 3800,
      pence: 3230,
    })
    expect(line(whole, 'making.finish square metre')).toMatchObject({ quantity: 113.52, pence: 7190 })
    expect(line(whole, 'hanging.site visit')).toMatchObject({ quantity: 45, each: 4400, pence: 3300 })
    expect(line(whole, 'hanging.kilometres')).toMatchObject({ quantity: 24, unit: 'kilometre', pence: 1080 })
  })

  it('adds up: cost £288.41 with 15 % overhead, 20 % markup and VAT is £477.60', () => {
    // 1218 + 323 + 4200 + 2800 + 3230 + 7190 + 3300 + 5500 + 1080 = 28841.
    expect(whole).toMatchObject({
      cost: 28841,
      overhead: 4326,
      profit: 6633,
      net: 39800,
      taxBp: 2000,
      tax: 7960,
      gross: 47760,
      deposit: 14328,
      missing: [],
    })
  })

  it('tells the customer the gate and the hanging, to the penny and the tenth', () => {
    const offer = offerLines({ estimate: whole, settings: standardMoney })
    // 9880 of 28841 is hanging: 39800 × 9880 / 28841 = 13634.2.
    expect(offer.map(({ words, net }) => [words, net])).toEqual([
      ['The gate, made', 26166],
      ['Visits and hanging', 13634],
    ])
    expect(offer.reduce((sum, { taxTenths }) => sum + taxTenths, 0)).toBe(whole.taxTenths)
  })

  it('leaves the finish and its work out where none was chosen, and visits where there are none', () => {
    const ids = work(book, { siteVisits: 0 }).lines.map(({ id }) => id)
    expect(ids).not.toContain('finish.coats')
    expect(ids).not.toContain('making.finish square metre')
    expect(ids).not.toContain('hanging.site visit')
    expect(ids).toContain('hanging.hang leaf')
  })

  it('charges a call-out sum a visit where the workshop has one', () => {
    const more = aBook()
    more.addPrice(
      { itemId: more.addItem('work', 'Call-out', { rate: 'visit' }), unit: 'visit', supplierId: null },
      2500,
    )
    expect(line(work(more, { siteVisits: 3 }), 'hanging.call-out')).toMatchObject({
      quantity: 3,
      pence: 7500,
    })
  })
})

describe('tax', () => {
  const book = aBook()
  const tax = standardMoney.tax
  it('is none for a workshop that isn’t registered, and the offer bears none', () => {
    const settings = { ...standardMoney, tax: { ...tax, registered: false } }
    const bare = work(book, {}, settings)
    expect(bare).toMatchObject({ taxBp: 0, taxTenths: 0, tax: 0 })
    expect(bare.gross).toBe(bare.net)
    expect(bare.how.tax.formula).toContain('isn’t registered')
    expect(offerLines({ estimate: bare, settings }).every(({ taxTenths }) => taxTenths === 0)).toBe(true)
  })

  it('holds the quotation back where no rate has started by the day', () => {
    const late = work(book, {}, { tax: { ...tax, rates: [{ from: '2027-01-01', bp: 2100 }] } })
    expect(late.missing).toEqual(['tax'])
  })
})

describe('a line put by hand', () => {
  const book = aBook(['screws'])
  it('goes by its quantity, its minutes, or its sum', () => {
    const id = 'timber.ex 32 × 150'
    const put = work(book, {
      overrules: {
        [id]: { quantity: 4.2 },
        'making.fixing': { minutes: 90 },
        'hanging.hang leaf': { quantity: 2 },
        'ironmongery.tee-450': { pence: pence(4000) },
        'no such line': { pence: pence(1) },
      },
    })
    expect(line(put, id)).toMatchObject({ quantity: 4.2, pence: 1449, metres: 4.2, overruled: true })
    expect(line(put, 'making.fixing')).toMatchObject({ quantity: 90, pence: 5700, overruled: true })
    expect(line(put, 'hanging.hang leaf')).toMatchObject({ quantity: 150, pence: 11000, overruled: true })
    expect(line(put, 'ironmongery.tee-450')).toMatchObject({ quantity: 2, pence: 4000, overruled: true })
    expect(line(put, 'ironmongery.tee-450').how).toMatchObject({
      value: 40,
      unit: '£',
      inputs: { 'worked out £': 42 },
    })
  })

  it('needs no price any more once its sum is put', () => {
    const id = 'fixings.screw 5 × 40'
    expect(work(book).missing).toEqual([id])
    expect(line(work(book), id).words).toContain('nothing in the price book fits')
    const put = work(book, { overrules: { [id]: { pence: pence(475) } } })
    expect(put.missing).toEqual([])
    expect(line(put, id)).toMatchObject({ pence: 475, missing: null, words: 'Screw 5 × 40, 68' })
  })
})

describe('a line without a price', () => {
  it('comes to nothing and is named, whether there is no item or no price on the day', () => {
    const none = work(aBook(['timber', 'hinges']))
    expect(none.missing).toEqual(['timber.ex 32 × 150', 'ironmongery.tee-450'])
    expect(line(none, 'timber.ex 32 × 150')).toMatchObject({
      missing: 'no item',
      pence: 0,
      each: null,
      priceId: null,
    })
    const later = aBook(['timber'])
    later.addPrice(
      { itemId: later.addItem('timber', section.name, timberFacts), unit: 'metre' },
      345,
      '2026-06-16',
    )
    expect(line(work(later), 'timber.ex 32 × 150').missing).toBe('no price')
  })

  it('isn’t priced by a retired item, another timber, another size or a tongued board', () => {
    for (const change of [
      { species: 'European larch' },
      { thickness: 27 },
      { width: 144 },
      { tongue: 6, groove: 7 },
    ]) {
      const book = aBook(['timber'])
      book.addPrice(
        { itemId: book.addItem('timber', 'other', { ...timberFacts, ...change }), unit: 'metre' },
        345,
      )
      expect(line(work(book), 'timber.ex 32 × 150').missing).toBe('no item')
    }
    const book = aBook()
    const item = book.items.find(({ kind }) => kind === 'timber')
    if (item) item.retired = true
    expect(line(work(book), 'timber.ex 32 × 150').missing).toBe('no item')
  })

  it('is priced by what was chosen by hand', () => {
    const book = aBook(['timber'])
    const larch = book.addItem('timber', 'larch', { ...timberFacts, species: 'European larch' })
    book.addPrice({ itemId: larch, unit: 'metre' }, 500)
    const chosen = { 'timber.ex 32 × 150': larch }
    expect(line(work(book, { chosen }), 'timber.ex 32 × 150').pence).toBe(1765)
    expect(line(work(book, { chosen: { 'timber.ex 32 × 150': 1 } }), 'timber.ex 32 × 150').missing).toBe(
      'no item',
    )
  })
})
