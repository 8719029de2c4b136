import type { Page } from '@playwright/test'
import { ask, entry, gateOf, type State } from './state.ts'

/** A grip of the drawing by the entry that it moves. */
const grip = (page: Page, field: string) => page.locator(`.grip[data-hold="${field}"]`)

/** A plain gate with its hinges proposed. */
async function hingedGate(page: Page): Promise<void> {
  await gateOf(page, '985', '1830')
  await page.locator('[data-view="large"] svg').waitFor()
}

async function drag(page: Page, field: string, by: { x: number; y: number }): Promise<void> {
  const box = await grip(page, field).boundingBox()
  if (!box) throw new Error(`no grip for ${field}`)
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2]
  await page.mouse.move(x, y)
  await page.mouse.down()
  await page.mouse.move(x + by.x / 2, y + by.y / 2)
  await page.mouse.move(x + by.x, y + by.y, { steps: 6 })
  await page.waitForTimeout(400)
}

/** The gate under the hand: a size written on the drawing, a part moved, one that goes no further. */
export const handStates: State[] = [
  {
    name: 'hand-size',
    open: async (page) => {
      await hingedGate(page)
      await page.locator('.spot[data-entry="size.width"]').first().click()
      await page.keyboard.type('38 7/8"')
    },
  },
  {
    name: 'hand-size-refused',
    open: async (page) => {
      await hingedGate(page)
      await page.locator('.spot[data-entry="ledges.heights.0"]').first().click()
      await page.keyboard.type('1700')
      await page.keyboard.press('Enter')
    },
  },
  {
    name: 'hand-size-asked',
    open: async (page) => {
      await hingedGate(page)
      await page.locator('.spot[data-entry="size.height"]').first().click()
      await page.keyboard.type('1,830')
    },
  },
  {
    name: 'hand-worked',
    open: async (page) => {
      await hingedGate(page)
      await page.locator('.told button').first().click()
      await page.locator('.figure-working').waitFor()
    },
  },
  {
    name: 'hand-moving',
    open: async (page) => {
      await hingedGate(page)
      await drag(page, 'ledges.heights.1', { x: 0, y: -30 })
    },
  },
  {
    name: 'hand-no-further',
    open: async (page) => {
      await hingedGate(page)
      await drag(page, 'ledges.heights.1', { x: 0, y: -170 })
    },
  },
  {
    name: 'hand-moved',
    open: async (page) => {
      await hingedGate(page)
      await drag(page, 'ledges.heights.0', { x: 0, y: -20 })
      await page.mouse.up()
      await page.waitForTimeout(500)
    },
  },
  {
    name: 'hand-focused',
    open: async (page) => {
      await hingedGate(page)
      await grip(page, 'braces.footSetback').focus()
      await page.keyboard.press('ArrowRight')
      await page.waitForTimeout(300)
    },
  },
  {
    name: 'hand-inches',
    open: async (page) => {
      await hingedGate(page)
      await page.getByText('inches', { exact: true }).first().click()
      await page.waitForTimeout(400)
      await drag(page, 'ledges.heights.2', { x: 0, y: 20 })
      await entry(page, 'size.width').waitFor()
    },
  },
]

/** Keeps the gate that is open as a usual one. */
async function keepAs(page: Page, name: string): Promise<void> {
  const called = page.getByLabel('Keep this gate as')
  if (!(await called.isVisible())) await page.getByRole('button', { name: 'Usual gates' }).click()
  await called.fill(name)
  await page.getByRole('button', { name: 'Keep this gate' }).click()
  await page.waitForTimeout(300)
}

/** The two usual gates that the pictures share: kept once, whichever picture comes first. */
async function usualGates(page: Page): Promise<void> {
  const { value } = await ask<unknown[]>(page, 'usual.list', {})
  if (value.length > 0) return
  await hingedGate(page)
  await keepAs(page, 'Paddock gate')
  await keepAs(page, 'The churchyard’s wide one, with the long name that its warden gave it years ago')
}

/** Usual gates, and two gates beside each other. The first is taken before any has been kept. */
export const besideStates: State[] = [
  {
    name: 'usual-none',
    open: async (page) => {
      await hingedGate(page)
      await page.getByRole('button', { name: 'Usual gates' }).click()
    },
  },
  {
    name: 'usual',
    open: async (page) => {
      await usualGates(page)
      await hingedGate(page)
      await page.getByRole('button', { name: 'Usual gates' }).click()
    },
  },
  {
    name: 'usual-start',
    open: async (page) => {
      await usualGates(page)
      await page.getByRole('link', { name: 'Jobs', exact: true }).click()
      await page.getByRole('button', { name: 'Start a new job' }).click()
      await page.getByLabel('Customer', { exact: true }).fill('Silas Quirk')
      await page.getByLabel('Start from').click()
    },
  },
  {
    name: 'beside-pick',
    open: async (page) => {
      await usualGates(page)
      await hingedGate(page)
      await page.getByRole('button', { name: 'Side by side' }).click()
      await page.getByLabel('Find another job').fill('gate')
      await page.waitForTimeout(400)
    },
  },
  {
    name: 'beside',
    open: async (page) => {
      await usualGates(page)
      await gateOf(page, '1100', '1500')
      await page.getByRole('button', { name: 'Side by side' }).click()
      await page.getByRole('button', { name: 'Paddock gate' }).click()
      await page.waitForTimeout(400)
    },
  },
]
