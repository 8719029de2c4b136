import { defineStore } from 'pinia'
import { ref } from 'vue'

export const jobParts = ['gate', 'price', 'papers', 'notes', 'customer'] as const
export type JobPart = (typeof jobParts)[number]

/** The sheets of a job's price: what it comes to, versions side by side, what the customer was sent, what it really took. */
export const priceSheets = ['estimate', 'options', 'quotations', 'took'] as const
export type PriceSheet = (typeof priceSheets)[number]

/** What lies over the price list: a merchant's list coming in, a percent to put prices up by, new prices looked at before they count, when prices changed. */
export const pricesParts = ['list', 'percent', 'check', 'rises'] as const
export type PricesPart = (typeof pricesParts)[number]

/** The sheets of timber: the orders made, one to be made, one that was, the rack, a stock-take of it. */
export const timberSheets = ['orders', 'make', 'order', 'rack', 'count'] as const
export type TimberSheet = (typeof timberSheets)[number]

/** The sheets of the job book: the work in hand, the list of every job, a year month by month. */
export const jobsSheets = ['board', 'all', 'year'] as const
export type JobsSheet = (typeof jobsSheets)[number]

/**
 * Where in the program a person stands. Each place has an address, so that Back goes back. paper: the issued card of a job that lies open; job: the
 * one that an order is to be made for.
 */
export type Place =
  | { name: 'jobs'; sheet?: JobsSheet }
  | { name: 'cards' }
  | { name: 'job'; id: number; part: JobPart; sheet?: PriceSheet; paper?: number }
  | { name: 'prices'; part?: PricesPart }
  | { name: 'timber'; sheet: Exclude<TimberSheet, 'order' | 'make'> }
  | { name: 'timber'; sheet: 'make'; job?: number }
  | { name: 'timber'; sheet: 'order'; id: number }
  | { name: 'workshop' }
  | { name: 'estimates' }

const isRowNumber = (text: string | undefined): text is string =>
  text !== undefined && /^[1-9]\d{0,14}$/.test(text)

function timberAt(sheet: string | undefined, id: string | undefined): Place {
  const known = timberSheets.find((one) => one === sheet) ?? 'orders'
  if (known === 'make')
    return isRowNumber(id)
      ? { name: 'timber', sheet: known, job: Number(id) }
      : { name: 'timber', sheet: known }
  if (known !== 'order') return { name: 'timber', sheet: known }
  return isRowNumber(id)
    ? { name: 'timber', sheet: 'order', id: Number(id) }
    : { name: 'timber', sheet: 'orders' }
}

/** The place an address names; the job book when it names none. '#/job/12/papers' is job 12's papers. */
export function placeAt(hash: string): Place {
  const [name, id, part, sheet] = hash.replace(/^#\/?/, '').split('/')
  if (name === 'workshop' || name === 'estimates' || name === 'cards') return { name }
  if (name === 'prices') {
    const over = pricesParts.find((known) => known === id)
    return over ? { name, part: over } : { name }
  }
  if (name === 'timber') return timberAt(id, part)
  if (name === 'job' && isRowNumber(id)) {
    const place = { name, id: Number(id), part: jobParts.find((known) => known === part) ?? 'gate' } as const
    const known = priceSheets.find((one) => one === sheet)
    if (place.part === 'papers' && isRowNumber(sheet)) return { ...place, paper: Number(sheet) }
    return place.part === 'price' && known ? { ...place, sheet: known } : place
  }
  const over = name === 'jobs' ? jobsSheets.find((one) => one === id) : undefined
  return over && over !== 'board' ? { name: 'jobs', sheet: over } : { name: 'jobs' }
}

export function addressOf(place: Place): string {
  if (place.name === 'job') {
    const further = place.sheet ?? place.paper
    return `#/job/${place.id}/${place.part}${further === undefined ? '' : `/${further}`}`
  }
  if (place.name === 'timber') {
    if (place.sheet === 'order') return `#/timber/order/${place.id}`
    if (place.sheet === 'make' && place.job !== undefined) return `#/timber/make/${place.job}`
    return place.sheet === 'orders' ? '#/timber' : `#/timber/${place.sheet}`
  }
  if (place.name === 'jobs' && place.sheet && place.sheet !== 'board') return `#/jobs/${place.sheet}`
  return place.name === 'prices' && place.part ? `#/prices/${place.part}` : `#/${place.name}`
}

export const usePlaceStore = defineStore('place', () => {
  const place = ref<Place>(placeAt(window.location.hash))
  /** The sheet of the job book that was looked at last: where Esc leads back to. */
  const jobsSheet = ref<JobsSheet>('board')
  const note = (at: Place) => {
    if (at.name === 'jobs') jobsSheet.value = at.sheet ?? 'board'
  }
  note(place.value)
  window.addEventListener('hashchange', () => {
    place.value = placeAt(window.location.hash)
    note(place.value)
  })

  /** Written into the history, where Back finds it: given to `location`, the browser would lay the old screen out once more to look for a place of that name in it. */
  const go = (to: Place) => {
    place.value = to
    note(to)
    if (window.location.hash !== addressOf(to)) window.history.pushState(null, '', addressOf(to))
  }
  return { place, jobsSheet, go }
})
