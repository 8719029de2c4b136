import type { Page } from '@playwright/test'
import { looks, wears, type Worn } from '../../build/pictures/looks.ts'
import { axeFaults } from './axeFaults.ts'
import {
  cutOff,
  runInto,
  runsOff,
  screenGone,
  smallControls,
  weakFigures,
  type Faults,
} from './sweepMeasures.ts'

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
  const faults = await axeFaults(page, coloursAlone)
  return faults.map(
    ({ id, where }) =>
      `${id}: ${where
        .slice(0, 3)
        .map((html) => html.slice(0, 140))
        .join(' | ')}`,
  )
}

const settle = async (page: Page, look: Worn, size = laptop): Promise<void> => {
  await wears(page, look)
  await page.setViewportSize(size)
  await page.waitForTimeout(120)
}

const layout = async (page: Page, least: number): Promise<Faults> => [
  ...(await screenGone(page)),
  ...(await runInto(page)),
  ...(await runsOff(page)),
  ...(await cutOff(page)),
  ...(await smallControls(page, least)),
]

/**
 * Everything wrong with the look of a page that stands open, a line a fault: for a reader of screens and a weak eye in every look,
 * its layout at every zoom, in the largest letters and for fingers. quick: two looks, the greater zoom and fingers alone.
 */
export async function sweep(page: Page, { quick = false, colours = true } = {}): Promise<Faults> {
  const faults: Faults = []
  const told = (where: string, found: Faults) => faults.push(...found.map((fault) => `${where}: ${fault}`))
  const eyes = quick
    ? looks.filter(({ name }) => name === 'light' || name === 'strong-dark')
    : looks.slice(0, 5)
  for (const look of colours ? eyes : []) {
    await settle(page, look)
    told(look.name, await stumbles(page, look.name !== 'light'))
    told(look.name, await weakFigures(page))
  }
  await settle(page, usual)
  told('laptop', await layout(page, 32))
  for (const { name, size } of quick ? zooms.slice(1) : zooms) {
    await settle(page, usual, size)
    told(name, await layout(page, 32))
  }
  if (!quick) {
    await settle(page, largest)
    told('largest', [...(await runInto(page)), ...(await runsOff(page)), ...(await cutOff(page))])
  }
  await settle(page, fingers)
  told('fingers', await layout(page, 44))
  return faults
}
