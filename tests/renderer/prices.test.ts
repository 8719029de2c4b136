import { describe, expect, it } from 'vitest'
import { pence } from '../../shared/pricing/pence.ts'
import { dayOf, monthsBefore } from '../../renderer/prices/days.ts'
import { filterWords } from '../../renderer/prices/filterWords.ts'
import { lineWants, emptyLine } from '../../renderer/prices/lineEntry.ts'
import { pasteColumn } from '../../renderer/prices/pasteColumn.ts'
import { priceGraph } from '../../renderer/prices/priceGraph.ts'
import { filterRows, priceRows, wholeList } from '../../renderer/prices/priceRows.ts'
import { changeWords, perWords } from '../../renderer/prices/priceWords.ts'
import { priceBook, today } from './priceBook.ts'

const rows = () => priceRows(priceBook(), today)
const names = (some: Partial<typeof wholeList>) =>
  filterRows(rows(), { ...wholeList, ...some }).map(({ item, supplier, line }) =>
    [item.name, supplier?.name.split(' ')[0] ?? '', line ? perWords(line) : ''].join('|'),
  )

describe('the price list', () => {
  it('has a line for each price line, with what holds today, what comes next and all before', () => {
    const metre = rows().find(({ key }) => key === '1/11/metre/')
    expect(metre?.now).toMatchObject({ pence: 240, startsOn: '2026-02-01' })
    expect(metre?.next).toMatchObject({ pence: 262, startsOn: '2026-09-01' })
    expect(metre?.prices.map(({ pence: sum }) => sum)).toEqual([215, 240, 262])
    expect(metre?.code).toBe('RW-25125')
  })

  it('takes the later added of two prices that start on one day', () => {
    expect(
      rows()
        .find(({ key }) => key === '2/12/pair/')
        ?.prices.map(({ id }) => id),
    ).toEqual([6])
  })

  it('stands in order of kind, name, supplier and unit', () => {
    expect(names({})).toEqual([
      'ex 25 × 125 T&G V|Much|3.6 m length',
      'ex 25 × 125 T&G V|Much|a metre',
      'ex 25 × 125 T&G V|Nether|a metre',
      'Tee hinge 18", black|Nether|a pair',
      'Screw 5 × 50|Nether|box of 200',
      'Bench hour||an hour',
    ])
  })

  it('has a line without a price for an item or a supplier that has none yet', () => {
    const book = { ...priceBook(), prices: [] }
    const bare = priceRows(book, today)
    expect(bare.map(({ item, supplier, line }) => [item.id, supplier?.id ?? null, line])).toEqual([
      [1, 11, null],
      [1, 12, null],
      [2, 12, null],
      [3, 12, null],
      [5, null, null],
      [4, null, null],
    ])
  })

  it('is searched by name, supplier, code and timber, without capitals or marks', () => {
    expect(names({ search: 'redwood much' }).length).toBe(2)
    expect(names({ search: 'rw-25' }).length).toBe(2)
    expect(names({ search: 'TH18' })).toEqual(['Tee hinge 18", black|Nether|a pair'])
    expect(names({ search: 'melange', kind: 'retired' })).toEqual(['Mélange brun|Nether|2.5 l tin'])
    expect(names({ search: 'melange' })).toEqual([])
  })

  it('is narrowed to a kind, a supplier, and what wasn’t touched for six months', () => {
    expect(names({ kind: 'fixing' })).toEqual(['Screw 5 × 50|Nether|box of 200'])
    expect(names({ supplierId: 11 }).length).toBe(2)
    expect(names({ untouchedSince: monthsBefore(today, 6) })).toEqual([
      'ex 25 × 125 T&G V|Much|3.6 m length',
      'Tee hinge 18", black|Nether|a pair',
    ])
    expect(
      filterWords({ ...wholeList, kind: 'timber', supplierId: 11, search: 'V' }, priceBook().suppliers),
    ).toBe('all timber from Much Mallet Timber, with “V”')
  })

  it('counts months back to a day that the month has', () => {
    expect(monthsBefore('2026-08-31', 6)).toBe('2026-02-28')
    expect(monthsBefore('2026-03-15', 6)).toBe('2025-09-15')
    expect(dayOf(new Date(2026, 0, 5, 23, 59))).toBe('2026-01-05')
  })

  it('says a change with its sign, to a tenth of a percent', () => {
    expect([changeWords(345, 362), changeWords(400, 380), changeWords(0, 5)]).toEqual(['+4.9 %', '−5 %', ''])
  })

  it('says what is still wanted for a line', () => {
    const line = { ...emptyLine('fixing', null) }
    expect(lineWants(line, 'fixing')).toBe(
      'Still wanted: the supplier’s name, how many are in a box and the price.',
    )
    expect(lineWants({ ...line, supplierId: 3, size: 200, pence: pence(5) }, 'fixing')).toBe('')
    expect(lineWants(emptyLine('work', null), 'work')).toBe('Still wanted: the price.')
  })
})

describe('the graph of a price', () => {
  const graph = (points: [sum: number, startsOn: string][]) =>
    priceGraph(
      points.map(([sum, startsOn]) => ({ pence: pence(sum), startsOn })),
      '2026-01-31',
      { width: 106, height: 26 },
    )

  it('goes in steps from the first to today, high prices high', () => {
    expect(
      graph([
        [200, '2025-10-23'],
        [300, '2025-12-12'],
      ]),
    ).toEqual({
      past: 'M3 23 L53 23 L53 3 L103 3',
      ahead: '',
      dot: { x: 103, y: 3 },
    })
  })

  it('shows apart what lies ahead, from today’s price on', () => {
    const { past, ahead, dot } = graph([
      [200, '2026-01-01'],
      [250, '2026-03-02'],
    ])
    expect(past).toBe('M3 23 L36.3 23')
    expect(ahead).toMatch(/^M36\.3 23 L69\.7 23 L69\.7 3 L103 3$/)
    expect(dot).toEqual({ x: 36.3, y: 23 })
  })

  it('lies midway for a price that never moved, and is empty without any', () => {
    expect(graph([[200, '2026-01-11']]).dot).toEqual({ x: 103, y: 13 })
    expect(graph([])).toEqual({ past: '', ahead: '', dot: null })
  })
})

describe('a column pasted from a spreadsheet', () => {
  const paste = (text: string) => {
    const { prices, trouble } = pasteColumn(text, rows())
    return { prices: prices.map(({ row, pence: sum }) => [row.key, sum]), trouble }
  }

  it('goes down the rows from where it is pasted, a decimal comma told from the whole of it', () => {
    expect(paste('8,90\r\n1.002,45\r\n\r\n19,20\r\n')).toEqual({
      prices: [
        ['1/11/length/3600', 890],
        ['1/11/metre/', 100_245],
        ['2/12/pair/', 1920],
      ],
      trouble: '',
    })
  })

  it('takes the last column with figures of several', () => {
    expect(paste('RW 1\t2.50\tincl.\nRW 2\t£2.75\tincl.').prices).toEqual([
      ['1/11/length/3600', 250],
      ['1/11/metre/', 275],
    ])
  })

  it('names what can’t be read, and what is left over', () => {
    const { prices, trouble } = paste(
      ['1.10', 'POA', '-3.00', '4.40', '5.50', '6.60', '7.70', '8.80'].join('\n'),
    )
    expect(prices.map(([, sum]) => sum)).toEqual([110, 440, 550, 660, 770])
    expect(trouble).toBe(
      'Not taken from what was pasted: number 2: “POA” isn’t a price; number 3: “-3.00” is below nothing; 1 more than there are lines below.',
    )
  })
})
