import type { CDPSession, Page } from '@playwright/test'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { bench, entry, giveSizes, kept, startJob, type Bench } from './onScreen.ts'
import { longestStall, watchStalls } from './stalls.ts'

/** The grip that moves an entry, and the size shown while it is in the hand. */
const grip = (page: Page, field: string) => page.locator(`.grip[data-hold="${field}"]`)
const standsAt = async (page: Page, field: string): Promise<number> =>
  Number(await grip(page, field).getAttribute('aria-valuenow'))

async function middleOf(page: Page, field: string): Promise<{ x: number; y: number }> {
  const box = await grip(page, field).boundingBox()
  if (!box) throw new Error(`no grip for ${field}`)
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 }
}

/** A finger on the glass: down, along in steps, and up again where wanted. */
async function finger(glass: CDPSession, from: { x: number; y: number }, to: { x: number; y: number }) {
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', points: { x: number; y: number }[]) =>
    glass.send('Input.dispatchTouchEvent', { type, touchPoints: points })
  await touch('touchStart', [from])
  for (let step = 1; step <= 4; step += 1)
    await touch('touchMove', [
      { x: from.x + ((to.x - from.x) * step) / 4, y: from.y + ((to.y - from.y) * step) / 4 },
    ])
  await touch('touchEnd', [])
}

