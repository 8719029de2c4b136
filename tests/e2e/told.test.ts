import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Browser, Page } from '@playwright/test'
import Database from 'better-sqlite3'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { hosted, type Hosted } from '../../build/hosted.ts'
import { programVersion } from '../../shared/version.ts'
import { startChromium } from '../../build/chromium.ts'

const folder = mkdtempSync(join(tmpdir(), 'bracework-told-'))
const scene: { host?: Hosted; browser?: Browser } = {}
const host = (): Hosted => {
  if (!scene.host) throw new Error('the host is not running')
  return scene.host
}

const window = async (before: (page: Page) => Promise<void> = async () => {}): Promise<Page> => {
  const context = await scene.browser?.newContext({ viewport: { width: 1093, height: 614 } })
  const page = await context?.newPage()
  if (!page) throw new Error('there is no browser')
  await before(page)
  await page.goto(host().address)
  await page.getByRole('link', { name: 'Jobs', exact: true }).waitFor()
  return page
}

beforeAll(async () => {
  // What a program leaves in a folder that it keeps alike on several machines.
  writeFileSync(join(folder, '.stfolder'), '')
  scene.host = await hosted(join(folder, 'workshop.book'))
  scene.browser = await startChromium()
})
afterAll(async () => {
  await scene.browser?.close()
  await scene.host?.stop()
  rmSync(folder, { recursive: true, force: true })
})

describe('a book whose folder is kept alike on other machines', () => {
  it('is warned of once, and not again once the person has said to leave it there', async () => {
    const page = await window()
    const warning = page.locator('[data-folder-warning]')
    await expect.poll(() => warning.innerText()).toContain('An older page of it can come back from there.')
    await page.getByRole('button', { name: 'Leave it there' }).click()
    expect(await warning.count()).toBe(0)
    await page.reload()
    await page.getByRole('button', { name: 'Start a new job' }).first().waitFor()
    await page.waitForTimeout(300)
    expect(await warning.count()).toBe(0)
    await page.context().close()
  })
})

describe('a page that lies open', () => {
  it('tells the host so every few minutes, and a good word comes back', async () => {
    const page = await window((fresh) => fresh.clock.install())
    const told = page.waitForResponse('**/still-open')
    await page.clock.runFor(4 * 60_000 + 1000)
    expect((await told).status()).toBe(200)
    await page.context().close()
  })
})

describe('a fault of the program', () => {
  it('is told with a mark, and its details can be copied: nothing of the book is in them', async () => {
    const page = await window()
    const spoiler = new Database(join(folder, 'workshop.book'))
    spoiler.exec('ALTER TABLE items RENAME TO items_elsewhere')
    await page.getByRole('link', { name: 'Prices', exact: true }).click()
    const strip = page.locator('[data-fault]')
    await expect.poll(() => strip.innerText()).toMatch(/What was kept before is safe\. Fault [A-Z\d]{6}/)
    const [mark = ''] = /[A-Z\d]{6}/.exec(await strip.innerText()) ?? []
    await page.getByRole('button', { name: 'Copy details' }).click()
    await page.getByText('Copied').waitFor()
    spoiler.exec('ALTER TABLE items_elsewhere RENAME TO items')
    spoiler.close()
    await page.getByRole('button', { name: 'Put it away' }).click()
    expect(await strip.count()).toBe(0)
    await page.evaluate(() => document.body.append(document.createElement('textarea')))
    await page.locator('body > textarea').focus()
    await page.keyboard.press('Control+V')
    const details = (await page.locator('body > textarea').inputValue()).split('\n')
    expect(details.slice(0, 4)).toEqual([
      `Bracework ${programVersion}`,
      `fault ${mark}`,
      expect.stringMatching(/^asked prices\.[a-zA-Z]+$/),
      'place prices',
    ])
    expect(details[4]).toMatch(/^time \d{4}-\d\d-\d\dT[\d:.]+Z$/)
    expect(details[5]).toMatch(/^in a browser: Chrome\/[\d.]+$/)
    expect(details).toHaveLength(6)
    await page.context().close()
  })
})
