import type { Page } from '@playwright/test'
import { readFile } from 'node:fs/promises'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { opened } from '../papers/paperReading.ts'
import { bench, giveSizes, kept, startJob, type Bench } from './onScreen.ts'

/** The words of the paper on show, by keeping a copy as the person does. */
async function shownWords(page: Page, heading: RegExp): Promise<string> {
  await page.getByRole('heading', { name: heading }).waitFor()
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('link', { name: 'Keep a copy' }).click(),
  ])
  const pdf = await opened(new Uint8Array(await readFile(await download.path())))
  const pages = await Promise.all(
    Array.from({ length: pdf.numPages }, async (_, i) => (await pdf.getPage(i + 1)).getTextContent()),
  )
  return pages.flatMap(({ items }) => items.map((item) => ('str' in item ? item.str : ''))).join(' ')
}

const press = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click()

describe('the sheets beside the card', () => {
  let desk: Bench
  beforeAll(async () => {
    desk = await bench({ empty: false })
  })
  afterAll(() => desk.clear())

  it('come up from the papers screen: care note, labels from the first free one, the day list of two jobs', async () => {
    const page = await desk.window()
    await startJob(page, 'Isolde Hartwhistle')
    await giveSizes(page, '985', '1830')
    await kept(page)
    await page.getByRole('link', { name: 'Papers' }).click()

    await press(page, 'Show the care note')
    expect(await shownWords(page, /care note/)).toContain('985 mm wide')

    await page.getByLabel('First free label').fill('5')
    await press(page, 'Show the part labels')
    const labels = await shownWords(page, /part labels/)
    expect(labels).toContain('board 1')
    expect(labels).toContain('1830')

    const other = page.getByRole('group', { name: 'This job, and with it' }).getByRole('checkbox').first()
    await other.check()
    await press(page, 'Show the day list')
    const list = await shownWords(page, /day list/)
    expect(list).toContain('Isolde Hartwhistle')
    expect(list).toContain('In all')
    await page.close()
  })

  it('come up at full size, those that the gate wants, made good for the workshop’s printer', async () => {
    const page = await desk.window()
    await page.getByRole('link', { name: 'Workshop' }).click()
    const across = page.getByLabel('Line across')
    await across.fill('96')
    await page.getByText('a number from 97 to 103 mm is wanted').waitFor()
    await across.fill('99.6')
    await page.getByLabel('Line along').fill('100.2')
    await page.getByRole('button', { name: 'Set both to 100 mm' }).waitFor()
    await startJob(page, 'Perdita Oakapple')
    await giveSizes(page, '985', '1830')
    await kept(page)
    await page.getByRole('link', { name: 'Papers' }).click()
    await page.getByText('Shaped top: The top is level.').waitFor()
    await page.getByText('Notch: The brace’s ends are flush.').waitFor()
    await page.getByRole('checkbox', { name: 'Bevels' }).uncheck()
    await press(page, 'Show the full-size sheets')
    const sheets = await shownWords(page, /full-size sheets/)
    expect(sheets).toContain('Setting-out rod')
    expect(sheets).toContain('99.6 across')
    expect(sheets).not.toContain('Bevel')
    await page.close()
  })

  it('say what is in the way of them where a size is missing', async () => {
    const page = await desk.window()
    await startJob(page, 'Leopold Scotia')
    await page.getByRole('link', { name: 'Papers' }).click()
    await press(page, 'Show the part labels')
    await page.getByText('It can’t be shown yet.').waitFor()
    await page.close()
  })
})
