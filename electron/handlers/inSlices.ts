import { setImmediate as turn } from 'node:timers/promises'

/** How long one piece of a long work may keep the window's own work waiting, ms. */
const mostAtOnce = 8

/**
 * Does a long work a piece at a time, letting the window have its turn between: requests are answered in the window's own process. Each
 * step should take under 10 ms. Other requests come in between, so the work must stand that.
 */
export async function inSlices<T>(work: Generator<void, T>): Promise<T> {
  for (;;) {
    const until = performance.now() + mostAtOnce
    for (;;) {
      const step = work.next()
      if (step.done) return step.value
      if (performance.now() >= until) break
    }
    await turn()
  }
}
