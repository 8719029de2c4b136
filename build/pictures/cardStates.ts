import type { Page } from '@playwright/test'
import { entry, gateOf, type State } from './state.ts'

const cards = async (page: Page): Promise<void> => {
  await page.goto(`${new URL(page.url()).origin}/#/cards`)
  await page.getByRole('button', { name: /^Next week/ }).click()
}
/** A job promised today; width 60 can't be made. */
async function promised(page: Page, width: string): Promise<void> {
  await gateOf(page, width, '1830')
  await page.getByRole('link', { name: 'Customer', exact: true }).click()
  await entry(page, 'due').fill('today')
  await entry(page, 'due').press('Tab')
  await page.waitForTimeout(900)
}

/** The cards of the week, printed together. */
export const cardStates: State[] = [
  { name: 'cards-choosing', open: cards },
  {
    name: 'cards-stuck',
    open: async (page) => {
      await promised(page, '60')
      await promised(page, '985')
      await cards(page)
      await page.getByText('Issued now').click()
    },
  },
  {
    name: 'cards-none',
    empty: true,
    open: async (page) => {
      await cards(page)
      await page.getByText('No job is promised then.').waitFor()
    },
  },
  {
    name: 'cards-making',
    open: async (page) => {
      await promised(page, '985')
      await cards(page)
      await page.route('**/request/papers.gather', () => undefined)
      await page.getByRole('button', { name: /^Make/ }).click()
      await page.getByText(/putting them together/).waitFor()
    },
  },
  {
    name: 'cards-stopped',
    open: async (page) => {
      await promised(page, '985')
      await cards(page)
      await page.route('**/request/papers.gather', () => undefined)
      await page.getByRole('button', { name: /^Make/ }).click()
      await page.getByRole('button', { name: 'Stop' }).click()
      await page.getByText(/^Stopped/).waitFor()
    },
  },
  {
    name: 'cards-made',
    open: async (page) => {
      await promised(page, '60')
      await promised(page, '985')
      await cards(page)
      await page.getByRole('button', { name: /^Make/ }).click()
      await page.locator('canvas[data-painted]').waitFor()
    },
  },
]
