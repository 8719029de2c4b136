import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { pence } from '../../shared/pricing/pence.ts'
import type { PriceBook } from '../../shared/pricing/book.ts'
import { lookAt, readList } from '../../shared/spreadsheet/list.ts'
import { bookLines, exportList } from '../../renderer/prices/exportList.ts'
import { lookAtFile, readFile, type ListTold } from '../../renderer/prices/listWork.ts'
import { ListMatching, type ListOutcome } from '../../renderer/prices/matchList.ts'
import { priceRows } from '../../renderer/prices/priceRows.ts'
import { priceBook, today } from './priceBook.ts'

const held = (text: string, supplierId: number | null, book: PriceBook = priceBook()): ListOutcome => {
  const look = lookAt(text.replace(/^\ufeff/, ''), new Set(['RW-25125', 'TH18']), { whole: true })
  const matching = new ListMatching({
    lines: bookLines(priceRows(book, today)),
    suppliers: book.suppliers,
    supplierId,
  })
  const reader = readList(look, { line: (line) => matching.take(line), bad: (line) => matching.bad(line) })
  reader.feed(text.replace(/^\ufeff/, ''))
  reader.end()
  return matching.done()
}
const found = (outcome: ListOutcome) =>
  outcome.matched.map(({ itemId, unit, size, pence: sum }) => [itemId, unit, size, sum])
const head = 'Code;Description;Unit;Net price\n'

describe('a merchant’s list held against the book', () => {
  it('finds a line by its code, whatever the capitals, and by its exact words where there is no code', () => {
    const outcome = held(
      `${head}th18;anything;pr;19,95\n;screw 5 ×  50;200;12,40\nXX1;Screw 5 × 50;box 200;12,60\n`,
      12,
    )
    expect(found(outcome)).toEqual([[2, 'pair', null, 1995]])
    expect(outcome.bad.map(({ line, reason }) => [line, reason])).toEqual([
      [3, 'it stands on line 4 too, at another price'],
      [4, 'it stands on line 3 too, at another price'],
    ])
  })

  it('asks which price is meant where the list doesn’t say, and tells a unit that the book doesn’t have', () => {
    expect(
      held(`${head}RW-25125;board;;2,60\nRW-25125;board;ea;9,60\n`, 11).bad.map(({ reason }) => reason),
    ).toEqual([
      'the list doesn’t say which: 3.6 m length, a metre',
      'sold here each; the price book has it 3.6 m length, a metre',
    ])
    expect(found(held(`${head}RW-25125;board;3.6m;9,60\nRW-25125;board;m;2,61\n`, 11))).toEqual([
      [1, 'length', 3600, 960],
      [1, 'metre', null, 261],
    ])
  })

  it('leaves another supplier’s codes alone, and counts what isn’t in the book', () => {
    const outcome = held(`${head}RW-25125;board;m;2,60\nZZ;Oak post;ea;40,00\n`, 12)
    expect(outcome).toMatchObject({ matched: [], unknownCount: 2, badCount: 0 })
    expect(outcome.unknown.map(({ line, text }) => [line, text])).toEqual([
      [2, 'RW-25125 board'],
      [3, 'ZZ Oak post'],
    ])
  })

  it('counts a line that stands twice at one price once', () => {
    const outcome = held(`${head}TH18;hinge;pr;19,95\nTH18;hinge;pair;19,95\n`, 12)
    expect(found(outcome)).toEqual([[2, 'pair', null, 1995]])
    expect(outcome.repeated).toBe(1)
  })

  it('neither of two prices of one code is used', () => {
    const outcome = held(`${head}TH18;hinge;pr;19,95\nTH18;hinge;pr;20,95\nTH18;hinge;pr;21,95\n`, 12)
    expect(outcome.matched).toEqual([])
    expect(outcome.bad.map(({ line }) => line)).toEqual([2, 3, 4])
  })
})

