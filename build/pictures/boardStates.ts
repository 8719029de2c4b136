import type { Page } from '@playwright/test'
import { ask, long, startJob, type State } from './state.ts'

const settled = (page: Page): Promise<void> => page.waitForTimeout(400)

const toSheet = (page: Page, name: string) =>
  page.getByRole('navigation', { name: 'The job book' }).getByRole('link', { name }).click()

const stages = ['enquiry', 'surveyed', 'designed', 'quoted', 'ordered', 'making', 'hung']

/** Jobs enough that columns and lists run on. */
async function manyJobs(page: Page, count: number): Promise<void> {
  for (let n = 0; n < count; n += 1) {
    const day = new Date(Date.now() + ((n % 40) - 9) * 864e5).toISOString().slice(0, 10)
    const { value } = await ask<{ id: number }>(page, 'jobs.create', {
      ...{ customerName: `Ned Gauge ${n + 1}`, town: n % 3 ? 'Marsh Lane' : 'Nether Test', phone: '' },
      ...{ title: 'Side gate', due: n % 5 ? day : null },
    })
    const stage = stages[n % 7]
    await ask(page, 'jobs.change', { id: value.id, changes: [{ path: 'stage', value: stage }] })
  }
  await page.reload()
}

/** An answer of the book that failed. */
const failed = {
  ok: false,
  problems: [
    { code: 'locked', field: '', message: 'The job book is being written in by another window. Try again.' },
  ],
}

/** The work in hand, what can be done with a card, and a year of the book. */
export const boardStates: State[] = [
  { name: 'board-empty', empty: true, open: (page) => page.getByText('The book is empty').waitFor() },
  { name: 'board', open: settled },
  {
    name: 'board-by-day',
    open: async (page) => {
      await page.getByRole('button', { name: 'By day promised' }).click()
      await settled(page)
    },
  },
  {
    name: 'board-menu',
    open: async (page) => {
      await page.locator('[data-column="designed"] .move').first().click()
      await settled(page)
    },
  },
  {
    name: 'board-moved',
    open: async (page) => {
      await page.locator('[data-column="surveyed"] .move').last().click()
      await page.getByRole('button', { name: 'Move to Designed' }).click()
      await page.locator('[data-moved]').waitFor()
      await settled(page)
    },
  },
  {
    name: 'board-trouble',
    open: async (page) => {
      await page.route('**/request/jobs.board', (route) => route.fulfill({ json: failed }))
      await page.reload()
      await page.getByRole('button', { name: 'Try again' }).waitFor()
    },
  },
  {
    name: 'list-found',
    open: async (page) => {
      await page.getByLabel('Search the jobs').fill('side')
      await settled(page)
    },
  },
  {
    name: 'list-in-the-notes',
    open: async (page) => {
      await page.getByLabel('Search the jobs').fill('wants')
      await page.locator('[data-piece]').first().waitFor()
      await settled(page)
    },
  },
  {
    name: 'list-filtered',
    open: async (page) => {
      await toSheet(page, 'Every job')
      await page.getByRole('button', { name: 'Quoted', exact: true }).click()
      await page.getByLabel('Papers', { exact: true }).selectOption('yes')
      await settled(page)
    },
  },
  {
    name: 'year-empty',
    empty: true,
    open: async (page) => {
      await toSheet(page, 'The year')
      await page.getByText('Nothing stands in the book').waitFor()
    },
  },
  {
    name: 'year',
    open: async (page) => {
      await toSheet(page, 'The year')
      await page.getByRole('table').first().waitFor()
      await settled(page)
    },
  },
  {
    name: 'board-long-names',
    open: async (page) => {
      await startJob(page, long)
      await page.getByRole('link', { name: 'Jobs', exact: true }).click()
      await settled(page)
    },
  },
]

/** The board with more in hand than anybody can hold: it leaves a book so full that it is taken last. */
export const fullBoardStates: State[] = [
  {
    name: 'board-full',
    open: async (page) => {
      if ((await page.getByText('Ned Gauge').count()) === 0) await manyJobs(page, 210)
      await settled(page)
    },
  },
]
