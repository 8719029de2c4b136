import { describe, expect, it } from 'vitest'
import { buyingPlan } from '../../shared/cutting/buyingPlan/plan.ts'
import { parseBuyRequest } from '../../shared/cutting/buyingPlan/request.ts'
import { standardCutting } from '../../shared/ordering/cuttingSettings.ts'
import { jobTimber } from '../../shared/ordering/jobTimber.ts'
import { needsOf } from '../../shared/pricing/needsOf.ts'
import { standardMoney } from '../../shared/pricing/standardMoney.ts'
import { standardTimes } from '../../shared/pricing/standardTimes.ts'
import { standingBook } from '../../shared/pricing/standingBook.ts'
import { plainEntry } from '../../shared/pricing/terms.ts'
import { estimateFrom } from '../../shared/pricing/workEstimate.ts'
import { designOf, gate, gateWith } from '../fixtures/gates.ts'
import { timberItem } from '../fixtures/prices.ts'
import { emptyBook, stock } from '../pricing/aBook.ts'
import { neededGates } from '../pricing/pricedGates.ts'
import { day, jobOf, pricedBook, rackPiece, taskOf, timberBook } from './aTask.ts'

const boards = 'ex 25 × 125 T&G V, European redwood'
const ledges = 'ex 32 × 150, European redwood'
const braces = 'ex 32 × 100, European redwood'
const total = (rows: readonly { length: number; quantity: number }[]): number =>
  rows.reduce((sum, { length, quantity }) => sum + length * quantity, 0)

