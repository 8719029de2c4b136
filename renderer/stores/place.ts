import { defineStore } from 'pinia'
import { ref } from 'vue'

export const jobParts = ['gate', 'price', 'papers', 'customer'] as const
export type JobPart = (typeof jobParts)[number]

/** The sheets of a job's price: what it comes to, versions side by side, what the customer was sent, what it really took. */
export const priceSheets = ['estimate', 'options', 'quotations', 'took'] as const
export type PriceSheet = (typeof priceSheets)[number]

/** What lies over the price list: a merchant's list coming in, new prices looked at before they count, when prices changed. */
export const pricesParts = ['list', 'check', 'rises'] as const
export type PricesPart = (typeof pricesParts)[number]

/** Where in the program a person stands. Each place has an address, so that Back goes back. */
export type Place =
  | { name: 'jobs' }
  | { name: 'job'; id: number; part: JobPart; sheet?: PriceSheet }
  | { name: 'prices'; part?: PricesPart }
  | { name: 'workshop' }
  | { name: 'estimates' }

/** The place an address names; the job book when it names none. '#/job/12/papers' is job 12's papers. */
export function placeAt(hash: string): Place {
  const [name, id, part, sheet] = hash.replace(/^#\/?/, '').split('/')
  if (name === 'workshop' || name === 'estimates') return { name }
  if (name === 'prices') {
    const over = pricesParts.find((known) => known === id)
    return over ? { name, part: over } : { name }
  }
  if (name === 'job' && id && /^[1-9]\d{0,14}$/.test(id)) {
    const place = { name, id: Number(id), part: jobParts.find((known) => known === part) ?? 'gate' } as const
    const known = priceSheets.find((one) => one === sheet)
    return place.part === 'price' && known ? { ...place, sheet: known } : place
  }
  return { name: 'jobs' }
}

export function addressOf(place: Place): string {
  if (place.name === 'job') return `#/job/${place.id}/${place.part}${place.sheet ? `/${place.sheet}` : ''}`
  return place.name === 'prices' && place.part ? `#/prices/${place.part}` : `#/${place.name}`
}

export const usePlaceStore = defineStore('place', () => {
  const place = ref<Place>(placeAt(window.location.hash))
  window.addEventListener('hashchange', () => (place.value = placeAt(window.location.hash)))

  const go = (to: Place) => {
    place.value = to
    if (window.location.hash !== addressOf(to)) window.location.hash = addressOf(to)
  }
  return { place, go }
})