describe('our own list, kept and read again', () => {
  it('prices the same book to the penny, own rates and guarded codes included', () => {
    const outcome = held(exportList(priceRows(priceBook(), today).filter(({ item }) => !item.retired)), null)
    expect(outcome).toMatchObject({ badCount: 0, unknownCount: 0, repeated: 0 })
    expect(found(outcome)).toEqual([
      [1, 'length', 3600, 840],
      [1, 'metre', null, 240],
      [1, 'metre', null, 251],
      [2, 'pair', null, 1899],
      [3, 'box', 200, 1120],
      [4, 'hour', null, 3200],
    ])
  })

  it('does so for any names, codes and sums', () => {
    const text = fc.string({ unit: fc.constantFrom(...'ab =-+@"\';,|9é×'), minLength: 1, maxLength: 9 })
    fc.assert(
      fc.property(
        fc.array(fc.tuple(text, text, fc.integer({ min: 1, max: 9_999_999 })), {
          minLength: 3,
          maxLength: 9,
        }),
        (goods) => {
          const facts = {
            kind: 'ironmongery',
            facts: { piece: null },
            retired: false,
            sample: false,
          } as const
          const book: PriceBook = {
            items: goods.map(([name], n) => ({ ...facts, id: n + 1, name: `${name} ${n}` })),
            suppliers: priceBook().suppliers,
            supplies: goods.map(([, code], n) => ({
              itemId: n + 1,
              supplierId: 12,
              code: `${code}${n}`,
              lengths: [],
              usual: true,
            })),
            prices: goods.map(([, , sum], n) => ({
              id: n + 1,
              itemId: n + 1,
              supplierId: 12,
              unit: 'each',
              size: null,
              pence: pence(sum),
              startsOn: '2026-01-02',
              origin: 'by hand',
              riseId: null,
              addedAt: '',
            })),
          }
          const outcome = held(exportList(priceRows(book, today)), null, book)
          expect(outcome).toMatchObject({ badCount: 0, unknownCount: 0 })
          const sums = new Map(outcome.matched.map(({ itemId, pence: sum }) => [itemId, sum]))
          expect(goods.map((_, n) => sums.get(n + 1))).toEqual(goods.map(([, , sum]) => sum))
        },
      ),
      { seed: 20260615, numRuns: 300 },
    )
  })
})

describe('the reader of lists', () => {
  const book = {
    lines: bookLines(priceRows(priceBook(), today)),
    suppliers: priceBook().suppliers,
    supplierId: 12,
  }
  const look = async (file: Blob) => lookAtFile({ ask: 'look', file, known: ['TH18'], delimiter: null })

  it('looks, then reads, telling how far it is', async () => {
    const filler = Array.from(
      { length: 120_000 },
      (_, n) => `Q${n};Filler goods number ${n};ea;${n},50`,
    ).join('\n')
    const file = new Blob([`${head}TH18;Hinge;pr;21,50\n${filler}\n`])
    const seen = await look(file)
    if (seen.told !== 'seen') throw new Error(`told ${seen.told}`)
    expect(seen.list).toMatchObject({ writing: 'utf-8', delimiter: ';', layout: { decimal: 'comma' } })
    const told: ListTold[] = []
    const { writing, delimiter, layout } = seen.list
    const settled = {
      writing,
      delimiter,
      layout,
      columns: layout.columns,
      decimal: layout.decimal,
      taxBp: null,
    }
    const read = await readFile({ ask: 'read', file, settled, book }, (one) => told.push(one))
    if (read.told !== 'read') throw new Error(`told ${read.told}`)
    expect(found(read.outcome)).toEqual([[2, 'pair', null, 2150]])
    // The first line of the filler has a price of 0,50: every line of it is sound, and none of it is in the book.
    expect(read.outcome).toMatchObject({ unknownCount: 120_000, badCount: 0 })
    expect(read.outcome.unknown.length).toBe(1000)
    expect(read.lines).toBe(120_002)
    expect(told.length).toBeGreaterThan(3)
    expect(told.at(-1)).toMatchObject({ share: 1, lines: 120_002 })
  })

  it('takes the tax off the prices of a list that has it in them, and still says what stood there', async () => {
    const file = new Blob(['Code;Price inc VAT;Unit\nTH18;24,00;pr\n'])
    const seen = await look(file)
    if (seen.told !== 'seen') throw new Error(`told ${seen.told}`)
    const { writing, delimiter, layout } = seen.list
    const { columns } = layout
    expect(columns.price).toBe(1)
    const settled = { writing, delimiter, layout, columns, decimal: 'comma' as const, taxBp: 2000 }
    const read = await readFile({ ask: 'read', file, settled, book }, () => undefined)
    if (read.told !== 'read') throw new Error(`told ${read.told}`)
    expect(read.outcome.matched).toMatchObject([{ listed: 2400, pence: 2000, rounded: false }])
  })

  it('refuses what is no list with a sentence', async () => {
    expect(await look(new Blob([]))).toMatchObject({
      told: 'refused',
      sentence: expect.stringMatching(/nothing in it/),
    })
    expect(await look(new Blob([Uint8Array.of(0x50, 0x4b, 3, 4)]))).toMatchObject({ told: 'refused' })
    expect(await look(new Blob(['\n\n \n']))).toMatchObject({ told: 'refused' })
  })
})
