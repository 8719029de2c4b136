import type { Page } from '@playwright/test'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { exampleSpec, openSpec } from '../../build/pictures/openSpec.ts'
import { bench, entry, giveSizes, kept, startJob, type Bench } from './onScreen.ts'

const choose = (page: Page, group: string, word: string) =>
  page.getByRole('radiogroup', { name: group, exact: true }).getByText(word, { exact: true }).click()

const unfold = (page: Page, words: string) =>
  page.locator('summary').filter({ hasText: words }).first().click()

const views = (page: Page) => page.getByRole('tablist', { name: 'Views of the gate' })
const list = (page: Page, word: string) =>
  page.getByRole('tablist', { name: 'Lists for the bench' }).getByRole('tab', { name: word, exact: true })

const inHand = (page: Page) => page.evaluate(() => document.activeElement?.getAttribute('data-field'))

async function issueCard(page: Page): Promise<void> {
  await kept(page)
  await page.getByRole('link', { name: 'Papers' }).click()
  await page.getByRole('button', { name: 'Issue card 1' }).click()
  await page.getByRole('button', { name: 'Issue card 2' }).waitFor()
  await expect
    .poll(() => page.locator('[data-paper]').first().getAttribute('data-hash'))
    .toMatch(/^[0-9a-f]{64}$/)
}

