/** How long the window may be held up by one stretch of work, ms. */
const stretch = 10

/** Lets whatever waits come first: keys, the screen that is to be drawn. */
export const breathe = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0))

/** Runs a work that halts now and then, letting the window come in between as soon as a stretch has taken its time. */
export async function inSteps<T>(work: Generator<void, T>): Promise<T> {
  let began = performance.now()
  for (;;) {
    const step = work.next()
    if (step.done) return step.value
    if (performance.now() - began < stretch) continue
    await breathe()
    began = performance.now()
  }
}
