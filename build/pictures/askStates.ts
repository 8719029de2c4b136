import type { Page } from '@playwright/test'
import { entry, gateOf, long, startJob, type State } from './state.ts'

const lately = (page: Page) => page.getByRole('button', { name: 'What was done lately' })
const takeBack = (page: Page) => page.locator('[data-take-back]')

/** A gate with a few things done to it, one of them taken back. */
async function worked(page: Page): Promise<void> {
  await gateOf(page, '985', '1830')
  for (const width of ['990', '1002']) {
    await entry(page, 'size.width').fill(width)
    await entry(page, 'size.width').press('Tab')
    await page.waitForTimeout(700)
  }
  await takeBack(page).click()
  await page.waitForTimeout(500)
}

const answered = (page: Page, name: string, reply: object) =>
  page.route(`**/request/${name}`, (route) => route.fulfill({ json: reply }))

/** What the book would say of its keeping, with some of it otherwise. */
const kept = async (page: Page, otherwise: object): Promise<void> => {
  await page.route('**/request/keeping.state', async (route) => {
    const reply = await (await route.fetch()).json()
    await route.fulfill({ json: { ok: true, value: { ...reply.value, ...otherwise } } })
  })
  await page.reload()
}

const damaged = {
  code: 'damaged',
  message: 'The book’s file is damaged: some of it can’t be read.',
  ways: ['copy', 'salvage', 'fresh', 'again'],
}

/** Two entries that were changed again since, one of a customer with a long name. */
const asks = [
  { deed: 'Width', what: 'width of job 2026-001', theirs: '1002', older: '985' },
  { deed: 'Customer', what: 'customer’s name', theirs: long.name, older: 'Isolde Hartwhistle' },
]
const wide = 'A pair of gates from another list'
const fixed = {
  ...{ id: 9_000_001, name: 'Card 1 issued', at: '2026-05-31T10:20:00Z', jobId: null },
  ...{ fixed: 'An issued card stands as it was printed.', place: { address: 'jobs', field: '' } },
}

/** What is asked before anything is done, and what is told when the book can't be worked in. */
export const askStates: State[] = [
  {
    name: 'undo-list',
    open: async (page) => {
      await worked(page)
      await lately(page).click()
      await page.getByRole('heading', { name: 'What was done lately' }).waitFor()
    },
  },
  {
    name: 'undo-list-nothing',
    open: async (page) => {
      await page.locator('a.line').first().click()
      await lately(page).click()
      await page.getByRole('heading', { name: 'What was done lately' }).waitFor()
    },
  },
  {
    name: 'undo-asked',
    open: async (page) => {
      await worked(page)
      await answered(page, 'undo.back', { ok: true, value: { done: false, asks } })
      await takeBack(page).click()
      await page.getByRole('alertdialog').waitFor()
    },
  },
  {
    name: 'undo-asked-one',
    open: async (page) => {
      await worked(page)
      await answered(page, 'undo.back', { ok: true, value: { done: false, asks: asks.slice(0, 1) } })
      await takeBack(page).click()
      await page.getByRole('alertdialog').waitFor()
    },
  },
  {
    name: 'undo-stands',
    open: async (page) => {
      await worked(page)
      await page.route('**/request/undo.list', async (route) => {
        const reply = await (await route.fetch()).json()
        reply.value.back.unshift(fixed)
        await route.fulfill({ json: reply })
      })
      await takeBack(page).click()
      await page.getByRole('alertdialog').waitFor()
    },
  },
  {
    name: 'undo-refused',
    open: async (page) => {
      await worked(page)
      const problem = { code: 'locked', field: '', message: 'Another window is writing in the job book.' }
      await answered(page, 'undo.back', { ok: false, problems: [problem] })
      await takeBack(page).click()
      await page.getByRole('alertdialog').waitFor()
    },
  },
  { name: 'shut', open: (page) => kept(page, { trouble: damaged }) },
  {
    name: 'shut-again-first',
    open: (page) =>
      kept(page, {
        trouble: { code: 'disk', message: 'The disk the book lies on doesn’t answer.', ways: ['again'] },
      }),
  },
  {
    name: 'kept-outcome',
    open: (page) =>
      kept(page, {
        outcome: {
          what: 'restored',
          sentence: 'The copy of 30 May, 17:40 is open. The book it replaced is kept.',
        },
        fault: 'No copy could be made today: the disk is full.',
        remindDays: 34,
        away: { at: '2026-04-27T09:00:00Z', drive: 'BLUE STICK', folder: '' },
      }),
  },
  {
    name: 'field-choice-open',
    open: async (page) => {
      await startJob(page, { name: wide })
      await page.getByRole('combobox').first().click()
      await page.getByRole('option').first().waitFor()
    },
  },
  {
    name: 'late-screen-failed',
    open: async (page) => {
      await page.route(/assets\/(Prices|prices)[^/]*\.js/, (route) => route.abort())
      await page.reload()
      await page.getByRole('link', { name: 'Prices', exact: true }).click()
      await page.getByRole('alert').first().waitFor()
    },
  },
  {
    name: 'price-accept',
    open: async (page) => {
      await page.getByLabel('Search the jobs').fill('Cellar hatch')
      await page
        .getByRole('row', { name: /Cellar hatch/ })
        .first()
        .locator('a.line')
        .click()
      await page.getByRole('link', { name: 'Price', exact: true }).click()
      await page.getByRole('link', { name: 'Quotations', exact: true }).click()
      await page
        .getByRole('button', { name: /^Accept/ })
        .first()
        .click()
      await page.getByLabel('In what words').waitFor()
    },
  },
]
