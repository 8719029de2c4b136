import type { Page } from '@playwright/test'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { lookFaults } from './lookFaults.ts'
import { bench, entry, startJob, type Bench } from './onScreen.ts'

const column = (page: Page, of: string) => page.locator(`[data-column="${of}"]`)
const search = (page: Page) => page.getByLabel('Search the jobs')

describe('the job book as a place', () => {
  let desk: Bench
  beforeAll(async () => {
    desk = await bench({ empty: false })
  })
  afterAll(() => desk.clear())

  it('opens on the work in hand; a job is moved by keys and by dragging, moved back, found again, made again, and the year counts it', async () => {
    const page = await desk.window()
    await column(page, 'surveyed').locator('a.line').first().waitFor()
    expect(page.url()).not.toContain('#/jobs/')

    // By keys: the hand stays with the card.
    const card = page.locator('[data-job]').filter({ hasText: 'Hatch for the hen run' })
    await card.getByRole('button', { name: /^Move / }).focus()
    await page.keyboard.press('Enter')
    await page.getByRole('button', { name: 'Move to Designed' }).focus()
    expect(await lookFaults(page)).toEqual([])
    await page.keyboard.press('Enter')
    await column(page, 'designed').getByText('Hatch for the hen run').waitFor()
    await expect
      .poll(() => page.evaluate(() => document.activeElement?.closest('[data-job]')?.textContent))
      .toContain('Hatch for the hen run')
    await page.getByRole('button', { name: 'Move it back' }).click()
    await column(page, 'surveyed').getByText('Hatch for the hen run').waitFor()

    // By dragging, to where the job says what it wants next.
    await card.locator('.size').dragTo(column(page, 'quoted').locator('h2'))
    await column(page, 'quoted').getByText('Hatch for the hen run').waitFor()
    await card.getByRole('link', { name: 'Send the quotation' }).waitFor()
    await page.getByRole('button', { name: 'By day promised' }).click()
    await column(page, 'no day').locator('a.line').first().waitFor()
    expect(await lookFaults(page)).toEqual([])

    // The search leads to the list from anywhere, marks what it found, and says where a word stands that no column shows.
    await page.keyboard.press('/')
    await page.keyboard.type('hen hat')
    await expect.poll(() => page.locator('mark').allInnerTexts()).toEqual(['Hat', 'hen'])
    await search(page).fill('wants again')
    await expect.poll(() => page.locator('[data-piece]').innerText()).toContain('Wants the same again')
    expect(await page.locator('[data-count]').innerText()).toBe('1 job')
    expect(await lookFaults(page)).toEqual([])
    await page.getByRole('button', { name: /^Make again: Wenna/ }).click()
    await page.getByRole('button', { name: 'Make the same again' }).click()
    await entry(page, 'size.width').waitFor()
    expect(await entry(page, 'size.width').inputValue()).toBe('915')
    await page.getByRole('link', { name: 'Notes', exact: true }).click()
    expect(await entry(page, 'notes').inputValue()).toMatch(/^As job S-001 of \d+ \w+ \d{4}\.$/)

    // Esc leads back to the list, where nothing is found of a name nobody has.
    await page.keyboard.press('Escape')
    await search(page).fill('nobody of that name')
    await page.getByText('No job like that').waitFor()
    await page.getByRole('link', { name: 'The year' }).click()
    await page.getByRole('table', { name: /month by month/ }).waitFor()
    expect(await lookFaults(page)).toEqual([])
    await page.context().close()
  })

  it('lets an answer go that a later key has overtaken', async () => {
    const page = await desk.window()
    await startJob(page, 'Lettice Coping', 'Marsh Lane')
    await page.goto(`${desk.host().origin}/#/jobs/all`)
    await page.route('**/request/jobs.list', async (route) => {
      const early = route.request().postDataJSON() as { search: string }
      if (early.search === 'side') await new Promise((done) => setTimeout(done, 700))
      await route.continue()
    })
    await search(page).fill('side')
    await page.waitForTimeout(150)
    await search(page).fill('lettice')
    await page.getByRole('link', { name: /Lettice Coping/ }).waitFor()
    await page.waitForTimeout(800)
    expect(await page.locator('a.line').allInnerTexts()).toEqual([expect.stringContaining('Lettice Coping')])
    await page.context().close()
  })
})
