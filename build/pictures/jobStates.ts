import type { Page } from '@playwright/test'
import { entry, long, startJob, type State } from './state.ts'

async function toList(page: Page): Promise<void> {
  await page.getByRole('link', { name: 'Jobs', exact: true }).click()
  await page.getByRole('link', { name: 'Every job' }).click()
  await page.waitForTimeout(400)
}

/** The job book, and one job's customer. */
export const jobStates: State[] = [
  {
    name: 'jobs-empty',
    empty: true,
    open: async (page) => {
      await toList(page)
      await page.getByText('The book is empty').waitFor()
    },
  },
  { name: 'jobs', open: toList },
  {
    name: 'jobs-none-found',
    open: async (page) => {
      await page.getByLabel('Search the jobs').fill('nobody of that name')
      await page.getByText('No job like that').waitFor()
    },
  },
  {
    name: 'jobs-new',
    open: async (page) => {
      await page.getByRole('button', { name: 'Start a new job' }).click()
      await page.getByLabel('Customer', { exact: true }).fill('Be')
      await page.getByLabel('Promised for').fill('in 2 weeks')
      await page.waitForTimeout(300)
    },
  },
  {
    name: 'jobs-long-names',
    open: async (page) => {
      await startJob(page, long)
      await toList(page)
    },
  },
  {
    name: 'customer',
    open: async (page) => {
      await startJob(page, long)
      await page.getByRole('link', { name: 'Customer', exact: true }).click()
      await entry(page, 'title').waitFor()
    },
  },
]
