import type { Page } from '@playwright/test'
import { axeFaults } from './axeFaults.ts'

const sideways = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    [document.documentElement, document.body, ...document.querySelectorAll('.scrolls, main, .whole')]
      .filter((box) => box.scrollWidth > box.clientWidth + 1)
      .map((box) => `runs off: ${box.className || box.tagName}: ${box.scrollWidth} in ${box.clientWidth}`),
  )

/** What a screen reader or a weak eye would stumble over (of the serious kind), and what runs off sideways, a line each. */
export async function lookFaults(page: Page, coloursAlone = false): Promise<string[]> {
  const serious = (await axeFaults(page, coloursAlone))
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .map(({ id, where }) => `${id}: ${where.map((html) => html.slice(0, 160)).join(' | ')}`)
  return [...serious, ...(await sideways(page))]
}

/** The same by day and by night, when only colours can have changed. */
export async function faultsInBothLights(page: Page): Promise<string[]> {
  const found: string[] = []
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' })
    // Colours fade from one light to the other.
    await page.waitForTimeout(150)
    const faults = await lookFaults(page, colorScheme === 'dark')
    found.push(...faults.map((fault) => `${colorScheme}: ${fault}`))
  }
  return found
}
