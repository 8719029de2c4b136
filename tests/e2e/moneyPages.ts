import { createHash } from 'node:crypto'
import { readFile } from 'node:fs/promises'
import type { Page } from '@playwright/test'
import { apply, rowOf, search, toPrices } from './priceList.ts'
import { boardName } from './pricedBook.ts'

export const sheet = (page: Page, name: string) =>
  page.getByRole('navigation', { name: 'Sheets of the price' }).getByRole('link', { name }).click()

export const toPrice = async (page: Page) => {
  await page.getByRole('link', { name: 'Price', exact: true }).click()
  await page.locator('[data-gross]').waitFor()
}

export const toJobsPrice = async (page: Page, customer: string, part = 'Estimate') => {
  await page.getByRole('link', { name: 'Jobs', exact: true }).click()
  await page.locator('a.line').filter({ hasText: customer }).click()
  await page.getByRole('link', { name: 'Price', exact: true }).click()
  await sheet(page, part)
}

export const gross = (page: Page): Promise<string> => page.locator('[data-gross]').first().innerText()
export const inPence = (sum: string): number => Math.round(Number(sum.replace(/[^\d.]/g, '')) * 100)

export const line = (page: Page, id: string) => page.locator(`[data-line="${id}"]`)
export const quotation = (page: Page, revision: number) =>
  page.locator('[data-paper]').filter({ hasText: `Quotation ${revision}` })

/** The hash of the quotation on show, by keeping a copy as the person does. */
export async function copyHash(page: Page): Promise<string> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('link', { name: 'Keep a copy' }).click(),
  ])
  return createHash('sha256')
    .update(await readFile(await download.path()))
    .digest('hex')
}

export async function openedHash(page: Page, revision: number): Promise<string> {
  await page.getByRole('button', { name: `Open quotation ${revision}` }).click()
  await page.getByRole('heading', { name: new RegExp(`quotation ${revision}$`) }).waitFor()
  return copyHash(page)
}

/** Looks at what a rise would do, then lets it count; what the page told before is handed back. */
export async function lookThenApply(page: Page): Promise<string> {
  await page.getByRole('button', { name: 'See what it does' }).click()
  await page.locator('[data-apply]:enabled').waitFor()
  const told = await page.locator('main').innerText()
  await apply(page)
  return told
}

/** The merchant's new list, with one price up: the boards, by the merchant's own code. */
export async function takeList(page: Page, sum: string): Promise<string> {
  await toPrices(page)
  await page.getByRole('button', { name: 'From a merchant’s list' }).click()
  const list = ['Code,Description,Price', `M1,"${boardName}, redwood",${sum}`, 'M2,ledge,4.10'].join('\r\n')
  await page.setInputFiles('input[type="file"]', {
    name: 'autumn list.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from(list),
  })
  await page.getByText(/something in your book/).waitFor()
  return lookThenApply(page)
}

/** Puts the price of the boards up by hand in the price list, as the joiner does. */
export async function boardsTo(page: Page, sum: string): Promise<string> {
  await toPrices(page)
  await search(page, boardName)
  await rowOf(page, boardName).locator('input').fill(sum)
  await page.keyboard.press('Enter')
  return lookThenApply(page)
}
