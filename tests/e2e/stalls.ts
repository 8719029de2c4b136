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
