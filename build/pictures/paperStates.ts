import type { Page } from '@playwright/test'
import { entry, gateOf, startJob, type State } from './state.ts'

async function issued(page: Page): Promise<void> {
  await gateOf(page, '985', '1830')
  await page.getByRole('link', { name: 'Papers' }).click()
  await page.getByRole('button', { name: 'Issue card 1' }).click()
  await page.getByRole('button', { name: 'Issue card 2' }).waitFor()
}

/** The papers of a job. */
export const paperStates: State[] = [
  { name: 'papers', open: issued },
  {
    name: 'papers-uncovered',
    open: async (page) => {
      await startJob(page, { name: '門屋 太郎', town: 'Lower Rebate', title: 'Side gate' })
      await entry(page, 'size.width').fill('985')
      await entry(page, 'size.height').fill('1830')
      await page.waitForTimeout(500)
      await page.getByRole('link', { name: 'Papers' }).click()
      await page.getByText('can’t be printed').first().waitFor()
    },
  },
  {
    name: 'papers-labels',
    open: async (page) => {
      await gateOf(page, '985', '1830')
      await page.getByRole('link', { name: 'Papers' }).click()
      await page.getByRole('button', { name: 'Show the part labels' }).click()
      await page.locator('canvas[data-painted]').waitFor()
      await page.getByRole('button', { name: 'Show the day list' }).scrollIntoViewIfNeeded()
    },
  },
  {
    name: 'papers-none',
    open: async (page) => {
      await gateOf(page, '985', '1830')
      await page.getByRole('link', { name: 'Papers' }).click()
      await page.getByText('No card issued yet').waitFor()
    },
  },
  {
    name: 'papers-refused',
    open: async (page) => {
      await gateOf(page, '60', '1830')
      await page.getByRole('link', { name: 'Papers' }).click()
      await page.getByRole('button', { name: 'Issue card 1' }).click()
      await page.getByText('The card can’t be issued yet.').waitFor()
    },
  },
  {
    name: 'papers-compared',
    open: async (page) => {
      await issued(page)
      await page.getByRole('link', { name: 'Gate' }).click()
      await entry(page, 'size.height').fill('6\' 2"')
      await page.waitForTimeout(900)
      await page.getByRole('link', { name: 'Papers' }).click()
      await page.getByRole('button', { name: 'Compare card 1' }).click()
      await page.getByRole('table', { name: 'What changed' }).waitFor()
    },
  },
  {
    name: 'preview-draft',
    open: async (page) => {
      await gateOf(page, '985', '1830')
      await page.getByRole('link', { name: 'Papers' }).click()
      await page.getByRole('button', { name: 'Look at it first' }).click()
      await page.locator('canvas[data-painted]').waitFor()
    },
  },
  {
    name: 'preview-width',
    open: async (page) => {
      await issued(page)
      await page.locator('canvas[data-painted]').waitFor()
      await page.getByText('Page width').click()
      await page.getByRole('textbox', { name: 'Pages' }).fill('2-3')
      await page.waitForTimeout(1200)
    },
  },
  {
    name: 'preview-no-such-page',
    open: async (page) => {
      await issued(page)
      await page.locator('canvas[data-painted]').waitFor()
      await page.getByRole('textbox', { name: 'Pages' }).fill('1, 9')
      await page.getByText('There is no page 9').waitFor()
    },
  },
  {
    name: 'pictures-face',
    open: async (page) => {
      await gateOf(page, '985', '1830')
      await page.getByRole('link', { name: 'Papers' }).click()
      await page.getByRole('button', { name: 'Show the picture' }).click()
      await page.locator('canvas[data-picture]').waitFor()
    },
  },
  {
    name: 'pictures-plain',
    open: async (page) => {
      await gateOf(page, '985', '1830')
      await page.getByRole('link', { name: 'Papers' }).click()
      await page.getByRole('checkbox', { name: 'Back', exact: true }).check()
      await page.getByRole('checkbox', { name: 'Layers apart', exact: true }).check()
      await page.getByText('Without', { exact: true }).click()
      await page.getByRole('button', { name: 'Show the picture' }).click()
      await page.locator('canvas[data-picture]').waitFor()
    },
  },
  {
    name: 'pictures-none',
    open: async (page) => {
      await gateOf(page, '985', '1830')
      await page.getByRole('link', { name: 'Papers' }).click()
      await page.getByRole('button', { name: 'Show the picture' }).click()
      await page.getByRole('checkbox', { name: 'Face', exact: true }).uncheck()
      await page.getByText('Choose at least one view.').first().waitFor()
    },
  },
]
