import { afterEach, describe, expect, it } from 'vitest'
import { pence } from '../../shared/pricing/pence.ts'
import { useEstimateStore, type PricedOption } from '../../renderer/stores/estimate.ts'
import { useJobStore } from '../../renderer/stores/job.ts'
import { useOptionsStore } from '../../renderer/stores/options.ts'
import { useSettingsStore } from '../../renderer/stores/settings.ts'
import { hourRates, optionBook, sizedJob } from './estimateStandIn.ts'
import { job } from './standIn.ts'

async function opened() {
  await useJobStore().open(7)
  await useSettingsStore().read()
  await useOptionsStore().read(7)
  const store = useEstimateStore()
  await store.read()
  return store
}
const priced = (one: PricedOption | undefined) =>
  one?.stands === 'priced' ? one.estimate : expect.fail('not priced')
const sumOf = (one: PricedOption | undefined, id: string) =>
  priced(one).lines.find((line) => line.id === id)?.pence

describe('the estimate on the screen', () => {
  afterEach(() => useJobStore().close())

  it('is worked out as soon as the gate, the prices and the settings are there', async () => {
    optionBook(hourRates())
    const store = await opened()
    // Hanging one leaf, 75 minutes at £42.00 an hour.
    expect(sumOf(store.chosen, 'hanging.hang leaf')).toBe(5250)
    expect(priced(store.chosen).missing.some((id) => id.startsWith('timber.'))).toBe(true)
  })

  it('follows a line put by hand at once, before the book has it', async () => {
    const book = optionBook(hourRates())
    const store = await opened()
    useOptionsStore().editEntry(0, { overrules: { 'hanging.hang leaf': { minutes: 100 } } })
    expect(sumOf(store.chosen, 'hanging.hang leaf')).toBe(7000)
    useOptionsStore().editEntry(0, { overrules: { 'hanging.hang leaf': { pence: pence(1234) } } })
    expect(sumOf(store.chosen, 'hanging.hang leaf')).toBe(1234)
    expect(book.rows).toEqual([])
  })

  it('follows a rise when the prices are read again', async () => {
    const book = optionBook(hourRates())
    const store = await opened()
    const before = sumOf(store.chosen, 'making.set up')
    book.prices = hourRates(5000)
    await store.read()
    expect([before, sumOf(store.chosen, 'making.set up')]).toEqual([1900, 2500])
  })

  it('prices each version by its own gate', async () => {
    optionBook(hourRates())
    const store = await opened()
    const spec = store.drawnSpec ?? expect.fail('drawn')
    const { braces: _none, ...ledged } = spec
    const entry = useOptionsStore().options[0]?.entry ?? expect.fail()
    await useOptionsStore().add({ name: 'Ledged', spec: { ...ledged, construction: 'ledged' }, entry })
    const [drawn, plain] = store.all
    expect(priced(plain).cost).toBeLessThan(priced(drawn).cost)
  })

  it('waits for sizes, and says what is in the way of a gate that can’t be made', async () => {
    optionBook(hourRates(), job())
    expect((await opened()).chosen).toMatchObject({ stands: 'not yet', title: 'Sizes first' })
    await useJobStore().close()
    const narrow = sizedJob()
    const size = { from: 'leaf' as const, width: 60, height: 1785 }
    optionBook(hourRates(), { ...narrow, entry: { ...narrow.entry, spec: { ...narrow.entry.spec, size } } })
    expect((await opened()).chosen).toMatchObject({
      stands: 'not yet',
      title: 'This gate can’t be made as entered',
    })
  })

  it('gives a sentence, not a fault, for a sum past ten million', async () => {
    optionBook(hourRates())
    const store = await opened()
    useOptionsStore().editEntry(0, { overrules: { 'hanging.hang leaf': { pence: pence(1_000_000_000) } } })
    expect(store.chosen).toMatchObject({ stands: 'not yet', title: 'No price can be told' })
  })
})
