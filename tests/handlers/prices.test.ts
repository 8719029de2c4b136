import { describe, expect, it } from 'vitest'
import { answer } from '../../electron/handlers/answer.ts'
import { pence } from '../../shared/pricing/pence.ts'
import type { NewPrice, Price } from '../../shared/pricing/price.ts'
import { priceOn } from '../../shared/pricing/standing.ts'
import { fillPrices, metrePrice, timberItem } from '../fixtures/prices.ts'
import { standardSections } from '../../shared/gate/standardSpec.ts'
import { makeableJob, opened, type Opened } from './opened.ts'

/** A book with prices for everything, and one job quoted from it. */
async function quoted(context: Opened) {
  const prices = fillPrices(context.book)
  const { id: jobId, version } = await makeableJob(context)
  const paper = await context.ask('quotations.issue', { jobId, format: 'a4', version })
  return { ...prices, jobId, paper }
}

const dearer = (
  { items, supplier }: { items: Record<string, number>; supplier: number },
  amount = 260,
): NewPrice[] => [
  metrePrice(items['boards'] ?? 0, supplier, { pence: pence(amount), startsOn: '2026-03-01' }),
]

/** Every price that counts, page by page as a window reads them. */
async function everyPage(ask: Opened['ask']): Promise<Price[][]> {
  const pages: Price[][] = []
  for (let more = true; more;) {
    const some = await ask('prices.some', { after: pages.at(-1)?.at(-1)?.id ?? 0 })
    pages.push(some.prices)
    more = some.more
  }
  return pages
}

