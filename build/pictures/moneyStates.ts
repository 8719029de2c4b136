import type { Page } from '@playwright/test'
import { entry, type State } from './state.ts'

/** A place by its address, as a kept link would open it. */
const at =
  (address: string) =>
  async (page: Page): Promise<void> => {
    await page.goto(`${new URL(page.url()).origin}/#/${address}`)
    await page.waitForTimeout(900)
  }

/** The job in the sample that is quoted, and the one whose quotation was accepted, by a word of what they are or its number. */
const jobPrice = (words: string, sheet: string) => async (page: Page) => {
  await at('jobs/all')(page)
  await page.getByLabel('Search the jobs').fill(words)
  await page.waitForTimeout(400)
  await page.getByRole('row', { name: words }).first().locator('a.line').click()
  await page.getByRole('link', { name: 'Price', exact: true }).click()
  await page.getByRole('link', { name: sheet, exact: true }).click()
  await page.waitForTimeout(900)
}

/** The price book, what a rise does, a job's price, its quotations and what it took. */
export const moneyStates: State[] = [
  { name: 'prices-empty', empty: true, open: at('prices') },
  { name: 'prices', open: at('prices') },
  { name: 'prices-merchants-list', open: at('prices/list') },
  { name: 'prices-when-changed', open: at('prices/rises') },
  {
    name: 'prices-list-with-tax',
    open: async (page) => {
      await at('prices/list')(page)
      const text =
        'Code;Description;Per;Price inc VAT\n;Stainless screw 5 × 50;200;14.28\n;Oak post;ea;40.00\n'
      await page.setInputFiles('input[type="file"]', {
        ...{ name: 'spring list.csv', mimeType: 'text/csv' },
        buffer: Buffer.from(text),
      })
      await entry(page, 'list.supplier').click()
      await page.getByRole('option', { name: /Ironmongers/ }).click()
      await page.locator('.outcome').waitFor()
    },
  },
  {
    name: 'prices-put-up',
    open: async (page) => {
      await at('prices')(page)
      await page.getByRole('button', { name: 'Put prices up' }).click()
      await page.waitForTimeout(300)
    },
  },
  { name: 'price-estimate', open: jobPrice('Cellar hatch', 'Estimate') },
  { name: 'price-side-by-side', open: jobPrice('Cellar hatch', 'Side by side') },
  { name: 'price-quotations', open: jobPrice('Cellar hatch', 'Quotations') },
  { name: 'price-what-it-took', open: jobPrice('Cellar hatch', 'What it took') },
  { name: 'price-nothing-to-price', open: jobPrice('S-016', 'Estimate') },
  { name: 'estimates-stood', open: at('estimates') },
]