describe('what is to be bought', () => {
  it('is every blank of every job, marked with the job and the part', () => {
    const task = taskOf(pricedBook(), [jobOf(14), jobOf(15)])
    expect(task.parts.filter(({ jobId }) => jobId === 14)).toEqual([
      {
        ...{ key: boards, mark: '2026-014 board', jobId: 14, number: '2026-014', part: 'board' },
        ...{ length: 1804, quantity: 9 },
      },
      expect.objectContaining({ key: ledges, mark: '2026-014 ledge', length: 926, quantity: 2 }),
      expect.objectContaining({ key: braces, mark: '2026-014 brace', quantity: 1 }),
    ])
    expect(task.sections).toEqual([
      {
        ...{ key: boards, itemId: 1, name: 'ex 25 × 125 T&G V', species: 'European redwood' },
        ...{ thickness: 20, width: 112 },
      },
      expect.objectContaining({ key: ledges, itemId: 2 }),
      expect.objectContaining({ key: braces, itemId: 3 }),
    ])
    expect(task.requests.plain).toMatchObject({ version: 1, kerf: 4, endTrim: 20, leastOffcut: 450 })
    expect(task.requests.plain.parts).toHaveLength(6)
    expect(task.unpriced).toEqual([])
  })

  it.each(neededGates.map((one) => [one.name, one] as const))(
    'is all that %s needs, of the very items that its estimate is priced on',
    (_name, { spec }) => {
      const design = designOf(spec)
      const needs = needsOf(spec, design)
      const book = emptyBook()
      stock(book, needs)
      for (const { itemId, unit } of book.prices.filter((price) => price.unit === 'metre'))
        if (unit === 'metre')
          book.supplies.push({ itemId, supplierId: 1, code: '', lengths: [4800, 6000], usual: true })
      const open = standingBook(book, day)
      const asked = { needs, entry: plainEntry, settings: standardMoney, times: standardTimes }
      const lines = estimateFrom(open, asked).lines.filter(({ group }) => group === 'timber')
      const timber = jobTimber(open, { ...jobOf(3), spec, design })
      // A line of several lengths rests on several prices, and names none.
      expect(lines.map(({ priceId }) => priceId !== null)).toContain(true)
      expect(timber.map(({ item }) => item?.id)).toEqual(
        lines.map(({ priceId }, place) =>
          priceId === null ? timber[place]?.item?.id : book.prices.find(({ id }) => id === priceId)?.itemId,
        ),
      )
      expect(timber.map(({ item }) => item)).not.toContain(undefined)
      const task = taskOf(book, [{ ...jobOf(3), spec, design }])
      expect(task.unpriced).toEqual([])
      expect(total(task.requests.plain.parts)).toBeCloseTo(
        total(needs.timber.flatMap(({ pieces }) => pieces)),
        6,
      )
      expect(parseBuyRequest(task.requests.plain).ok).toBe(true)
      const { paired } = task.requests
      if (!paired) return
      expect(parseBuyRequest(paired).ok).toBe(true)
      const spared = task.pairs.reduce((sum, { saved }) => sum + saved - standardCutting.kerf, 0)
      expect(total(task.requests.plain.parts) - total(paired.parts)).toBeCloseTo(spared, 6)
    },
  )

  it('is of the section chosen by hand for a job, where one was', () => {
    const book = pricedBook()
    const { name, facts } = timberItem(
      { ...gate.ledges.section, name: 'cedar 150', species: 'Cedar' },
      'ledges',
    )
    const itemId = book.addItem('timber', name, facts)
    book.addPrice({ itemId, unit: 'length', size: 2700 }, 1940)
    const task = taskOf(book, [jobOf(14, gate, { 'timber.ex 32 × 150': itemId }), jobOf(15)])
    expect(task.parts.filter(({ part }) => part === 'ledge').map(({ key, jobId }) => [key, jobId])).toEqual([
      ['cedar 150, Cedar', 14],
      [ledges, 15],
    ])
  })

  it('keeps two items of one name and timber apart', () => {
    const book = pricedBook()
    const { name, facts } = timberItem(gate.ledges.section, 'ledges')
    const itemId = book.addItem('timber', name, facts)
    book.addPrice({ itemId, unit: 'length', size: 2700 }, 1940)
    const task = taskOf(book, [jobOf(14), jobOf(15, gate, { 'timber.ex 32 × 150': itemId })])
    const keys = task.sections.filter((section) => section.name === name).map(({ key }) => key)
    expect(keys).toEqual([ledges, `${ledges} (${itemId})`])
    expect(task.offers.filter(({ key }) => key === keys[1])).toHaveLength(1)
  })

  it('takes what lies on the rack of its sections, free, and measured down to a tenth', () => {
    const rack = [rackPiece(8, { length: 1861.97 }), rackPiece(5), rackPiece(9, { itemId: 77 })]
    const task = taskOf(pricedBook(), [jobOf(14)], { rack })
    expect(task.rack.map(({ id }) => id)).toEqual([5, 8])
    expect(task.requests.plain.rack).toEqual([
      { section: boards, length: 1900, pence: 0 },
      { section: boards, length: 1861.9, pence: 0 },
    ])
  })

  it('has braces in pairs where those spare timber, and a plan of them that costs no more', () => {
    const spec = gateWith({ ledges: { count: 3 }, braces: { run: 'in-line' } }, {})
    const task = taskOf(pricedBook(), [jobOf(14, spec)])
    expect(task.pairs).toHaveLength(1)
    const { plain, paired } = task.requests
    expect(paired?.parts.filter(({ section }) => section === braces)).toEqual([
      { section: braces, length: task.pairs[0]?.length, mark: task.pairs[0]?.mark, quantity: 1 },
    ])
    const costs = [plain, paired].map((request) => {
      const plan = request && buyingPlan(request)
      return plan?.ok ? plan.value.cost : null
    })
    expect(costs[1]).toBeLessThanOrEqual(costs[0] ?? 0)
    expect(taskOf(pricedBook(), [jobOf(15)]).requests.paired).toBeNull()
  })

  it('pairs no braces whose slants differ, though the cut list says them alike', () => {
    const bays = (middle: number) => gateWith({ ledges: { count: 3, heights: [197.5, middle, 1582.5] } }, {})
    const [same, off] = [bays(890), bays(890.03)].map((spec) => {
      const job = jobOf(14, spec)
      return { rows: job.design.cuts.filter(({ section }) => section === 'ex 32 × 100'), job }
    })
    expect([same?.rows.length, off?.rows.length]).toEqual([1, 1])
    expect(off?.rows[0]?.quantity).toBe(2)
    const pairsOf = (one: typeof same) => one && taskOf(pricedBook(), [one.job]).pairs.length
    expect([pairsOf(same), pairsOf(off)]).toEqual([1, 0])
    expect(
      off && taskOf(pricedBook(), [off.job]).requests.plain.parts.map(({ quantity }) => quantity),
    ).toEqual([9, 3, 2])
  })
})

describe('lengths on offer', () => {
  const lengthsOf = (book = pricedBook()) =>
    taskOf(book, [jobOf(14)])
      .offers.filter(({ key }) => key === ledges)
      .map(({ length, pence, supplier }) => [length, pence, supplier])

  it('sold by the metre cost their metres to a whole penny', () => {
    expect(lengthsOf(pricedBook([3000, 4210]))).toEqual([
      [3000, 915, 'Alder Yard'],
      [4210, 1284, 'Alder Yard'],
    ])
  })

  it('are the usual merchant’s where that one sells them, else the cheapest', () => {
    const book = timberBook()
    const sell = (supplierId: number, size: number, sum: number) =>
      book.addPrice({ itemId: 2, supplierId, unit: 'length', size }, sum)
    for (const [itemId, sum] of [
      [1, 215],
      [3, 275],
    ] as const)
      book.addPrice({ itemId, unit: 'length', size: 4800 }, sum)
    sell(1, 3000, 990)
    sell(2, 3000, 940)
    sell(2, 3900, 1210)
    sell(1, 4800, 1580)
    book.suppliers.push({ id: 3, name: 'Cob Wood', phone: '', notes: '', sample: true })
    sell(3, 3900, 1185)
    const usual = (supplierId: number) =>
      book.supplies.push({ itemId: 2, supplierId, code: '', lengths: [], usual: true })
    const without = lengthsOf(book)
    usual(1)
    expect([without, lengthsOf(book)]).toEqual([
      [
        [3000, 940, 'Birch Wharf'],
        [3900, 1185, 'Cob Wood'],
        [4800, 1580, 'Alder Yard'],
      ],
      [
        [3000, 990, 'Alder Yard'],
        [3900, 1185, 'Cob Wood'],
        [4800, 1580, 'Alder Yard'],
      ],
    ])
  })

  it('are at the price of the day', () => {
    const book = pricedBook([3000])
    book.addPrice({ itemId: 2, unit: 'metre' }, 325, '2026-06-16')
    expect(lengthsOf(book)).toEqual([[3000, 915, 'Alder Yard']])
    book.addPrice({ itemId: 2, unit: 'metre' }, 315, '2026-06-15')
    expect(lengthsOf(book)).toEqual([[3000, 945, 'Alder Yard']])
  })
})

