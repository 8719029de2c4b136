import type { Page } from '@playwright/test'

/** One picture to take: its name, whether the book starts without sample jobs, whether nobody has begun with it, and how the screen comes to stand so. */
export type State = { name: string; empty?: boolean; first?: boolean; open: (page: Page) => Promise<void> }

/** Asks the book for one thing, as the window does. */
export const ask = <T>(page: Page, name: string, body: object): Promise<{ value: T }> =>
  page.evaluate(
    async ([asked, sent]) => {
      const headers = { 'content-type': 'application/json' }
      return (await fetch(`/request/${asked}`, { method: 'POST', headers, body: sent ?? '' })).json()
    },
    [name, JSON.stringify(body)] as const,
  )

/** An entry of the screen by its path: 'size.width', 'boards.gap'. */
export const entry = (page: Page, field: string) => page.locator(`[data-field="${field}"]`)

/** Starts a job by its form, as the person does, leaving the gate open. */
export async function startJob(
  page: Page,
  given: { name: string; town?: string; title?: string },
): Promise<void> {
  await page.getByRole('link', { name: 'Jobs', exact: true }).click()
  await page.getByRole('button', { name: 'Start a new job' }).click()
  await page.getByLabel('Customer', { exact: true }).fill(given.name)
  await page.getByLabel('Town').fill(given.town ?? '')
  await page.getByLabel('What is it?').fill(given.title ?? '')
  await page.getByRole('button', { name: 'Start the job' }).click()
  await entry(page, 'size.width').waitFor()
}

/** A job with a plain gate of that width and height, in whatever words. */
export async function gateOf(page: Page, width: string, height: string): Promise<void> {
  await startJob(page, {
    name: 'Isolde Hartwhistle',
    town: 'Lower Rebate',
    title: 'Side gate, by the water butt',
  })
  await entry(page, 'size.width').fill(width)
  await entry(page, 'size.height').fill(height)
  await page.waitForTimeout(500)
}

/** The longest names a person is likely to write, an invented customer of a far country among them. */
export const long = {
  name: 'The Worshipful Guardians of the Almshouses of Nether Shaving and Upper Shaving with Little Arris',
  town: 'Saint-Germain-des-Charpentiers-sur-Loire',
  title: 'Portillon du potager, côté rivière, à assortir avec la grande porte cochère de l’entrée principale',
}
