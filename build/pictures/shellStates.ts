import type { Page } from '@playwright/test'
import type { State } from './state.ts'

/** An answer of the program that failed, as the book's host would give it. */
const failed = {
  ok: false,
  problems: [
    {
      code: 'unexpected',
      field: '',
      message: 'Something went wrong in the program and nothing was changed.',
      fault: 'K7QXMA',
    },
  ],
}

const failing = async (page: Page): Promise<void> => {
  await page.route('**/request/prices.book', (route) => route.fulfill({ json: failed }))
  await page.getByRole('link', { name: 'Prices', exact: true }).click()
  await page.getByRole('button', { name: 'Copy details' }).click()
}

const onAnotherMachine = async (page: Page): Promise<void> => {
  await page.route('**/request/book.summary', async (route) => {
    const reply = await route.fetch()
    const summary = await reply.json()
    summary.value.folderLies = 'network'
    await route.fulfill({ json: summary })
  })
  await page.reload()
  await page.getByRole('button', { name: 'Leave it there' }).waitFor()
}

/** What is told over whichever screen: a fault of the program with its details, a book that lies on another machine. */
export const shellStates: State[] = [
  { name: 'shell-fault', open: failing },
  { name: 'shell-folder', open: onAnotherMachine },
]