describe('the gate by hand', () => {
  let desk: Bench
  let page: Page
  beforeAll(async () => {
    desk = await bench()
    page = await desk.window()
    await startJob(page, 'Hester Lathe')
    await giveSizes(page, '985', '1830')
  })
  afterAll(() => desk.clear())

  it('a size pressed on the drawing is written anew there, in any words; Esc leaves it, what can’t be is said', async () => {
    const width = page.locator('.spot[data-entry="size.width"]').first()
    await width.click()
    await page.keyboard.type('38 7/8"')
    await page.getByRole('dialog', { name: 'Width' }).getByText('987.425 mm').waitFor()
    await page.keyboard.press('Enter')
    await expect.poll(() => entry(page, 'size.width').inputValue()).toBe('38 7/8"')
    await expect
      .poll(() => page.evaluate(() => document.activeElement?.getAttribute('data-entry')))
      .toBe('size.width')
    await page.keyboard.press('Enter')
    await page.keyboard.type('400')
    await page.keyboard.press('Escape')
    expect(await entry(page, 'size.width').inputValue()).toBe('38 7/8"')
    await page.locator('.spot[data-entry="ledges.heights.0"]').first().click()
    await page.keyboard.type('1700')
    await page.keyboard.press('Enter')
    await page.locator('.figure-entry [role="alert"]').filter({ hasText: 'off a leaf' }).waitFor()
    await page.keyboard.press('Escape')
    expect(await page.locator('.figure-entry').count()).toBe(0)
    await page.locator('.told button').filter({ hasText: 'Ledge length' }).first().click()
    await page.locator('.figure-working').filter({ hasText: 'hanging inset' }).waitFor()
    await page.keyboard.press('Escape')
    await page.locator('.figure-working').waitFor({ state: 'detached' })
  })

  it('a ledge drawn up by the mouse takes its own height: one edit on the book, and nothing held up over 50 ms', async () => {
    const sent: string[] = []
    page.on('request', (asked) => {
      if (asked.url().endsWith('/request/jobs.change')) sent.push(asked.postData() ?? '')
    })
    await kept(page)
    await watchStalls(page)
    const from = await middleOf(page, 'ledges.heights.1')
    const before = await standsAt(page, 'ledges.heights.1')
    await page.mouse.move(from.x, from.y)
    await page.mouse.down()
    await page.mouse.move(from.x, from.y - 30, { steps: 10 })
    await page.locator('[data-moving-size]').waitFor()
    await page.waitForTimeout(500)
    expect(sent).toEqual([])
    await page.mouse.up()
    await expect.poll(() => sent.length).toBe(1)
    const after = await standsAt(page, 'ledges.heights.1')
    expect(after).toBeGreaterThan(before + 50)
    expect(Number.isInteger(after)).toBe(true)
    process.stdout.write(`a ledge drawn along: longest stall ${Math.round(await longestStall(page))} ms\n`)
    await page.getByRole('button', { name: 'Put it as the rule has it' }).click()
    await expect.poll(() => standsAt(page, 'ledges.heights.1')).toBe(before)
    await kept(page)
    expect(sent).toHaveLength(2)
  })

  it('goes no further than the gate can bear, says why, and Esc puts it back', async () => {
    const from = await middleOf(page, 'ledges.heights.1')
    const before = await standsAt(page, 'ledges.heights.1')
    await page.mouse.move(from.x, from.y)
    await page.mouse.down()
    await page.mouse.move(from.x, from.y - 300, { steps: 5 })
    await page.locator('.bubble [role="alert"]').filter({ hasText: 'No further' }).waitFor()
    expect(await page.locator('[data-view="large"] svg').count()).toBe(1)
    await page.keyboard.press('Escape')
    await expect.poll(() => standsAt(page, 'ledges.heights.1')).toBe(before)
    await page.mouse.up()
    expect(await page.locator('.grip').count()).toBeGreaterThan(3)
  })

  it('the arrow keys move what has the focus by the step, ten with Shift; Esc puts that back too', async () => {
    await grip(page, 'braces.footSetback').focus()
    const before = await standsAt(page, 'braces.footSetback')
    await page.keyboard.press('ArrowRight')
    await expect.poll(() => standsAt(page, 'braces.footSetback')).toBe(before + 1)
    await page.keyboard.press('Shift+ArrowRight')
    await expect.poll(() => standsAt(page, 'braces.footSetback')).toBe(before + 11)
    await page.keyboard.press('Escape')
    await expect.poll(() => standsAt(page, 'braces.footSetback')).toBe(before)
    await page.keyboard.press('Enter')
    await page.keyboard.type('55')
    await page.keyboard.press('Enter')
    await expect.poll(() => standsAt(page, 'braces.footSetback')).toBe(55)
  })

  it('a finger draws a ledge along as well', async () => {
    const glass = await page.context().newCDPSession(page)
    const from = await middleOf(page, 'ledges.heights.0')
    const before = await standsAt(page, 'ledges.heights.0')
    await finger(glass, from, { x: from.x, y: from.y - 24 })
    await expect.poll(() => standsAt(page, 'ledges.heights.0')).toBeGreaterThan(before + 40)
    await glass.detach()
  })

  it('a part and its rows light each other, by hover and by focus', async () => {
    await page.locator('[data-view="large"] [data-part="top ledge"]').first().hover()
    await page.locator('tr.lit').filter({ hasText: 'Ledge' }).first().waitFor()
    await page.mouse.move(1, 1)
    await page
      .getByRole('row', { name: /^(lower )?brace/i })
      .getByRole('button')
      .first()
      .focus()
    await page.locator('[data-view="large"] .lit[data-part="lower brace"]').first().waitFor()
  })

  it('is kept as a usual gate, starts a new job, and lies beside another drawn to one scale', async () => {
    await page.getByRole('button', { name: 'Usual gates' }).click()
    await page.getByText('The gates you make again and again').waitFor()
    await page.getByLabel('Keep this gate as').fill('Paddock gate')
    await page.getByRole('button', { name: 'Keep this gate' }).click()
    await page.getByText(/ledged and braced, ex 25/).waitFor()
    await page.goto(`${new URL(page.url()).origin}/#/jobs`)
    await page.getByRole('button', { name: 'Start a new job' }).click()
    await page.getByLabel('Customer', { exact: true }).fill('Silas Quirk')
    await page.getByLabel('Start from').click()
    await page.getByRole('option', { name: 'Paddock gate' }).click()
    await page.getByRole('button', { name: 'Start the job' }).click()
    await giveSizes(page, '1100', '1500')
    expect(await standsAt(page, 'braces.footSetback')).toBe(55)
    await page.getByRole('button', { name: 'Side by side' }).click()
    await page.getByRole('button', { name: 'Paddock gate' }).click()
    await page.locator('[data-beside="1"] svg').waitFor()
    const row = page.getByRole('row', { name: /^Leaf width/ })
    expect(await row.innerText()).toMatch(/1100.*987\.4/s)
    await row.focus()
    expect(await page.locator('[data-beside="0"] .lit').count()).toBeGreaterThan(0)
    expect(await page.locator('[data-beside="1"] .lit').count()).toBeGreaterThan(0)
  })
})
