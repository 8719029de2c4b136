import type { Page } from '@playwright/test'

/** Notes from now on each stretch that the window is held up for over 50 ms at once, as the browser itself reports those. */
export const watchStalls = (page: Page): Promise<void> =>
  page.evaluate(() => {
    const found: number[] = []
    new PerformanceObserver((list) => list.getEntries().forEach((task) => found.push(task.duration))).observe(
      {
        type: 'longtask',
      },
    )
    Object.assign(window, { longTasks: found })
  })

/** The longest of them, ms; 0 where there was none. Throws where they weren't watched. */
export async function longestStall(page: Page): Promise<number> {
  const found = await page.evaluate(() =>
    'longTasks' in window && Array.isArray(window.longTasks) ? window.longTasks.map(Number) : null,
  )
  if (!found) throw new Error('nothing was watched')
  return Math.max(0, ...found)
}

/** Frames that a screen of 60 a second draws in a fifth of one: counted so, a machine busy with other things doesn't make it longer. */
export const fifthOfASecond = 12

/**
 * The share of long work that the window may be held up for at once. Work done in one piece holds it up nearly whole; how many milliseconds it is on
 * a quiet machine is shown by the benches `window-stall` and `buy-stop`.
 */
export const smallShare = 0.1

/** The share of each go, until one is small, six at most: whatever else the machine does only ever adds to it. */
export async function sharesOf(once: (go: number) => Promise<number>): Promise<number[]> {
  const shares: number[] = []
  while (shares.length < 6 && !shares.some((share) => share <= smallShare))
    shares.push(await once(shares.length))
  return shares
}
