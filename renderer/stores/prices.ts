import { defineStore } from 'pinia'
import { computed, ref, shallowRef } from 'vue'
import type { Takes } from '../../shared/contract.ts'
import type { PriceBook } from '../../shared/pricing/book.ts'
import type { Pence } from '../../shared/pricing/pence.ts'
import type { NewPrice, Rise } from '../../shared/pricing/price.ts'
import type { Result } from '../../shared/problem.ts'
import { request, sentences } from '../api.ts'
import { dayOf } from '../prices/days.ts'
import { inSteps } from '../prices/inSteps.ts'
import { readPriceBook } from '../prices/readPriceBook.ts'
import { filterRows, priceRowSteps, wholeList, type PriceRow, type RowFilter } from '../prices/priceRows.ts'

/** The price book: its lines, what is shown of them, the prices typed in and not yet looked at, the rises before. */
export const usePricesStore = defineStore('prices', () => {
  const book = shallowRef<PriceBook | null>(null)
  const rises = shallowRef<Rise[]>([])
  const trouble = ref('')
  const today = ref(dayOf(new Date()))
  const filter = ref<RowFilter>({ ...wholeList })
  const typed = shallowRef<ReadonlyMap<string, Pence>>(new Map())

  const rows = shallowRef<PriceRow[]>([])
  let asked = 0
  const shown = computed(() => filterRows(rows.value, filter.value))
  const filtered = computed(() => Object.values(filter.value).some((one) => one !== null && one !== ''))

  async function readAll(): Promise<void> {
    const mine = ++asked
    const [prices, before] = await Promise.all([readPriceBook(), request('prices.rises', {})])
    const day = dayOf(new Date())
    const made = prices.ok ? await inSteps(priceRowSteps(prices.value, day)) : null
    if (mine !== asked) return
    today.value = day
    if (prices.ok && made) {
      book.value = prices.value
      rows.value = made
    }
    if (before.ok) rises.value = [...before.value].sort((a, b) => b.id - a.id)
    trouble.value = sentences(prices) || sentences(before)
  }

  let reading: Promise<void> = Promise.resolve()
  /** Reads the book; an answer overtaken by a later reading is let go. The window isn't held up while the list is made. */
  const read = (): Promise<void> => (reading = readAll())
  /** Waits until the book is open, where it is being read for the first time. */
  const opened = (): Promise<void> => (book.value ? Promise.resolve() : reading)

  /** Notes a price typed in for a row; null, or the price that stands, takes the note away. */
  function type(row: PriceRow, pence: Pence | null) {
    const notes = new Map(typed.value)
    if (pence === null || pence === row.now?.pence) notes.delete(row.key)
    else notes.set(row.key, pence)
    typed.value = notes
  }
  const putBack = () => (typed.value = new Map())
  /** The prices typed in, to hold from a day on. */
  const typedPrices = (startsOn: string): NewPrice[] =>
    rows.value.flatMap(({ key, line }) => {
      const pence = typed.value.get(key)
      return pence === undefined || !line ? [] : [{ ...line, pence, startsOn }]
    })

  const showAll = () => (filter.value = { ...wholeList })

  /** After the book has taken a change: reads it anew. Gives the reply on. */
  async function followed<T>(asked: Promise<Result<T>>): Promise<Result<T>> {
    const reply = await asked
    if (reply.ok) await read()
    return reply
  }
  const addItem = (item: Takes<'prices.addItem'>) => followed(request('prices.addItem', item))
  const changeItem = (change: Takes<'prices.changeItem'>) => followed(request('prices.changeItem', change))
  const retireItem = (id: number, retired: boolean) => followed(request('prices.retireItem', { id, retired }))
  const addSupplier = (supplier: Takes<'prices.addSupplier'>) =>
    followed(request('prices.addSupplier', supplier))
  const changeSupplier = (change: Takes<'prices.changeSupplier'>) =>
    followed(request('prices.changeSupplier', change))
  const keepSupply = (supply: Takes<'prices.supply'>) => followed(request('prices.supply', supply))

  /** Puts down a first price of a line: nothing stood there before, so there is nothing to look at first. */
  async function addPrice(price: NewPrice): Promise<Result<Rise>> {
    const preview = await request('prices.preview', { prices: [price] })
    if (!preview.ok) return preview
    const { stamp } = preview.value
    return followed(request('prices.apply', { prices: [price], origin: 'by hand', stamp }))
  }
  const undo = (riseId: number) => followed(request('prices.undo', { riseId }))

  return {
    book,
    rises,
    trouble,
    today,
    filter,
    typed,
    rows,
    shown,
    filtered,
    read,
    opened,
    type,
    putBack,
    typedPrices,
    showAll,
    addItem,
    changeItem,
    retireItem,
    addSupplier,
    changeSupplier,
    keepSupply,
    addPrice,
    undo,
  }
})
