import { defineStore } from 'pinia'
import { computed, ref, shallowRef } from 'vue'
import { codeKey, decimalOfColumn, type ColumnRole, type Columns } from '../../shared/spreadsheet/columns.ts'
import type { Decimal } from '../../shared/spreadsheet/amount.ts'
import type { Delimiter } from '../../shared/spreadsheet/delimiter.ts'
import { unguard } from '../../shared/spreadsheet/guard.ts'
import { saysWithTax } from '../../shared/spreadsheet/listTax.ts'
import { taxRateOn } from '../../shared/pricing/tax.ts'
import { wholeBp, writePercent } from '../../shared/pricing/percent.ts'
import { askWorker, type ListAsking } from '../prices/askWorker.ts'
import { bookLines } from '../prices/exportList.ts'
import type { ListTold, SeenList } from '../prices/listWork.ts'
import type { ListOutcome } from '../prices/matchList.ts'
import type { RiseDraft } from './rise.ts'
import { usePricesStore } from './prices.ts'
import { useSettingsStore } from './settings.ts'

type Read = { lines: number; outcome: ListOutcome }

/** A merchant's list on its way into the price book: chosen, its columns settled, read and held against the book. Nothing is written here. */
export const useMerchantListStore = defineStore('merchantList', () => {
  const prices = usePricesStore()
  const file = shallowRef<File | null>(null)
  const seen = shallowRef<SeenList | null>(null)
  const columns = ref<Columns | null>(null)
  const decimal = ref<Decimal>('point')
  /** Whose list it is; null: as its own column says. */
  const supplierId = ref<number | null>(null)
  /** The rate of tax in the list's prices, basis points; null: it leaves tax out. */
  const taxBp = ref<number | null>(null)
  const read = shallowRef<Read | null>(null)
  const trouble = ref('')
  const progress = ref<{ lines: number; share: number; left: number } | null>(null)
  const brokenOff = ref(false)
  let asking: ListAsking | null = null

  const rows = computed(() => {
    const all = seen.value?.rows ?? []
    const above = seen.value?.layout.headings?.line ?? 0
    return all.filter(({ line }) => line > above)
  })
  const tax = computed(() => useSettingsStore().summary?.settings.money.tax)
  /** The rate that a list with tax in it has unless another is said: the workshop's own on the day, else the usual fifth. */
  const usualTax = computed(() => taxRateOn(tax.value?.rates ?? [], prices.today) ?? wholeBp / 5)
  /** A column headed 'inc VAT' is taken at its word; whoever isn't registered pays the tax and keeps it in. */
  function taxOfColumn(column: number | null): number | null {
    const heading = column === null ? '' : (seen.value?.layout.headings?.cells[column] ?? '')
    return tax.value?.registered !== false && saysWithTax(heading) ? usualTax.value : null
  }
  /** What is still to be settled before the list can be read, in a sentence; '' for nothing. */
  const wants = computed(() => {
    const chosen = columns.value
    if (!chosen) return ''
    if (chosen.price === null) return 'Say which column holds the price.'
    if (chosen.code === null && chosen.words === null)
      return 'Say which column holds the code, or what it is.'
    return supplierId.value === null && chosen.supplier === null ? 'Say whose list it is.' : ''
  })

  function breakOff() {
    if (asking) brokenOff.value = true
    asking?.breakOff()
    asking = null
    progress.value = null
  }
  async function ask(what: Parameters<typeof askWorker>[0]): Promise<ListTold | undefined> {
    asking?.breakOff()
    brokenOff.value = false
    trouble.value = ''
    const began = Date.now()
    progress.value = { lines: 0, share: 0, left: 0 }
    const mine = askWorker(what, ({ lines, share }) => {
      if (asking === mine)
        progress.value = { lines, share, left: ((Date.now() - began) * (1 - share)) / share }
    })
    asking = mine
    const told = await mine.answer
    if (asking !== mine) return undefined
    asking = null
    progress.value = null
    if (told?.told === 'refused') trouble.value = told.sentence
    return told
  }

  /** The supplier whose codes stand most often in a list's first rows; the one of the list on show, where none does. */
  function likeliestSupplier(list: SeenList): number | null {
    const { code, supplier } = list.layout.columns
    if (supplier !== null) return null
    const owners = new Map<string, number[]>()
    for (const { supplier: owner, code: own } of prices.rows)
      if (owner && own !== '') owners.set(codeKey(own), [...(owners.get(codeKey(own)) ?? []), owner.id])
    const counts = new Map<number, number>()
    for (const { cells } of code === null ? [] : list.rows)
      for (const id of new Set(owners.get(codeKey(unguard(cells[code ?? 0] ?? '')))))
        counts.set(id, (counts.get(id) ?? 0) + 1)
    const best = [...counts].sort((a, b) => b[1] - a[1])[0]
    const only = prices.book?.suppliers.length === 1 ? prices.book.suppliers[0]?.id : undefined
    return best?.[0] ?? prices.filter.supplierId ?? only ?? null
  }

  /** A list is held against the book and its tax: given before they are here, it waits for them. False where they can't be had. */
  async function bookOpened(): Promise<boolean> {
    const settings = useSettingsStore()
    await Promise.all([prices.opened(), settings.summary ? undefined : settings.read()])
    if (!prices.book) trouble.value = prices.trouble
    return prices.book !== null
  }

  /** Looks at the list's start, guesses its columns, and reads it where nothing is left to settle. */
  async function look(delimiter: Delimiter | null = null): Promise<void> {
    if (!file.value) return
    read.value = null
    if (!(await bookOpened())) return
    const known = [...new Set(prices.rows.map(({ code }) => codeKey(code)))].filter((code) => code !== '')
    const told = await ask({ ask: 'look', file: file.value, known, delimiter })
    if (told?.told !== 'seen') {
      if (told) seen.value = null
      return
    }
    seen.value = told.list
    columns.value = { ...told.list.layout.columns }
    decimal.value = told.list.layout.decimal
    taxBp.value = taxOfColumn(columns.value.price)
    supplierId.value = likeliestSupplier(told.list)
    return readAll()
  }
  function choose(chosen: File): Promise<void> {
    file.value = chosen
    seen.value = null
    columns.value = null
    return look()
  }

  /** Reads the whole list as it is settled now. */
  async function readAll(): Promise<void> {
    read.value = null
    if (!file.value || !seen.value || !columns.value || wants.value !== '') return
    const { writing, delimiter, layout } = seen.value
    const told = await ask({
      ask: 'read',
      file: file.value,
      settled: {
        ...{ writing, delimiter, layout, columns: { ...columns.value } },
        ...{ decimal: decimal.value, taxBp: taxBp.value },
      },
      book: {
        lines: bookLines(prices.rows),
        suppliers: (prices.book?.suppliers ?? []).map(({ id, name }) => ({ id, name })),
        supplierId: supplierId.value,
      },
    })
    if (told?.told === 'read') read.value = { lines: told.lines, outcome: told.outcome }
  }

  /** Takes a column for something else; what it was taken for before has none then. role null: it isn't used. */
  function take(column: number, role: ColumnRole | null): Promise<void> {
    if (!columns.value) return Promise.resolve()
    const now: Columns = { ...columns.value }
    for (const one of ['code', 'words', 'unit', 'price', 'supplier'] as const)
      if (now[one] === column) now[one] = null
    if (role) now[role] = column
    columns.value = now
    if (role === 'price') {
      decimal.value = decimalOfColumn(rows.value, column)
      taxBp.value = taxOfColumn(column)
    }
    return readAll()
  }
  function setDecimal(chosen: Decimal): Promise<void> {
    decimal.value = chosen
    return readAll()
  }
  function setTax(bp: number | null): Promise<void> {
    taxBp.value = bp
    return readAll()
  }
  function setSupplier(id: number | null): Promise<void> {
    supplierId.value = id
    return readAll()
  }

  /** The list's prices as a rise to be looked at; null before it was read. */
  const draft = (): RiseDraft | null => {
    if (!read.value || !file.value) return null
    const { matched } = read.value.outcome
    const off =
      taxBp.value === null ? '' : `, ${writePercent(taxBp.value)} ${tax.value?.name || 'tax'} taken off`
    const origin = `list ${file.value.name.slice(0, 150)}${off}`.slice(0, 200)
    return {
      origin,
      make: (startsOn) =>
        matched.map(({ itemId, supplierId: supplier, unit, size, pence }) => ({
          itemId,
          supplierId: supplier,
          unit,
          size,
          pence,
          startsOn,
        })),
    }
  }
  function putAway() {
    breakOff()
    brokenOff.value = false
    file.value = null
    seen.value = null
    columns.value = null
    read.value = null
    trouble.value = ''
  }

  return {
    file,
    seen,
    rows,
    columns,
    decimal,
    supplierId,
    taxBp,
    usualTax,
    read,
    trouble,
    progress,
    brokenOff,
    wants,
    choose,
    look,
    readAll,
    take,
    setDecimal,
    setSupplier,
    setTax,
    breakOff,
    draft,
    putAway,
  }
})
