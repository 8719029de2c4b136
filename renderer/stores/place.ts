import { defineStore } from 'pinia'
import { ref } from 'vue'

export const jobParts = ['gate', 'price', 'papers', 'customer'] as const
export type JobPart = (typeof jobParts)[number]

/** The sheets of a job's price: what it comes to, versions side by side, what the customer was sent, what it really took. */
export const priceSheets = ['estimate', 'options', 'quotations', 'took'] as const
export type PriceSheet = (typeof priceSheets)[number]

/** Where in the program a person stands. Each place has an address, so that Back goes back. */
export type Place =
  | { name: 'jobs' }
  | { name: 'job'; id: number; part: JobPart; sheet?: PriceSheet }
  | { name: 'workshop' }
  | { name: 'estimates' }

/** The place an address names; the job book when it names none. '#/job/12/papers' is job 12's papers. */
export function placeAt(hash: string): Place {
  const [name, id, part, sheet] = hash.replace(/^#\/?/, '').split('/')
  if (name === 'workshop' || name === 'estimates') return { name }
  if (name === 'job' && id && /^[1-9]\d{0,14}$/.test(id)) {
    const place = { name, id: Number(id), part: jobParts.find((known) => known === part) ?? 'gate' } as const
    const known = priceSheets.find((one) => one === sheet)
    return place.part === 'price' && known ? { ...place, sheet: known } : place
  }
  return { name: 'jobs' }
}

export const addressOf = (place: Place): string =>
  place.name === 'job'
    ? `#/job/${place.id}/${place.part}${place.sheet ? `/${place.sheet}` : ''}`
    : `#/${place.name}`

export const usePlaceStore = defineStore('place', () => {
  const place = ref<Place>(placeAt(window.location.hash))
  window.addEventListener('hashchange', () => (place.value = placeAt(window.location.hash)))

  const go = (to: Place) => {
    place.value = to
    if (window.location.hash !== addressOf(to)) window.location.hash = addressOf(to)
  }
  return { place, go }
})
