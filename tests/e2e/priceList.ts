import type { Locator, Page } from '@playwright/test'

/** Goes to the place Prices. */
export async function toPrices(page: Page): Promise<void> {
  await page.getByRole('link', { name: 'Prices', exact: true }).click()
  await page.getByLabel('Search the prices').waitFor()
}

/** The line of the price list with these words in it. */
export const rowOf = (page: Page, words: string): Locator =>
  page.locator('.price-grid .room .line').filter({ hasText: words })

/** Its price, as it stands in its field. */
export const priceOf = (page: Page, words: string): Promise<string> =>
  rowOf(page, words).locator('input').inputValue()

/** Puts the previewed prices in force. */
export async function apply(page: Page): Promise<void> {
  await page.locator('[data-apply]').click()
  await page.getByText(/prices? ha(s|ve) changed/).waitFor()
}

export const search = (page: Page, words: string): Promise<void> =>
  page.getByLabel('Search the prices').fill(words)