describe('timber that can’t be ordered', () => {
  const unpricedOf = (book = timberBook(), jobs = [jobOf(14), jobOf(15)]) =>
    taskOf(book, jobs).unpriced.map(({ section, numbers, why }) => [section, numbers, why])
  const both = ['2026-014', '2026-015']

  it('has no item, no price, or no lengths kept', () => {
    expect(unpricedOf(emptyBook()).map(([, , why]) => why)).toEqual(['no item', 'no item', 'no item'])
    expect(unpricedOf().map(([, , why]) => why)).toEqual(['no price', 'no price', 'no price'])
    expect(unpricedOf(pricedBook([]))).toEqual([
      ['ex 25 × 125 T&G V', both, 'no lengths kept'],
      ['ex 32 × 150', both, 'no lengths kept'],
      ['ex 32 × 100', both, 'no lengths kept'],
    ])
  })

  it('is longer than every length bought or on the rack, and keeps nobody else’s from being ordered', () => {
    const tall = gateWith({ size: { height: 2300 } }, {})
    const book = pricedBook([2100])
    expect(unpricedOf(book, [jobOf(14), jobOf(15, tall)])).toEqual([
      ['ex 25 × 125 T&G V', ['2026-015'], 'no length'],
    ])
    // Boards of 2300 with 24 to trim, from 2100 with 20 lost at its ends.
    expect(taskOf(book, [jobOf(14), jobOf(15, tall)]).unpriced[0]?.tooLong).toEqual({
      ...{ part: 'board', number: '2026-015', length: 2324, longest: 2080, of: 2100 },
      ...{ from: 'merchant', trim: 20 },
    })
    const onRack = taskOf(book, [jobOf(15, tall)], { rack: [rackPiece(4, { length: 2323.9 })] })
    expect(onRack.unpriced[0]?.tooLong).toMatchObject({ longest: 2323.9, of: 2323.9, from: 'rack', trim: 0 })
    const task = taskOf(book, [jobOf(14), jobOf(15, tall)])
    expect(task.parts.filter(({ key }) => key === boards).map(({ number }) => number)).toEqual(['2026-014'])
    const rack = [rackPiece(4, { length: 2324 })]
    expect(taskOf(book, [jobOf(15, tall)], { rack }).unpriced).toEqual([])
    expect(
      taskOf(book, [jobOf(15, tall)], { rack: [rackPiece(4, { length: 2323.9 })] }).unpriced,
    ).toHaveLength(1)
  })
})

describe('the stamp of a task', () => {
  const stamp = (
    book = pricedBook(),
    given: Parameters<typeof taskOf>[2] = {},
    jobs = [jobOf(14), jobOf(15)],
  ) => taskOf(book, jobs, given).stamp

  it('is the same for the same task, whatever order the jobs and the rack come in', () => {
    const rack = [rackPiece(4), rackPiece(6, { length: 2050 })]
    const [one, other] = [
      stamp(pricedBook(), { rack }),
      stamp(pricedBook(), { rack: rack.toReversed() }, [jobOf(15), jobOf(14)]),
    ]
    expect(one).toMatch(/^[0-9a-f]{16}$/)
    expect(other).toBe(one)
  })

  it('is another once a price, a length, the rack, a gate or the saw differ', () => {
    const later = pricedBook()
    later.addPrice({ itemId: 2, unit: 'metre' }, 305)
    const stamps = [
      stamp(),
      stamp(later),
      stamp(pricedBook([3000, 4200])),
      stamp(pricedBook(), { rack: [rackPiece(4)] }),
      stamp(pricedBook(), { rack: [rackPiece(5)] }),
      stamp(pricedBook(), { cutting: { ...standardCutting, kerf: 3 } }),
      stamp(pricedBook(), {}, [jobOf(14)]),
      stamp(pricedBook(), {}, [jobOf(14), jobOf(15, gateWith({ size: { height: 1790 } }, {}))]),
    ]
    expect(new Set(stamps).size).toBe(stamps.length)
  })
})
