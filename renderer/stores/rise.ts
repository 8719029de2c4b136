import { defineStore } from 'pinia'
import { ref, shallowRef } from 'vue'
import type { NewPrice, PriceUnit, Rise } from '../../shared/pricing/price.ts'
import { isPence, pence } from '../../shared/pricing/pence.ts'
import { priceUnits } from '../../shared/pricing/price.ts'
import type { RiseLine, RisePreview } from '../../shared/pricing/quotation.ts'
import { request, sentences } from '../api.ts'
import { dayOf } from '../prices/days.ts'
import { breathe } from '../prices/inSteps.ts'
import { usePricesStore } from './prices.ts'

/** New prices to be looked at before they count. make: the prices, for the day they are to hold from. origin: where they came from. */
export type RiseDraft = { origin: string; make: (startsOn: string) => NewPrice[] }

const unitOf = (unit: string): PriceUnit | undefined => priceUnits.find((known) => known === unit)

/** A line of a preview as the price it would add. */
const priceOf = ({ itemId, supplierId, unit, size, startsOn, new: sum }: RiseLine): NewPrice[] => {
  const known = unitOf(unit)
  return known && isPence(sum) ? [{ itemId, supplierId, unit: known, size, pence: pence(sum), startsOn }] : []
}

/** A rise on its way: what it would do, from which day, applied in one go. */
export const useRiseStore = defineStore('rise', () => {
  const prices = usePricesStore()
  const draft = shallowRef<RiseDraft | null>(null)
  const startsOn = ref(dayOf(new Date()))
  const preview = shallowRef<RisePreview | null>(null)
  const trouble = ref('')
  const busy = ref(false)
  const applied = shallowRef<Rise | null>(null)
  let asked = 0

  /** Asks the book what the prices would do from the day chosen; an answer overtaken by a later question is let go. */
  async function look(): Promise<void> {
    const mine = ++asked
    if (!draft.value) return
    trouble.value = ''
    busy.value = true
    // The screen that shows the answer is drawn while thousands of prices are still to be gathered.
    await breathe()
    if (mine !== asked) return
    const made = draft.value.make(startsOn.value)
    if (made.length === 0) {
      busy.value = false
      preview.value = { lines: [], effects: [], unchanged: 0, stamp: '' }
      return
    }
    const reply = await request('prices.preview', { prices: made })
    if (mine !== asked) return
    busy.value = false
    if (reply.ok) preview.value = reply.value
    else trouble.value = sentences(reply)
  }

  /** Lays new prices on the table, to hold from today until another day is chosen. */
  function propose(proposed: RiseDraft): Promise<void> {
    draft.value = proposed
    startsOn.value = dayOf(new Date())
    preview.value = null
    applied.value = null
    return look()
  }
  function start(day: string): Promise<void> {
    startsOn.value = day
    return look()
  }

  /** Writes all of the previewed prices that change, or none. True once they stand. */
  async function apply(): Promise<boolean> {
    if (!draft.value || !preview.value) return false
    busy.value = true
    const { lines, stamp } = preview.value
    const { origin } = draft.value
    const reply = await request('prices.apply', { prices: lines.flatMap(priceOf), origin, stamp })
    busy.value = false
    trouble.value = sentences(reply)
    if (!reply.ok) return false
    applied.value = reply.value
    draft.value = null
    preview.value = null
    prices.putBack()
    await prices.read()
    return true
  }
  function drop() {
    asked += 1
    draft.value = null
    preview.value = null
    busy.value = false
    trouble.value = ''
  }

  return { draft, startsOn, preview, trouble, busy, applied, look, propose, start, apply, drop }
})