describe('a rise', () => {
  it('is shown first: each line old and new, what it does to the quotation that stands; nothing is written', async () => {
    const context = opened()
    const { ask, book } = context
    const all = await quoted(context)
    const before = book.prices.book()
    const unmoved = metrePrice(all.items['braces'] ?? 0, all.supplier, {
      pence: pence(331),
      startsOn: '2026-03-01',
    })
    const preview = await ask('prices.preview', { prices: [...dearer(all), unmoved] })
    expect(preview.lines).toMatchObject([{ words: 'ex 25 × 125 T&G V, Alder Yard', old: 211, new: 260 }])
    expect(preview.unchanged).toBe(1)
    expect(preview.effects).toHaveLength(1)
    const [effect] = preview.effects
    expect(effect).toMatchObject({
      jobId: all.jobId,
      paperId: all.paper.id,
      stands: 'quoted',
      option: 'As drawn',
    })
    const { money } = await ask('quotations.money', { paperId: all.paper.id })
    const estimate = money.options[0]?.estimate
    expect(effect?.quoted).toBe(estimate?.net)
    expect(effect?.costBefore).toBe((estimate?.cost ?? 0) + (estimate?.overhead ?? 0))
    const metres = estimate?.lines.find(({ id }) => id.startsWith('timber.ex 25'))?.quantity ?? 0
    const rise = Math.round(metres * 260) - Math.round(metres * 211)
    expect(effect?.costAfter).toBe((effect?.costBefore ?? 0) + Math.round(rise * 1.15))
    expect(book.prices.book()).toEqual(before)
  })

  it('is applied as one, undone as one, and the book is as it was', async () => {
    const context = opened()
    const { ask, book } = context
    const all = await quoted(context)
    const before = book.prices.book()
    const { stamp } = await ask('prices.preview', { prices: dearer(all) })
    const rise = await ask('prices.apply', { prices: dearer(all), origin: 'spring list', stamp })
    expect(rise).toMatchObject({ origin: 'spring list', lines: 1, undoneAt: null })
    const [line] = dearer(all)
    const stands = async () =>
      line && priceOn((await ask('prices.book', {})).prices, line, '2026-03-02')?.pence
    expect(await stands()).toBe(260)
    expect((await ask('prices.undo', { riseId: rise.id })).undoneAt).not.toBeNull()
    expect(await stands()).toBe(211)
    expect(book.prices.book()).toEqual(before)
    expect((await ask('prices.rises', {})).map(({ origin }) => origin)).toEqual([
      'spring list',
      'opening list',
    ])
  })

  it('is refused when the prices aren’t those of the preview any more, after another rise or an undoing', async () => {
    const context = opened()
    const { ask, refused } = context
    const all = await quoted(context)
    const { stamp } = await ask('prices.preview', { prices: dearer(all) })
    const other = await ask('prices.apply', { prices: dearer(all, 300), origin: 'other window', stamp })
    const mine = { prices: dearer(all), origin: 'mine' }
    expect(await refused('prices.apply', { ...mine, stamp })).toEqual(['changed-meanwhile stamp'])
    const second = (await ask('prices.preview', { prices: dearer(all) })).stamp
    await ask('prices.undo', { riseId: other.id })
    expect(await refused('prices.apply', { ...mine, stamp: second })).toEqual(['changed-meanwhile stamp'])
    expect((await ask('prices.rises', {})).map(({ origin }) => origin)).toEqual([
      'other window',
      'opening list',
    ])
  })

  it('can be undone only while it is the latest that stands', async () => {
    const context = opened()
    const { ask, refused } = context
    const all = await quoted(context)
    const apply = async (amount: number) => {
      const { stamp } = await ask('prices.preview', { prices: dearer(all, amount) })
      return ask('prices.apply', { prices: dearer(all, amount), origin: `list ${amount}`, stamp })
    }
    const [first, second] = [await apply(250), await apply(270)]
    expect(await refused('prices.undo', { riseId: first.id })).toEqual(['refused riseId'])
    await ask('prices.undo', { riseId: second.id })
    expect(await refused('prices.undo', { riseId: second.id })).toEqual(['refused riseId'])
    await ask('prices.undo', { riseId: first.id })
    expect(await refused('prices.undo', { riseId: 77 })).toEqual(['not-found riseId'])
  })

  it('is refused naming each line that the book doesn’t know or that comes twice', async () => {
    const context = opened()
    const all = await quoted(context)
    const [line] = dearer(all)
    const prices = [line, { ...line, itemId: 99 }, { ...line, supplierId: 98 }, line]
    expect(await context.refused('prices.preview', { prices })).toEqual([
      'not-found prices[1].itemId',
      'not-found prices[2].supplierId',
      'twice prices[3]',
    ])
    const stamp = context.book.rises.stamp()
    expect(await context.refused('prices.apply', { prices, origin: 'x', stamp })).toHaveLength(3)
  })

  it('is refused where a line’s unit isn’t one that its item is sold by, in preview and apply', async () => {
    const context = opened()
    const { supplier, items } = fillPrices(context.book)
    const priced = (name: string, unit: NewPrice['unit'], size: number | null = null) => ({
      ...{ itemId: items[name] ?? 0, supplierId: supplier, unit, size, startsOn: '2026-03-05' },
      pence: pence(417),
    })
    const wrong = [
      priced('boards', 'each'),
      priced('boards', 'length', 3600),
      priced('screw 40', 'metre'),
      priced('hour', 'visit'),
    ]
    const told = ['refused prices[0].unit', 'refused prices[2].unit', 'refused prices[3].unit']
    expect(await context.refused('prices.preview', { prices: wrong })).toEqual(told)
    const stamp = context.book.rises.stamp()
    expect(await context.refused('prices.apply', { prices: wrong, origin: 'x', stamp })).toEqual(told)
    const result = await answer(context, 'prices.preview', { prices: wrong })
    expect(result).toMatchObject({
      problems: [
        { message: expect.stringMatching(/^got 'each' for .* \(timber\); metre or length is accepted$/) },
        { message: "got 'metre' for ‘screw 40’ (fixing); box or each is accepted" },
        { message: "got 'visit' for ‘hour’ (work); hour is accepted" },
      ],
    })
  })

  it('of a long list names a bad line by its place in the whole, and refuses one that is too long', async () => {
    const context = opened()
    const all = await quoted(context)
    const [line] = dearer(all)
    const prices = Array.from({ length: 2500 }, (_, place) => ({
      ...line,
      size: null,
      startsOn: `2026-03-${10 + (place % 10)}`,
    }))
    const spoilt = prices.map((price, place) => (place === 2345 ? { ...price, pence: 12.5 } : price))
    expect(await context.refused('prices.preview', { prices: spoilt })).toEqual([
      'refused prices[2345].pence',
    ])
    const endless = Array.from({ length: 120_001 }, () => line)
    expect(await context.refused('prices.preview', { prices: endless })).toEqual(['refused prices'])
    const strange = { prices: prices.slice(0, 1500), origin: 'x', stamp: 'x', more: 1 }
    expect(await context.refused('prices.apply', strange)).toEqual(['refused more'])
  })

  it('of 100,000 prices is applied whole, and others have their turn all along', async () => {
    const context = opened()
    const { ask, book } = context
    const supplier = book.prices.addSupplier({ name: 'Great List', phone: '', notes: '' }).id
    const ids = book.together(() =>
      Array.from(
        { length: 1000 },
        () => book.prices.addItem(timberItem(standardSections.boards, 'boards')).id,
      ),
    )
    const prices = ids.flatMap((id) =>
      Array.from({ length: 100 }, (_, place) =>
        metrePrice(id, supplier, {
          pence: pence(100 + place),
          startsOn: new Date(Date.UTC(2026, 0, 1 + place)).toISOString().slice(0, 10),
        }),
      ),
    )
    const stamp = book.rises.stamp()
    const others = { turns: 0, going: true }
    const look = (): void => {
      others.turns += 1
      if (others.going) setImmediate(look)
    }
    look()
    const rise = await ask('prices.apply', { prices, origin: 'great list', stamp })
    others.going = false
    expect(rise.lines).toBe(100_000)
    const read = await ask('prices.book', {})
    expect(read.prices).toHaveLength(100_000)
    const pages = await everyPage(ask)
    expect(pages.length).toBeGreaterThan(30)
    expect(pages.flat()).toEqual([...read.prices].sort((a, b) => a.id - b.id))
    expect(read.prices.reduce((sum, price) => sum + price.pence, 0)).toBe(1000 * (100 * 100 + 4950))
    process.stdout.write(`turns that others had while 100,000 prices were written: ${others.turns}\n`)
    expect(others.turns).toBeGreaterThan(15)
  })
})

