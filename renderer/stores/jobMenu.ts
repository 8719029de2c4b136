import { defineStore } from 'pinia'
import { shallowRef } from 'vue'
import type { JobRow } from '../../shared/job/job.ts'

/** What can be done with one job of the list or the board, opened at the button that was pressed. One menu serves all of them. */
export const useJobMenuStore = defineStore('jobMenu', () => {
  const row = shallowRef<JobRow | null>(null)
  const opener = shallowRef<HTMLElement | null>(null)

  function open(job: JobRow, event: Event) {
    const pressed = event.currentTarget
    if (!(pressed instanceof HTMLElement)) return
    if (opener.value === pressed && row.value) return close()
    opener.value = pressed
    row.value = job
  }
  function close() {
    row.value = null
  }
  return { row, opener, open, close }
})
