import { defineStore } from 'pinia'
import { ref } from 'vue'

export const jobParts = ['gate', 'papers', 'customer'] as const
export type JobPart = (typeof jobParts)[number]

/** Where in the program a person stands. Each place has an address, so that Back goes back. */
export type Place = { name: 'jobs' } | { name: 'job'; id: number; part: JobPart } | { name: 'workshop' }

/** The place an address names; the job book when it names none. '#/job/12/papers' is job 12's papers. */
export function placeAt(hash: string): Place {
  const [name, id, part] = hash.replace(/^#\/?/, '').split('/')
  if (name === 'workshop') return { name: 'workshop' }
  if (name === 'job' && id && /^[1-9]\d{0,14}$/.test(id))
    return { name: 'job', id: Number(id), part: jobParts.find((known) => known === part) ?? 'gate' }
  return { name: 'jobs' }
}

export const addressOf = (place: Place): string =>
  place.name === 'job' ? `#/job/${place.id}/${place.part}` : `#/${place.name}`

export const usePlaceStore = defineStore('place', () => {
  const place = ref<Place>(placeAt(window.location.hash))
  window.addEventListener('hashchange', () => (place.value = placeAt(window.location.hash)))

  const go = (to: Place) => {
    place.value = to
    if (window.location.hash !== addressOf(to)) window.location.hash = addressOf(to)
  }
  return { place, go }
})