describe('prices some at a time', () => {
  it('are those that count alone, after the one named, with the stamp that they stand under', async () => {
    const context = opened()
    const all = await quoted(context)
    const { stamp } = await context.ask('prices.preview', { prices: dearer(all) })
    const rise = await context.ask('prices.apply', { prices: dearer(all), origin: 'spring list', stamp })
    const whole = async () => (await context.ask('prices.book', {})).prices.sort((a, b) => a.id - b.id)
    const some = await context.ask('prices.some', { after: 0 })
    expect(some.prices).toEqual(await whole())
    expect(some).toMatchObject({ more: false })
    const last = some.prices.at(-1)?.id ?? 0
    expect((await context.ask('prices.some', { after: last - 1 })).prices).toEqual(some.prices.slice(-1))
    expect((await context.ask('prices.some', { after: last })).prices).toEqual([])
    await context.ask('prices.undo', { riseId: rise.id })
    const undone = await context.ask('prices.some', { after: 0 })
    expect(undone.prices).toEqual(await whole())
    expect(undone.prices.length).toBeLessThan(some.prices.length)
    expect(undone.stamp).not.toBe(some.stamp)
    const { prices, ...lines } = await context.ask('prices.book', {})
    expect(prices.length).toBe(undone.prices.length)
    expect(await context.ask('prices.lines', {})).toEqual(lines)
  })
})

describe('effects of a rise', () => {
  const effectsOf = async (context: Opened, all: Parameters<typeof dearer>[0]) =>
    (await context.ask('prices.preview', { prices: dearer(all) })).effects.map(({ paperId, stands }) => [
      paperId,
      stands,
    ])

  it('are told of the latest quotation of a job, and of the accepted one instead once there is one', async () => {
    const context = opened()
    const { ask } = context
    const all = await quoted(context)
    const version = (await ask('jobs.open', { id: all.jobId })).version
    const second = await ask('quotations.issue', { jobId: all.jobId, format: 'a4', version })
    expect(await effectsOf(context, all)).toEqual([[second.id, 'quoted']])
    await ask('quotations.accept', { paperId: all.paper.id, option: 0, acceptedOn: '2026-03-04', note: '' })
    expect(await effectsOf(context, all)).toEqual([[all.paper.id, 'accepted']])
  })

  it('aren’t told of a lapsed quotation, but of a lapsed one that was accepted, until the timber is ordered', async () => {
    const context = opened()
    const { ask, book } = context
    const all = await quoted(context)
    const later = opened({ book, now: () => '2026-04-02T08:00:00.000Z' })
    expect(await effectsOf(context, all)).toHaveLength(1)
    expect(await effectsOf(later, all)).toEqual([])
    await ask('quotations.accept', { paperId: all.paper.id, option: 0, acceptedOn: '2026-03-04', note: '' })
    expect(await effectsOf(later, all)).toEqual([[all.paper.id, 'accepted']])
    await ask('jobs.change', { id: all.jobId, changes: [{ path: 'stage', value: 'ordered' }] })
    expect(await effectsOf(later, all)).toEqual([])
  })

  it('aren’t told where nothing that the quotation rests on moves', async () => {
    const context = opened()
    const all = await quoted(context)
    const other = context.book.prices.addItem(
      timberItem({ ...standardSections.ledges, width: 219 }, 'ledges'),
    ).id
    const { lines, effects } = await context.ask('prices.preview', {
      prices: [metrePrice(other, all.supplier)],
    })
    expect([lines.length, lines[0]?.old, effects]).toEqual([1, null, []])
  })
})

describe('a line of the price book', () => {
  it('needs a name, keeps its kind, and is missed by its field when it is gone', async () => {
    const { ask, refused, book } = opened()
    const { items, supplier } = fillPrices(book)
    const item = timberItem(standardSections.boards, 'boards')
    expect(await refused('prices.addItem', { ...item, name: '  ' })).toEqual(['missing name'])
    expect((await ask('prices.addItem', { ...item, name: ' larch ' })).name).toBe('larch')
    expect(await refused('prices.changeItem', { id: items['hour'], item })).toEqual(['refused item.kind'])
    expect(await refused('prices.changeItem', { id: 999, item })).toEqual(['not-found id'])
    const supply = {
      itemId: items['boards'] ?? 0,
      supplierId: supplier,
      code: 'B1',
      lengths: [3000],
      usual: true,
    }
    expect(await ask('prices.supply', supply)).toEqual(supply)
    expect(await refused('prices.supply', { ...supply, supplierId: 44 })).toEqual(['not-found supplierId'])
    expect(await refused('prices.supply', { ...supply, itemId: 999 })).toEqual(['not-found itemId'])
    expect(
      await refused('prices.changeSupplier', { id: 44, supplier: { name: 'B', phone: '', notes: '' } }),
    ).toEqual(['not-found id'])
  })
})
