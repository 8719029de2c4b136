import { describe, expect, it } from 'vitest'
import { addSample } from '../../electron/handlers/sampleCards.ts'
import { catalogue } from '../../shared/ironmongery/catalogue.ts'
import { pence } from '../../shared/pricing/pence.ts'
import type { ItemKind } from '../../shared/pricing/item.ts'
import { historyOf } from '../../shared/pricing/standing.ts'
import { plainEntry } from '../../shared/pricing/terms.ts'
import { metrePrice } from '../fixtures/prices.ts'
import { makeableJob, opened, type Opened } from './opened.ts'

const itemOf = ({ book }: Opened, kind: ItemKind, place = 0) => {
  const item = book.prices.book().items.filter((one) => one.kind === kind)[place]
  if (!item) throw new Error(`the sample has no ${kind} ${place}`)
  return item
}

describe('the sample’s price book', () => {
  it('prices every piece of the ironmongery list and every sample gate that can be made', async () => {
    const context = opened()
    const { ask, refused } = context
    await addSample(context)
    const { items } = await ask('prices.book', {})
    const pieces = items.flatMap((item) =>
      item.kind === 'ironmongery' && item.facts.piece ? [item.facts.piece] : [],
    )
    expect(pieces).toEqual(catalogue.map(({ id }) => id))
    const { rows } = await ask('jobs.list', { search: '', stage: null })
    const refusals: string[] = []
    for (const { id: jobId } of rows)
      refusals.push(...(await refused('quotations.draft', { jobId, format: 'a4' })))
    expect(refusals.filter((problem) => !/^(stop|missing) /.test(problem))).toEqual([])
  })

  it('has two years of prices that rose, fell, and one announced ahead; all marked, all of made-up merchants', async () => {
    const context = opened()
    const { ask } = context
    await addSample(context)
    const { items, suppliers, prices } = await ask('prices.book', {})
    expect(items.every(({ sample }) => sample) && suppliers.every(({ sample }) => sample)).toBe(true)
    expect(suppliers.every(({ name }) => name.endsWith('(made up)'))).toBe(true)
    const line = prices.find(
      ({ itemId, supplierId }) => itemId === itemOf(context, 'timber').id && supplierId === suppliers[0]?.id,
    )
    const history = line ? historyOf(prices, line).map(({ pence: amount }) => amount) : []
    expect(history).toEqual([232, 242, 237, 252])
    const days = prices.map(({ startsOn }) => startsOn).sort()
    expect([days[0], days.at(-1)]).toEqual(['2024-03-02', '2026-03-27'])
  })

  it('comes with quotations open, accepted and lapsed, and a job whose hours stand beside its estimate', async () => {
    const context = opened()
    const { ask } = context
    await addSample(context)
    const { rows } = await ask('jobs.list', { search: '', stage: null })
    const papers = (await Promise.all(rows.map(({ id: jobId }) => ask('papers.list', { jobId })))).flat()
    const quotations = papers.filter(({ kind }) => kind === 'quotation')
    const stands = await Promise.all(
      quotations.map(({ id: paperId }) => ask('quotations.money', { paperId })),
    )
    expect(stands.filter(({ acceptance }) => acceptance)).toHaveLength(2)
    expect(
      stands.filter(({ acceptance, money }) => !acceptance && money.validUntil < '2026-03-02'),
    ).toHaveLength(1)
    expect(
      stands.filter(({ acceptance, money }) => !acceptance && money.validUntil >= '2026-03-02'),
    ).toHaveLength(2)
    expect(stands.map(({ money }) => money.options.length).sort()).toEqual([1, 1, 1, 1, 2])
    expect((await ask('workDone.record', {})).map(({ group }) => group)).toContain('hanging')
  })
})

describe('removing the sample', () => {
  it('leaves what the workshop has come to use, with its whole history, as its own; the rest goes', async () => {
    const context = opened()
    const { ask, book } = context
    await addSample(context)
    const { id: jobId } = await makeableJob(context)
    const [priced, trial, chosen] = [0, 1, 2].map((place) => itemOf(context, 'timber', place))
    const finish = itemOf(context, 'finish')
    const sold = itemOf(context, 'fixing')
    const supplierId = book.prices.book().prices[0]?.supplierId ?? 0
    const rise = (itemId: number, amount: number) =>
      book.rises.add({
        prices: [metrePrice(itemId, supplierId, { pence: pence(amount), startsOn: '2026-03-02' })],
        origin: 'own price',
        stamp: null,
      })
    rise(priced?.id ?? 0, 299)
    book.rises.undo(rise(trial?.id ?? 0, 301)?.id ?? 0)
    const entry = {
      ...plainEntry,
      chosen: { 'timber.x': chosen?.id ?? 0 },
      finish: { itemId: finish.id, coats: null },
    }
    await ask('options.add', { jobId, option: { name: 'Mine', spec: null, entry } })
    const own = book.prices.addSupplier({ name: 'Own Merchant', phone: '', notes: '' }).id
    await ask('prices.supply', { itemId: sold.id, supplierId: own, code: 'X', lengths: [], usual: false })
    const history = book.prices.book().prices.filter(({ itemId }) => itemId === priced?.id)
    await ask('sample.remove', {})
    const left = await ask('prices.book', {})
    expect(left.items.map(({ id }) => id)).toEqual(
      [priced?.id, chosen?.id, sold.id, finish.id].sort((a, b) => (a ?? 0) - (b ?? 0)),
    )
    expect(left.items.some(({ sample }) => sample)).toBe(false)
    expect(left.suppliers.some(({ sample }) => sample)).toBe(false)
    expect(left.prices.filter(({ itemId }) => itemId === priced?.id)).toEqual(history)
    expect(left.prices.at(-1)).toMatchObject({ pence: 299, origin: 'own price' })
    expect(await ask('options.list', { jobId })).toHaveLength(1)
  })

  it('keeps a line that the workshop set right', async () => {
    const context = opened()
    await addSample(context)
    const { id, kind, name, facts } = itemOf(context, 'work')
    if (kind !== 'work') throw new Error('a rate was looked for')
    await context.ask('prices.changeItem', { id, item: { kind, name: `${name}, mine`, facts } })
    await context.ask('sample.remove', {})
    expect((await context.ask('prices.book', {})).items.map((item) => item.name)).toEqual([`${name}, mine`])
  })
})
