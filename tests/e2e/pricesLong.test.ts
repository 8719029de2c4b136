import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from '@playwright/test'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { everySo } from '../fixtures/sample.ts'
import { faultsInBothLights } from './lookFaults.ts'
import { bench, type Bench } from './onScreen.ts'
import { fillPrices } from './fillPrices.ts'
import { apply, search, toPrices } from './priceList.ts'
import { fifthOfASecond, longestStall, sharesOf, smallShare, watchStalls } from './stalls.ts'

describe('five thousand lines', () => {
  let desk: Bench
  let folder: string
  beforeAll(async () => {
    desk = await bench()
    await desk.restart(() => fillPrices(desk.book, 5000))
    folder = mkdtempSync(join(tmpdir(), 'bracework-long-lists-'))
  })
  afterAll(async () => {
    await desk.clear()
    rmSync(folder, { recursive: true, force: true })
  })
  const longList = (count: number, go = 0) => {
    const path = join(folder, `${count}-${go}.csv`)
    const lines = Array.from(
      { length: count },
      (_, n) => `C${String(n).padStart(5, '0')};Goods number ${n};${(n % 900) + 1},3${go}`,
    )
    writeFileSync(path, `Code;Description;Net price\n${lines.join('\n')}\n`)
    return path
  }

  /** Gives a list of 100,000 lines, looks at what it does, applies it. Gives the share of that which the window was held up for at once. */
  async function longRise(page: Page, go: number): Promise<number> {
    await page.getByRole('button', { name: 'From a merchant’s list' }).click()
    await watchStalls(page)
    const began = performance.now()
    await page.setInputFiles('input[type="file"]', longList(100_000, go))
    await page.locator('.outcome b').filter({ hasText: '5,000' }).waitFor()
    await page.getByRole('button', { name: '95,000 not in your book' }).waitFor()
    await page.getByRole('button', { name: 'See what it does' }).click()
    await page.getByText('Old', { exact: true }).waitFor()
    await apply(page)
    await page.locator('.price-grid .room .line').first().waitFor()
    const whole = performance.now() - began
    return (await longestStall(page)) / whole
  }

  it('has a list of 100,000 lines previewed and applied in small pieces, the window answering in between', async () => {
    const page = await desk.window()
    await toPrices(page)
    await page.getByText('5,000 lines').waitFor()
    const shares = await sharesOf((go) => longRise(page, go))
    expect(Math.min(...shares), `of each go: ${shares.join(', ')}`).toBeLessThanOrEqual(smallShare)
    await page.context().close()
  })

  it('breaks a list of a million lines off within a fifth of a second, with nothing changed', async () => {
    const page = await desk.window()
    await toPrices(page)
    await page.getByRole('button', { name: 'From a merchant’s list' }).click()
    await page.setInputFiles('input[type="file"]', longList(1_000_000))
    await page.getByRole('button', { name: 'Break off' }).waitFor()
    await page.getByText(/[1-9][\d,]* lines/).waitFor()
    const frames = await page.evaluate(async () => {
      const button = [...document.querySelectorAll('button')].find(
        ({ textContent }) => textContent === 'Break off',
      )
      button?.click()
      let drawn = 0
      for (; !document.body.innerText.includes('Broken off'); drawn += 1)
        await new Promise(requestAnimationFrame)
      return button ? drawn : Infinity
    })
    expect(frames).toBeLessThanOrEqual(fifthOfASecond)
    expect(await page.locator('.outcome').count()).toBe(0)
    await expect.poll(() => page.getByRole('button', { name: 'See what it does' }).isDisabled()).toBe(true)
    await page.context().close()
  })

  it('searches as one types and scrolls to the end without making rows out of sight', async () => {
    const page = await desk.window()
    await toPrices(page)
    await page.getByText('5,000 lines').waitFor()
    expect(await page.locator('.price-grid .room .line').count()).toBeLessThan(40)
    await page.locator('.price-grid').evaluate((grid) => (grid.scrollTop = grid.scrollHeight))
    await expect.poll(() => page.locator('[aria-rowindex="5001"]').count()).toBe(1)
    await search(page, 'C04999')
    await expect.poll(() => page.locator('.price-grid .room .line').count()).toBe(1)
    await page.keyboard.press('ArrowDown')
    await expect.poll(() => page.evaluate(() => document.activeElement?.tagName)).toBe('INPUT')
    await page.context().close()
  })
})

const screens: { name: string; open: (page: Page) => Promise<unknown> }[] = [
  { name: 'the list', open: (page) => page.locator('.price-grid .room .line').first().waitFor() },
  {
    name: 'an item',
    open: async (page) => {
      await page.locator('.price-grid .name').first().click()
      await page.locator('.side h2').waitFor()
    },
  },
  {
    name: 'adding',
    open: async (page) => {
      await page.getByRole('button', { name: 'Add an item' }).click()
      await page.getByRole('form', { name: 'Add an item' }).waitFor()
    },
  },
  {
    name: 'the preview',
    open: async (page) => {
      await page.getByRole('button', { name: 'Put prices up' }).click()
      await page.keyboard.type('4')
      await page.keyboard.press('Enter')
      await page.locator('.rise-lines .room .line').first().waitFor()
    },
  },
  {
    name: 'choosing a list',
    open: async (page) => {
      await page.getByRole('button', { name: 'From a merchant’s list' }).click()
      await page.getByText('Choose the merchant’s list').waitFor()
    },
  },
]

describe('the place Prices for weak eyes and screen readers', () => {
  let desk: Bench
  beforeAll(async () => {
    desk = await bench()
    await desk.restart(() => fillPrices(desk.book, 30))
  })
  afterAll(() => desk.clear())

  for (const screen of everySo(2, screens))
    it(`${screen.name}: light and dark, no serious fault, nothing runs off sideways`, async () => {
      const page = await desk.window()
      await toPrices(page)
      await page.getByText(/\d+ lines/).waitFor()
      await screen.open(page)
      expect(await faultsInBothLights(page)).toEqual([])
      await page.context().close()
    })
})
