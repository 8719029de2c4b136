import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Page } from '@playwright/test'
import { bench, entry, giveSizes, kept, startJob, type Bench } from './onScreen.ts'

const takeBack = (page: Page) => page.locator('[data-take-back]')
const said = (page: Page) => page.locator('[data-undo-said]').innerText()
const at = (page: Page, field: string) => entry(page, field).inputValue()

/** Leaves whatever entry holds the keys, so that they mean the book. */
const letGo = (page: Page): Promise<void> =>
  page.evaluate(() => {
    if (document.activeElement instanceof HTMLElement) document.activeElement.blur()
  })

describe('taking back', () => {
  let desk: Bench
  let page: Page
  beforeAll(async () => {
    desk = await bench()
    page = await desk.window()
    await startJob(page, 'Octavia Muntin')
    await giveSizes(page, '900', '1830')
    await kept(page)
  })
  afterAll(() => desk.clear())

  it('names the last thing done on the button, takes it back by the key, marks where it shows and says so', async () => {
    await page.waitForTimeout(4200)
    await entry(page, 'size.width').fill('915')
    await kept(page)
    await expect.poll(() => takeBack(page).innerText()).toBe('Take back: Width 900 → 915')
    await letGo(page)
    await page.keyboard.press('Control+z')
    await expect.poll(() => at(page, 'size.width')).toBe('900')
    await page.locator('[data-field="size.width"].taken-back').waitFor()
    expect(await said(page)).toBe('Taken back: Width 900 → 915')
    await page.keyboard.press('Control+Shift+Z')
    await expect.poll(() => at(page, 'size.width')).toBe('915')
    expect(await said(page)).toBe('Done again: Width 900 → 915')
  })

  it('leaves the keys to an entry while something is typed in it', async () => {
    await entry(page, 'size.height').click()
    await page.keyboard.press('End')
    await page.keyboard.type('5')
    expect(await at(page, 'size.height')).toBe('18305')
    await page.keyboard.press('Control+z')
    await expect.poll(() => at(page, 'size.height')).toBe('1830')
    expect(await at(page, 'size.width')).toBe('915')
    await kept(page)
    await page.keyboard.press('Control+z')
    await expect.poll(() => at(page, 'size.width')).toBe('900')
    await page.keyboard.press('Control+y')
    await expect.poll(() => at(page, 'size.width')).toBe('915')
  })

  it('outlasts a restart, by the list too: everything down to there in one press', async () => {
    await entry(page, 'boards.gap').fill('3')
    await kept(page)
    const hash = new URL(page.url()).hash
    await desk.restart()
    page = await desk.window()
    await page.goto(`${desk.host().origin}/${hash}`)
    await entry(page, 'size.width').waitFor()
    await page.getByRole('button', { name: 'What was done lately' }).click()
    await page.getByRole('button', { name: /^Take back to here \(\d+\): Width 900 → 915/ }).click()
    await expect.poll(() => at(page, 'size.width')).toBe('900')
    await expect.poll(() => at(page, 'boards.gap')).not.toBe('3')
    expect(await said(page)).toMatch(/^Taken back: \d+ things$/)
  })

  it('lists what another window did to the same entry within a second or so, to be taken back first', async () => {
    await entry(page, 'size.width').fill('940')
    await kept(page)
    const other = await desk.window()
    await other.goto(page.url())
    await entry(other, 'size.width').waitFor()
    await entry(other, 'size.width').fill('955')
    await kept(other)
    await expect.poll(() => at(page, 'size.width')).toBe('955')
    await page.getByRole('button', { name: 'What was done lately' }).click()
    await page.getByRole('button', { name: /^Take back to here \(\d+\): Width 900 → 940/ }).waitFor()
    await page.keyboard.press('Escape')
    await other.close()
  })

  it('asks what to do about an entry that was changed again since, and does as it is told', async () => {
    const asks = [{ deed: 'Width', what: 'Width of job 2026-001', theirs: '955', older: '900' }]
    const asking = JSON.stringify({ ok: true, value: { done: false, asks } })
    await page.route('**/request/undo.back', (route) =>
      route.fulfill({ contentType: 'application/json', body: asking }),
    )
    await takeBack(page).click()
    const dialog = page.getByRole('alertdialog', { name: 'Width of job 2026-001 was changed again since' })
    await dialog.getByText('stands at 955 now; 900 would go in its place').waitFor()
    await page.keyboard.press('Escape')
    await dialog.waitFor({ state: 'detached' })
    expect(await at(page, 'size.width')).toBe('955')
    await takeBack(page).click()
    await dialog.waitFor()
    await page.unroute('**/request/undo.back')
    const told = page.waitForResponse('**/request/undo.back')
    await dialog.getByRole('button', { name: 'Leave 955' }).click()
    expect((await told).request().postDataJSON()).toMatchObject({ settle: 'keep theirs' })
    await expect.poll(() => said(page)).toMatch(/^Taken back: /)
  })

  it('leaves the person where they went while it was on its way', async () => {
    const job = new URL(page.url()).hash
    await entry(page, 'size.width').fill('965')
    await kept(page)
    await expect.poll(() => takeBack(page).innerText()).toMatch(/Width \d+ → 965$/)
    const before = /(\d+) → 965$/.exec(await takeBack(page).innerText())?.[1]
    let answer = (): void => undefined
    const held = new Promise<void>((go) => (answer = go))
    await page.route('**/request/undo.back', (route) => held.then(() => route.continue()))
    await takeBack(page).click()
    await page.getByRole('link', { name: 'Jobs', exact: true }).click()
    await page.getByRole('button', { name: 'Start a new job' }).waitFor()
    answer()
    await expect.poll(() => said(page)).toMatch(/^Taken back: Width/)
    await page.unroute('**/request/undo.back')
    expect(new URL(page.url()).hash).toBe('#/jobs')
    await page.goto(`${new URL(page.url()).origin}/${job}`)
    await expect.poll(() => at(page, 'size.width')).toBe(before)
  })

  it('brings a job back that was started by mistake, and puts it in no list meanwhile', async () => {
    await startJob(page, 'Lavinia Haunch')
    await kept(page)
    await letGo(page)
    await page.keyboard.press('Control+z')
    await page.getByRole('heading', { name: 'Jobs' }).first().waitFor({ state: 'attached' })
    expect(new URL(page.url()).hash).toBe('#/jobs')
    await page.getByText('Octavia Muntin').waitFor()
    await expect.poll(() => page.getByText('Lavinia Haunch').count()).toBe(0)
    await page.keyboard.press('Control+y')
    await page.getByText('Lavinia Haunch').waitFor()
  })

  it('takes a setting and a section of the workshop back where they show', async () => {
    await page.goto(`${new URL(page.url()).origin}/#/workshop`)
    await page.getByLabel('Name', { exact: true }).fill('Test Bench Joinery')
    await expect.poll(() => takeBack(page).innerText()).toContain('name of the workshop')
    await page.goto(`${new URL(page.url()).origin}/#/jobs`)
    await takeBack(page).click()
    await expect.poll(() => new URL(page.url()).hash).toBe('#/workshop')
    await expect.poll(() => page.getByLabel('Name', { exact: true }).inputValue()).toBe('')
  })
})
