import { setImmediate as turn } from 'node:timers/promises'
import type { WorkInHand } from '../../shared/openBook/requests.ts'

/** How long one piece of a long work may keep the window's own work waiting, ms. */
const mostAtOnce = 8

/** The person asked for the work to stop. */
export class Stopped extends Error {}

/** A long work as it goes on: where it stands, whether it is to stop, and `breathe`, which lets other requests in between. */
export type Pace = {
  work: WorkInHand
  stop: () => void
  /** Call it every few ms of work. Throws Stopped when the person asked for that. */
  breathe: () => Promise<void>
}

/** Begins a long work. */
export function beginPace(what: WorkInHand['what']): Pace {
  const state = { stopped: false, until: performance.now() + mostAtOnce }
  const work: WorkInHand = { what, done: 0, of: 0 }
  return {
    work,
    stop: () => void (state.stopped = true),
    breathe: async () => {
      if (performance.now() >= state.until) {
        await turn()
        state.until = performance.now() + mostAtOnce
      }
      if (state.stopped) throw new Stopped()
    },
  }
}
