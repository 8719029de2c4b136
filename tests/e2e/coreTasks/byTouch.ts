import type { Locator, Page } from '@playwright/test'
import { entry } from '../onScreen.ts'
import { first, type Story } from './byKeys.ts'
import type { Finger } from './finger.ts'
import type { CoreTask } from './table.ts'

const button = (page: Page, name: string | RegExp): Locator => page.getByRole('button', { name })
const part = (page: Page, name: string): Locator =>
  page.getByRole('navigation', { name: 'Parts of the job' }).getByRole('link', { name, exact: true })
const card = (page: Page, { name }: Pick<Story, 'name'>): Locator =>
  page.locator('[data-job]').filter({ hasText: name })
const opened = (page: Page, story: Pick<Story, 'name'>): Locator => card(page, story).locator('a.line')

async function newJob({ page, tap, type }: Finger, { name }: Story): Promise<void> {
  await tap(button(page, 'Start a new job'))
  await page.locator('form[aria-label="New job"] input:focus').waitFor()
  await type(name)
  await tap(page.getByLabel('Town'))
  await type('Upper Kerf')
  await tap(page.getByLabel('What is it?'))
  await type('Yard gate')
  await tap(button(page, 'Start the job'))
}

async function survey({ page, tap, type, enter }: Finger, story: Story): Promise<void> {
  await tap(opened(page, story))
  await tap(page.locator('label.word').filter({ hasText: 'the opening' }))
  await tap(entry(page, 'size.widths.0'))
  for (const figure of ['1104', '1101', '1106', '1750', '1746']) {
    await type(figure)
    await enter()
  }
  await type('15')
}

async function changeSize({ page, tap, type, enter }: Finger, { drawn }: Story): Promise<void> {
  await tap(opened(page, { name: drawn }))
  await tap(page.locator('[data-view="large"] [data-entry="size.width"]').first())
  await page.locator('.figure-entry input:focus').waitFor()
  await type('1060')
  await enter()
}

async function price(hand: Finger, story: Story): Promise<void> {
  const { page, type, enter, ask } = hand
  await ask(`add line ${first(story)}`, 'Add a line to the price')
  await page.locator('[data-field="extras.1"]:focus').waitFor()
  await type('Taking the old gate away')
  await enter()
  await type('41.15')
  await ask(`hours ${first(story)}`, 'Hours in the price')
  await page.locator('[data-line^="making."] input:focus').waitFor()
  await type('105')
}

async function quote({ page, tap }: Finger, story: Story): Promise<void> {
  await tap(opened(page, story))
  await tap(part(page, 'Price'))
  await tap(
    page.getByRole('navigation', { name: 'Sheets of the price' }).getByRole('link', { name: 'Quotations' }),
  )
  await tap(button(page, /^Issue quotation/))
}

async function accept({ page, tap, type, ask }: Finger, story: Story): Promise<void> {
  await ask(`accept ${first(story)}`, 'Accept the quotation')
  await tap(entry(page, 'accept.note'))
  await type('Go ahead')
  await tap(button(page, /^Accept at/))
}

async function orderTimber({ page, tap }: Finger, story: Story): Promise<void> {
  await tap(card(page, story).getByRole('link', { name: 'Order the timber' }))
  await page.locator('[data-plan]:enabled').waitFor()
  await tap(page.locator('[data-plan]'))
  await tap(page.locator('[data-place]'))
}

async function issueCard({ page, tap }: Finger, story: Story): Promise<void> {
  await tap(opened(page, story))
  await tap(part(page, 'Papers'))
  await tap(button(page, /^Issue card/))
}

async function reprint({ page, tap, ask }: Finger, story: Story): Promise<void> {
  await ask(`print 1 ${first(story)}`, 'Print card 1')
  await tap(page.locator('[data-lead="print"]'))
}

async function raisePrices({ page, tap, type }: Finger): Promise<void> {
  await tap(page.getByRole('link', { name: 'Prices', exact: true }))
  await tap(button(page, 'Put prices up'))
  await page.locator('[data-field="percent"]:focus').waitFor()
  await type('3.5')
  await tap(button(page, 'See what it does'))
  await page.locator('[data-apply]:enabled').waitFor()
  await tap(page.locator('[data-apply]'))
}

/** The folder stands there from the last time. */
async function backUp({ page, tap, ask }: Finger): Promise<void> {
  await ask('back up', 'Back up the book')
  await page.locator('[data-field="keeping.folder"]:focus').waitFor()
  await tap(button(page, 'Back up now'))
}

async function sameAgain({ page, tap }: Finger, story: Story): Promise<void> {
  await tap(
    card(page, story)
      .first()
      .getByRole('button', { name: /make the same again/ }),
  )
  await tap(page.getByRole('dialog').getByRole('button', { name: 'Make the same again' }))
}

/** Each task by a finger alone, from the opening screen on. */
export const byTouch: Record<CoreTask, (hand: Finger, story: Story) => Promise<void>> = {
  'new job': newJob,
  survey,
  'change a size on the drawing': changeSize,
  price,
  quote,
  accept,
  'order timber': orderTimber,
  'issue a card': issueCard,
  'reprint an old card': reprint,
  'raise prices': raisePrices,
  'back up': backUp,
  'make the same again': sameAgain,
}
