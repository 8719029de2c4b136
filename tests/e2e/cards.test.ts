import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { createHash } from 'node:crypto'
import { readFileSync, writeFileSync } from 'node:fs'
import { readFile } from 'node:fs/promises'
import { bench, entry, giveSizes, kept, startJob, type Bench } from './onScreen.ts'

/** The book's own bytes for the paper on show, by keeping a copy as the person does. */
async function copyHash(page: import('@playwright/test').Page): Promise<string> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('link', { name: 'Keep a copy' }).click(),
  ])
  return createHash('sha256')
    .update(await readFile(await download.path()))
    .digest('hex')
}

describe('a job from sizes to a card, kept and reprinted', () => {
  let desk: Bench
  beforeAll(async () => {
    desk = await bench()
  })
  afterAll(() => desk.clear())

  it('goes the whole way, and an old card comes out byte for byte after the job and the host have changed', async () => {
    const page = await desk.window()
    await startJob(page, 'Isolde Hartwhistle', 'Lower Rebate')
    await entry(page, 'size.width').fill('36 5/8"')
    await entry(page, 'size.height').fill('5\' 11"')
    await page.locator('[data-view="large"] svg').waitFor()
    await expect.poll(() => page.locator('.gate-form').innerText()).toContain('930.275\u00a0mm')
    await expect.poll(() => page.locator('.gate-form').innerText()).toContain('1803.4\u00a0mm')
    await entry(page, 'boards.gap').fill('3')
    await kept(page)

    await page.getByRole('link', { name: 'Papers' }).click()
    await page.getByRole('button', { name: 'Issue card 1' }).click()
    await page.getByText('Card 1', { exact: false }).first().waitFor()
    await page.getByRole('button', { name: 'Issue card 2' }).waitFor()
    const firstHash = await page.locator('[data-paper]').first().getAttribute('data-hash')
    await page.getByRole('link', { name: 'Keep a copy' }).waitFor()
    expect(await copyHash(page)).toBe(firstHash)

    await page.getByRole('link', { name: 'Gate' }).click()
    await entry(page, 'size.height').fill('6\' 2"')
    await kept(page)
    await page.getByRole('link', { name: 'Papers' }).click()
    await page.getByRole('button', { name: 'Open card 1' }).click()
    expect(await copyHash(page)).toBe(firstHash)

    await page.getByRole('button', { name: 'Compare card 1' }).click()
    const table = page.getByRole('table', { name: 'What changed' })
    await table.waitFor()
    await expect.poll(() => table.innerText()).toMatch(/1803\.4/)
    expect(await table.innerText()).toMatch(/1879\.6/)

    await page.getByRole('button', { name: 'Issue card 2' }).click()
    await page.getByRole('button', { name: 'Issue card 3' }).waitFor()
    const newestHash = () => page.locator('[data-paper]').first().getAttribute('data-hash')
    await expect.poll(newestHash).not.toBe(firstHash)
    expect(await newestHash()).toMatch(/^[0-9a-f]{64}$/)

    await desk.restart()
    const again = await desk.window()
    await again.getByRole('link', { name: /Isolde Hartwhistle/ }).click()
    await entry(again, 'size.height').waitFor()
    await expect.poll(() => entry(again, 'size.height').inputValue()).toBe('6\' 2"')
    expect(await entry(again, 'size.width').inputValue()).toBe('36 5/8"')
    await again.getByRole('link', { name: 'Papers' }).click()
    await again.getByRole('button', { name: 'Open card 1' }).click()
    await again.getByRole('heading', { name: /card 1/ }).waitFor()
    expect(await copyHash(again)).toBe(firstHash)
    await again.close()
  })

  it('issues no card while a stop stands, and says which entry is in the way', async () => {
    const page = await desk.window()
    await startJob(page, 'Perpetua Sleeper')
    await entry(page, 'size.width').fill('60')
    await entry(page, 'size.height').fill('1800')
    await page.getByText(/made as entered/).waitFor()
    await kept(page)
    await page.getByRole('link', { name: 'Papers' }).click()
    await page.getByRole('button', { name: 'Issue card 1' }).click()
    await page.getByText('The card can’t be issued yet.').waitFor()
    await page.getByRole('button', { name: 'Go to the entry' }).first().click()
    await expect
      .poll(() => page.evaluate(() => document.activeElement?.getAttribute('data-field')))
      .toBe('braces.footSetback')
    await page.close()
  })

  it('reports a card whose bytes are no longer those that were issued, and doesn’t show it', async () => {
    const page = await desk.window()
    await startJob(page, 'Leopold Scotia')
    await giveSizes(page, '1010', '1720')
    await kept(page)
    await page.getByRole('link', { name: 'Papers' }).click()
    await page.getByRole('button', { name: 'Issue card 1' }).click()
    await page.getByRole('button', { name: 'Issue card 2' }).waitFor()
    await desk.restart(() => {
      const bytes = readFileSync(desk.book)
      const last = bytes.lastIndexOf('%PDF-')
      expect(last).toBeGreaterThan(0)
      bytes.writeUInt8(bytes.readUInt8(last + 40) ^ 0xff, last + 40)
      writeFileSync(desk.book, bytes)
    })
    const again = await desk.window()
    await again.getByRole('link', { name: /Leopold Scotia/ }).click()
    await again.getByRole('link', { name: 'Papers' }).click()
    await again.getByText(/Card 1 can’t be shown/).waitFor()
    await expect.poll(() => again.locator('.notice').innerText()).toMatch(/damaged/)
    expect(await again.locator('iframe').count()).toBe(0)
    await again.close()
  })
})
