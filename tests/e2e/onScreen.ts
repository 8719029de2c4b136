import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Browser, BrowserContext, Locator, Page } from '@playwright/test'
import { hosted, type Hosted } from '../../build/hosted.ts'
import { seeded } from '../faults/seeded.ts'
import { startChromium } from '../../build/chromium.ts'

/** A book in a folder of its own, its host, and a browser beside it: what a person at a screen has. */
export type Bench = {
  book: string
  host: () => Hosted
  window: (size?: { width: number; height: number }) => Promise<Page>
  /** A window on a book that may not open: it waits for no list of jobs. */
  bareWindow: () => Promise<Page>
  restart: (meanwhile?: () => void) => Promise<void>
  clear: () => Promise<void>
}

/** Makes each answer of the host late by 0 to 700 ms, the same in every run, as on a machine busy with other things. */
async function answeredLate(context: BrowserContext): Promise<void> {
  const chance = seeded(20261126)
  await context.route('**/request/**', async (route) => {
    const late = chance.below(5) === 0 ? 700 : chance.below(180)
    await new Promise((go) => setTimeout(go, late))
    await route.continue().catch(() => undefined)
  })
}

/** Starts a bench on a fresh book; empty: without the sample jobs. Everything is thrown away by `clear`. */
export async function bench({ empty = true }: { empty?: boolean } = {}): Promise<Bench> {
  const folder = mkdtempSync(join(tmpdir(), 'bracework-screen-'))
  const book = join(folder, 'workshop.book')
  let host = await hosted(book, { empty })
  const browser: Browser = await startChromium()
  let windows: BrowserContext[] = []
  const bareWindow = async (size = { width: 1093, height: 614 }): Promise<Page> => {
    const context = await browser.newContext({ viewport: size, acceptDownloads: true })
    windows.push(context)
    if (process.env['BRACEWORK_LATE'] === '1') await answeredLate(context)
    const page = await context.newPage()
    await page.goto(host.address)
    return page
  }
  return {
    book,
    host: () => host,
    bareWindow,
    window: async (size) => {
      const page = await bareWindow(size)
      await page.getByRole('link', { name: 'Jobs', exact: true }).waitFor()
      return page
    },
    restart: async (meanwhile = () => {}) => {
      await Promise.all(windows.map((context) => context.close()))
      windows = []
      await host.stop()
      meanwhile()
      host = await hosted(book, { empty })
    },
    clear: async () => {
      await browser.close()
      await host.stop()
      rmSync(folder, { recursive: true, force: true })
    },
  }
}

/** An entry of the screen by its path: 'size.width', 'boards.gap', 'notes'. */
export const entry = (page: Page, field: string): Locator => page.locator(`[data-field="${field}"]`)

/** Starts a job by its form, leaving the gate open. */
export async function startJob(page: Page, name: string, town = ''): Promise<void> {
  await page.goto(`${new URL(page.url()).origin}/#/jobs`)
  await page.getByRole('button', { name: 'Start a new job' }).click()
  await page.getByLabel('Customer', { exact: true }).fill(name)
  await page.getByLabel('Town').fill(town)
  await page.getByRole('button', { name: 'Start the job' }).click()
  await entry(page, 'size.width').waitFor()
}

/** Waits until the top of the screen says that everything is kept. */
export const kept = (page: Page): Promise<void> =>
  page
    .waitForFunction(() => /^kept /.test(document.querySelector('[data-kept]')?.textContent ?? ''))
    .then(() => undefined)

/** Types both sizes of the leaf as they were given, and waits for the drawing. */
export async function giveSizes(page: Page, width: string, height: string): Promise<void> {
  await entry(page, 'size.width').fill(width)
  await entry(page, 'size.height').fill(height)
  await page.locator('[data-view="large"] svg').waitFor()
}
