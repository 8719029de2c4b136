import { defineAsyncComponent, type Component } from 'vue'
import LateFailed from './components/LateFailed.vue'
import LateWait from './components/LateWait.vue'

/** A screen's file, once it is here. */
type Loaded = Promise<{ default: Component }>

/** A screen's file that couldn't be read; the screen's own place says so, and nothing else needs to. */
export class NotFetched extends Error {}

/** How each screen's file is fetched, in the order in which they are likely to be wanted; for `fetchAhead`. */
const fetches: (() => Loaded)[] = []

/** A file that couldn't be read is tried once more by itself; what reads it may only have been busy. */
const tries = 2
const patienceMs = 60

/**
 * A screen whose file is fetched only when the screen is first wanted, so that the job book opens without it. While it is
 * under way a quiet line stands there, and should it fail, a sentence with the way out. Files come from this machine, so
 * neither is seen often. `ahead` false leaves it out of what is fetched beforehand in quiet moments.
 */
export function lateScreen(load: () => Loaded, { ahead = true }: { ahead?: boolean } = {}): Component {
  if (ahead) fetches.push(load)
  return defineAsyncComponent({
    loader: () =>
      load().then(
        ({ default: screen }) => screen,
        (cause: unknown) => {
          throw new NotFetched('a screen’s file couldn’t be read', { cause })
        },
      ),
    delay: patienceMs,
    loadingComponent: LateWait,
    errorComponent: LateFailed,
    onError: (...[, again, fail, attempt]) => {
      if (attempt < tries) setTimeout(again, patienceMs)
      else fail()
    },
  })
}

/** Waits for a moment in which the window has nothing to do. */
const quietMoment = (): Promise<void> =>
  new Promise((done) => {
    if ('requestIdleCallback' in window) window.requestIdleCallback(() => done(), { timeout: 2000 })
    else setTimeout(done, 50)
  })

/**
 * Fetches the screens named so far one after the other in quiet moments, and those that they name in turn, so that a press
 * opens them at once. One that fails is left: it is fetched again, and its failure told, when it is wanted.
 */
export async function fetchAhead(): Promise<void> {
  for (let at = 0; at < fetches.length; at += 1) {
    await quietMoment()
    await fetches[at]?.().catch(() => undefined)
  }
}
