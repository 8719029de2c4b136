import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from '@playwright/test'
import { entry, long, startJob, type State } from './state.ts'

const toCarry = async (page: Page): Promise<void> => {
  await page.getByRole('link', { name: 'Workshop', exact: true }).click()
  await page.getByRole('heading', { name: 'Out and in' }).scrollIntoViewIfNeeded()
  await page.locator('.carry').evaluate((part) => part.scrollIntoView({ block: 'start' }))
}

/** Takes the book on the page out, into a folder that is thrown away, and gives where it lies. */
async function takenOut(page: Page): Promise<string> {
  const parent = mkdtempSync(join(tmpdir(), 'bracework-carry-'))
  process.once('exit', () => rmSync(parent, { recursive: true, force: true }))
  await toCarry(page)
  await entry(page, 'carry.out').fill(parent)
  await page.getByRole('button', { name: 'Take everything out' }).click()
  await page.getByText('Taken out:').waitFor()
  return join(parent, readdirSync(parent)[0] ?? '')
}

const lookInto = async (page: Page, folder: string): Promise<void> => {
  await entry(page, 'carry.in').fill(folder)
  await page.getByRole('button', { name: 'Look into it' }).click()
}

const jobBox = 'input[aria-label="A job that was taken out"]'

/** The book and its jobs carried out and in. */
export const openBookStates: State[] = [
  { name: 'carry', open: toCarry },
  {
    name: 'carry-looked',
    open: async (page) => {
      await lookInto(page, await takenOut(page))
      await page.locator('[data-found]').waitFor()
    },
  },
  {
    name: 'carry-wrong',
    open: async (page) => {
      const folder = await takenOut(page)
      for (const name of readdirSync(join(folder, 'jobs', 'S')).slice(0, 4)) {
        const path = join(folder, 'jobs', 'S', name)
        writeFileSync(path, readFileSync(path, 'utf8').replace(/"stage": "\w+"/, '"stage": "lost"'))
      }
      await lookInto(page, folder)
      await page.getByText('It can’t be brought in.').waitFor()
    },
  },
  {
    name: 'carry-job',
    open: async (page) => {
      await startJob(page, long)
      await page.getByRole('link', { name: 'Customer', exact: true }).click()
      const [download] = await Promise.all([
        page.waitForEvent('download'),
        page.getByRole('button', { name: 'Take this job out' }).click(),
      ])
      const text = readFileSync(await download.path(), 'utf8')
      await toCarry(page)
      const buffer = Buffer.from(text)
      await page.locator(jobBox).setInputFiles({ name: 'x.gate-job', mimeType: 'text/plain', buffer })
      await page.locator('[data-found-job]').waitFor()
      await page.locator('.carry').evaluate((part) => part.scrollIntoView({ block: 'start' }))
    },
  },
  {
    name: 'customer-take-out',
    open: async (page) => {
      await startJob(page, long)
      await page.getByRole('link', { name: 'Customer', exact: true }).click()
      await page.getByRole('button', { name: 'Take this job out' }).click()
      await page.getByText('Taken out as').waitFor()
    },
  },
]