describe('gates of every kind at the screen', () => {
  let desk: Bench
  beforeAll(async () => {
    desk = await bench()
  })
  afterAll(() => desk.clear())

  it('goes from a survey to an issued card of a framed pair with a bowed top and notched braces', async () => {
    const page = await desk.window()
    await startJob(page, 'Hephzibah Rail', 'Long Stile')
    await choose(page, 'Sizes of', 'the opening')
    for (const [field, words] of [
      ['size.widths.0', '2 924'],
      ['size.widths.1', '2.92m'],
      ['size.widths.2', '2931'],
      ['size.heights.0', '2210'],
      ['size.heights.1', '2217'],
    ] as const)
      await entry(page, field).fill(words)
    await unfold(page, 'Head, diagonals and posts')
    await entry(page, 'survey.diagonals.0').fill('12\' 0 1/2"')
    await entry(page, 'survey.diagonals.1').fill('3668')
    await unfold(page, 'Leaves, top and opening')
    await choose(page, 'Leaves', 'a pair')
    await choose(page, 'Meeting edge', 'rebated')
    await choose(page, 'Kind', 'framed, ledged and braced')
    await choose(page, 'Top', 'bowed')
    await entry(page, 'top.rise').fill('210')
    await unfold(page, 'Sizes and ends of the brace')
    await page
      .locator('section[aria-label="Brace"]')
      .getByRole('radiogroup', { name: 'Ends' })
      .getByText('notched')
      .click()
    await entry(page, 'braces.notchDepth').fill('13')
    await page.locator('section[aria-label="Ironmongery"] summary').first().click()
    await page.getByRole('button', { name: 'Propose hinges and lock' }).click()
    await page.locator('[data-view="large"] svg').waitFor()

    // The least of the widths, less both hanging gaps of 6 and a meeting gap of 6, halved: (2920 − 18) / 2.
    await expect.poll(() => page.locator('.comes-of-it').innerText()).toMatch(/Leaf, wide[\s\S]*1451\smm/)
    await list(page, 'Fittings').click()
    await page.getByRole('table', { name: 'Ironmongery of the second leaf' }).waitFor()
    for (const view of ['Layers apart', 'Swing', 'Notch', 'Meeting edge', 'Rail section', 'Setting out']) {
      await views(page).getByRole('tab', { name: view }).click()
      await page.locator('[data-view="large"] svg').waitFor()
    }
    expect(await page.locator('[data-shows="settingOut"] svg title').textContent()).toMatch(/Setting out/)

    await kept(page)
    await page.reload()
    await entry(page, 'survey.diagonals.0').waitFor({ state: 'attached' })
    await expect.poll(() => entry(page, 'survey.diagonals.0').inputValue()).toBe('12\' 0 1/2"')
    await issueCard(page)
    await page.close()
  })

  it('makes a stable door in two halves, with a card', async () => {
    const page = await desk.window()
    await startJob(page, 'Jocasta Ledger')
    await giveSizes(page, '930', '2040')
    await unfold(page, 'Leaves, top and opening')
    await choose(page, 'Leaves', 'stable door')
    await entry(page, 'stable.lowerHeight').fill('3\' 9"')
    await list(page, 'Rip list').click()
    await page.getByRole('table', { name: /Rip list of the upper half/ }).waitFor()
    await list(page, 'Weight and swing').click()
    await page.getByRole('group', { name: 'Upper half: hinges' }).waitFor()
    await issueCard(page)
    await page.close()
  })

  it('lights a board of the second leaf in its row, and the row in the drawing', async () => {
    const page = await desk.window({ width: 1920, height: 1080 })
    await startJob(page, 'Zebedee Batten')
    await giveSizes(page, '1010', '1715')
    await unfold(page, 'Leaves, top and opening')
    await choose(page, 'Leaves', 'a pair')
    await list(page, 'Rip list').click()
    const rows = page.getByRole('table', { name: /Rip list of the second leaf/ }).getByRole('row')
    await page
      .locator('[data-view="large"] path[data-part="second leaf board 4"]')
      .first()
      .hover({ position: { x: 4, y: 5 } })
    await expect.poll(() => rows.nth(4).getAttribute('class')).toContain('lit')
    await expect.poll(() => page.locator('tr.lit').count()).toBe(1)
    await rows.nth(2).hover()
    const lit = page.locator('[data-view="large"] .lit')
    await expect.poll(() => lit.first().getAttribute('data-part')).toBe('second leaf board 2')
    await page.close()
  })

  it('is worked from the keyboard alone: views, folds, a timber’s value, a list', async () => {
    const page = await desk.window()
    await startJob(page, 'Obadiah Wedge')
    await giveSizes(page, '985', '1830')
    const until = async (there: () => Promise<boolean>, key = 'Tab') => {
      for (let presses = 0; presses < 80; presses += 1) {
        if (await there()) return
        await page.keyboard.press(key)
      }
      throw new Error('the keyboard never got there')
    }
    const words = () => page.evaluate(() => document.activeElement?.textContent?.trim() ?? '')
    await until(async () => /^Timber/.test(await words()))
    await page.keyboard.press('Enter')
    await page.keyboard.press('Tab')
    await expect.poll(() => inHand(page)).toBe('timbers.European redwood.density')
    await page.keyboard.type('475')
    await page.keyboard.press('ArrowUp')
    await expect.poll(() => entry(page, 'timbers.European redwood.density').inputValue()).toBe('476')
    await until(async () => /^Ironmongery/.test(await words()))
    await page.keyboard.press('Enter')
    await page.keyboard.press('Tab')
    await page.keyboard.press('Enter')
    await expect.poll(() => page.locator('[aria-label="Ironmongery"] .piece').count()).toBeGreaterThan(1)
    await until(async () => /^Back/.test(await words()))
    await page.keyboard.press('ArrowDown')
    await page.keyboard.press('ArrowDown')
    await page.keyboard.press('ArrowDown')
    await page.locator('[data-shows="exploded"] svg').waitFor()
    await until(async () => (await words()) === 'Cut list')
    await page.keyboard.press('ArrowLeft')
    await page.keyboard.press('ArrowLeft')
    await page.getByRole('button', { name: 'Go to the weather' }).waitFor()
    await page.keyboard.press('Tab')
    await page.keyboard.press('Tab')
    await page.keyboard.press('Enter')
    await expect.poll(() => inHand(page)).toBe('climate')
    await page.close()
  })

  it('goes from a check to its entry, whatever it lies folded under', async () => {
    const page = await desk.window()
    await startJob(page, 'Sophronia Tongue')
    await giveSizes(page, '985', '1830')
    await unfold(page, 'Leaves, top and opening')
    await choose(page, 'Top', 'bowed')
    await entry(page, 'top.rise').fill('700')
    await page.getByText('This gate can’t be made as entered.').waitFor()
    await unfold(page, 'Leaves, top and opening')
    await page.getByRole('button', { name: 'Go to the entry' }).click()
    await expect.poll(() => inHand(page)).toBe('top.rise')
    await page.keyboard.type('120')
    await page.locator('[data-view="large"] svg').waitFor()
    await page.locator('.checks .line').click()
    await page
      .locator('.checks li')
      .filter({ hasText: /redwood/i })
      .first()
      .getByRole('button', { name: /Go to it/ })
      .click()
    await expect.poll(() => inHand(page)).toBe('boards.section.species')
    await page.close()
  })

  it('follows a digit typed into the heaviest gate at once, with only the list and the view that are open', async () => {
    const page = await desk.window()
    await startJob(page, 'Balthazar Gantry')
    await openSpec(page, exampleSpec('24-framed-pair-bowed-heaviest'))
    await page.locator('[data-view="large"] svg').waitFor()
    // How long that takes is shown by the bench `design-keystroke`; here, that the next frame has it.
    const followed = await entry(page, 'size.width').evaluate(async (box: HTMLInputElement) => {
      const drawn = () => document.querySelector('[data-view="large"] svg')?.innerHTML ?? ''
      const changed: boolean[] = []
      for (let key = 0; key < 9; key += 1) {
        const before = drawn()
        box.value = String(1451 + key)
        box.dispatchEvent(new Event('input', { bubbles: true }))
        await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))
        changed.push(drawn() !== before)
      }
      return changed
    })
    expect(followed).toEqual(Array(9).fill(true))
    await expect.poll(() => page.locator('.list-of .rows').count()).toBe(1)
    expect(await page.locator('[data-view="large"]').count()).toBe(1)
    await page.close()
  })
})
