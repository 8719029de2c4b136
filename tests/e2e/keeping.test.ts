import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import type { Page } from '@playwright/test'
import Sqlite from 'better-sqlite3'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { lookFaults } from './lookFaults.ts'
import { bench, entry, giveSizes, kept, startJob, type Bench } from './onScreen.ts'

const stick = mkdtempSync('/dev/shm/STICK-')
const toWorkshop = (page: Page) => page.getByRole('link', { name: 'Workshop', exact: true }).click()
const keeping = (page: Page) => page.getByRole('region', { name: 'Safe keeping' })

/** Turns the clock of the book's own memory back: since when it has been kept, and when a copy last left. */
function daysAgo(path: string, days: number): void {
  const at = new Date(Date.now() - days * 86_400_000).toISOString()
  const db = new Sqlite(path)
  db.prepare(
    "UPDATE settings SET value = json_set(value, '$.since', ?, '$.away', NULL, '$.putOffUntil', NULL) WHERE key = 'keeping'",
  ).run(at)
  db.close()
}

describe('keeping the book safe, in a browser', () => {
  let desk: Bench
  beforeAll(async () => {
    desk = await bench()
  })
  afterAll(async () => {
    await desk.clear()
    rmSync(stick, { recursive: true, force: true })
  })

  it('backs the book up to a folder, says that it was read back, and refuses a folder that isn’t there, keeping the words', async () => {
    const page = await desk.window()
    await startJob(page, 'Thaddeus Quirk')
    await giveSizes(page, '985', '1830')
    await kept(page)
    await toWorkshop(page)
    const section = keeping(page)
    await section.getByText('No copy has left this computer yet').waitFor()
    await entry(page, 'keeping.folder').fill('/media/nobody/STICK')
    await section.getByRole('button', { name: 'Back up now' }).click()
    await section.getByText('There is no folder /media/nobody/STICK. Is the stick plugged in?').waitFor()
    expect(await entry(page, 'keeping.folder').inputValue()).toBe('/media/nobody/STICK')
    await entry(page, 'keeping.folder').fill(stick)
    await section.getByRole('button', { name: 'Back up now' }).click()
    await section.getByText(/It was read back and is the same\. The stick is safe to remove\./).waitFor()
    expect(readdirSync(stick)).toEqual([
      expect.stringMatching(/^Bracework \d{4}-\d\d-\d\d \d\d\.\d\d\.book$/),
    ])
    expect(await lookFaults(page)).toEqual([])
    await page.context().close()
  })

  it('opens an earlier copy in three clicks after a look inside, keeps the book that was there, and tells other windows', async () => {
    const page = await desk.window()
    await startJob(page, 'Perpetua Sleeper')
    await kept(page).catch(() => undefined)
    const other = await page.context().newPage()
    await other.goto(page.url())
    await entry(other, 'size.width').waitFor()
    await page.goto(`${desk.host().origin}/#/jobs`)
    await page.getByText('Perpetua Sleeper').waitFor()
    await toWorkshop(page)
    await keeping(page)
      .getByRole('button', { name: /^Look inside/ })
      .first()
      .click()
    const inside = page.getByRole('region', { name: /^Inside the copy of/ })
    await inside.getByText('Thaddeus Quirk').waitFor()
    await inside.getByText(/1 job/).waitFor()
    expect(await inside.getByText('Perpetua Sleeper').count()).toBe(0)
    await inside.getByRole('button', { name: 'Open this copy' }).click()
    await page.getByText(/is open, with 1 job\. The book that was there is kept/).waitFor()
    await page.locator('a.line').filter({ hasText: 'Thaddeus Quirk' }).waitFor()
    expect(await page.getByText('Perpetua Sleeper').count()).toBe(0)
    await other.locator('a.line').filter({ hasText: 'Thaddeus Quirk' }).waitFor()
    await page.getByRole('button', { name: 'Put this away' }).click()
    await page.getByText(/is open, with 1 job/).waitFor({ state: 'detached' })
    await toWorkshop(page)
    await keeping(page).getByText('the book that was open before').waitFor()
    await page.context().close()
  })

  it('reminds calmly when no copy has left for a fortnight, over the jobs only, until it is put off', async () => {
    await desk.restart(() => daysAgo(desk.book, 20))
    const page = await desk.window()
    const words = page.getByText('No copy of the book has left this computer yet.')
    await words.waitFor()
    expect(await page.getByRole('dialog').count()).toBe(0)
    await toWorkshop(page)
    await keeping(page).waitFor()
    expect(await words.count()).toBe(0)
    await page.getByRole('link', { name: 'Jobs', exact: true }).click()
    await page.getByRole('button', { name: 'Put it off for a week' }).click()
    await words.waitFor({ state: 'detached' })
    await page.reload()
    await page.locator('a.line').first().waitFor()
    expect(await words.count()).toBe(0)
    await page.context().close()
  })

  it('starts on a damaged book with what can be done in plain words, opens the last good copy, and the jobs are there', async () => {
    await desk.restart(() => {
      const bytes = readFileSync(desk.book)
      bytes.fill(0xa5, 4096 * 2, 4096 * 6)
      writeFileSync(desk.book, bytes)
    })
    const page = await desk.bareWindow()
    await page.getByRole('heading', { name: 'The job book can’t be opened' }).waitFor()
    await page.getByRole('button', { name: 'Read out the book' }).waitFor()
    await page.getByRole('button', { name: 'Begin a fresh book' }).waitFor()
    const text = await page.locator('main').innerText()
    expect(text).not.toMatch(/SQLITE|database|null|undefined|Error|\.ts:/)
    expect(await lookFaults(page)).toEqual([])
    await page.getByText('Thaddeus Quirk').waitFor()
    await page.getByRole('button', { name: 'Open this copy' }).click()
    await page.locator('a.line').filter({ hasText: 'Thaddeus Quirk' }).waitFor()
    await page.context().close()
  })

  it('starts on an empty file with the same choices, and reads nothing out of it', async () => {
    await desk.restart(() => writeFileSync(desk.book, ''))
    const page = await desk.bareWindow()
    await page.getByRole('button', { name: 'Read out the book' }).click()
    await page.getByText('Nothing could be read out of the damaged book').waitFor()
    expect(readFileSync(desk.book)).toHaveLength(0)
    await page.getByRole('button', { name: 'Begin a fresh book' }).click()
    await page.getByText(/This is a fresh, empty book/).waitFor()
    expect(existsSync(desk.book)).toBe(true)
    await page.context().close()
  })
})
