import { defineStore } from 'pinia'
import { ref } from 'vue'
import { programVersion } from '../../shared/version.ts'
import { placeAt } from './place.ts'

/** A fault of the program as it may be told to somebody who helps: what was asked and the log's mark, nothing of the book. */
export type Fault = { mark: string; asked: string; at: string }

/** The event by which the carrier tells of a fault, wherever it was asked from. */
export const faultTold = 'bracework:fault'

/** What of a machine may be told: no part of a browser's long name but the kinds and numbers that matter. */
const browserOf = (agent: string): string =>
  agent.match(/(Electron|Edg|Chrome|Firefox|Version)\/[\d.]+/g)?.join(' ') ?? 'another browser'

/** The text that "Copy details" puts on the clipboard. The place is told by its kind, without a job's number. */
export const detailsOf = ({ mark, asked, at }: Fault): string => {
  const place = placeAt(window.location.hash)
  return [
    `Bracework ${programVersion}`,
    `fault ${mark}`,
    `asked ${asked}`,
    `place ${'part' in place && place.part ? `${place.name}, ${place.part}` : place.name}`,
    `time ${at}`,
    `in ${window.bracework ? 'its window' : 'a browser'}: ${browserOf(navigator.userAgent)}`,
  ].join('\n')
}

/** The last fault of the program, until it is put away. */
export const useFaultsStore = defineStore('faults', () => {
  const last = ref<Fault | null>(null)
  window.addEventListener(faultTold, (event) => {
    if (event instanceof CustomEvent) last.value = event.detail as Fault
  })
  return { last }
})
