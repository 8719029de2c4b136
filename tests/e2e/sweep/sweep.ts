import AxeBuilder from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { looks, wears, type Worn } from '../../../build/pictures/looks.ts'
import { cutOff, runsOff, smallControls, weakFigures, type Faults } from './measures.ts'

/** The window on the least laptop, that at 125 % and at 200 % of zoom, and a large screen. */
const laptop = { width: 1093, height: 614 }
const zooms = [
  { name: 'at 125 %', size: { width: 874, height: 491 } },
  { name: 'at 200 %', size: { width: 547, height: 307 } },
]
const usual: Worn = { name: 'light', colorScheme: 'light' }
const fingers: Worn = { name: 'fingers', colorScheme: 'light', hand: 'fingers' }
const largest: Worn = { name: 'largest', colorScheme: 'light', letters: 22 }

/** All that a reader of screens would stumble over; after the first look only colours can have changed. */
async function stumbles(page: Page, coloursAlone: boolean): Promise<Faults> {
  const reader = new AxeBuilder({ page }).exclude('iframe')
  if (coloursAlone) reader.withRules(['color-contrast'])
  const { violations } = await reader.analyze()
  return violations.map(
    ({ id, nodes }) =>
      `${id}: ${nodes
        .slice(0, 3)
        .map((node) => node.html.slice(0, 140))
        .join(' | ')}`,
  )
}

const settle = async (page: Page, look: Worn, size = laptop): Promise<void> => {
  await wears(page, look)
  await page.setViewportSize(size)
  await page.waitForTimeout(120)
}

/** Everything wrong with the look of a page that stands open, in every look and at every zoom, a line a fault. */
export async function sweep(page: Page, { colours = true } = {}): Promise<Faults> {
  const faults: Faults = []
  const told = (where: string, found: Faults) => faults.push(...found.map((fault) => `${where}: ${fault}`))
  for (const look of colours ? looks.slice(0, 5) : [usual]) {
    await settle(page, look)
    told(look.name, await stumbles(page, look.name !== 'light'))
    told(look.name, await weakFigures(page))
  }
  await settle(page, usual)
  told('laptop', [...(await runsOff(page)), ...(await cutOff(page)), ...(await smallControls(page, 32))])
  for (const { name, size } of zooms) {
    await settle(page, usual, size)
    told(name, [...(await runsOff(page)), ...(await cutOff(page)), ...(await smallControls(page, 32))])
  }
  await settle(page, largest)
  told('largest', [...(await runsOff(page)), ...(await cutOff(page))])
  await settle(page, fingers)
  told('fingers', [...(await runsOff(page)), ...(await cutOff(page)), ...(await smallControls(page, 44))])
  return faults
}
