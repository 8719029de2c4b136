import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from '@playwright/test'
import { copiesFolder, readCopyName } from '../../db/keeping/copyNames.ts'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { scriptWords } from '../openBook/hostileWords.ts'
import { bench, entry, giveSizes, kept, startJob, type Bench } from './onScreen.ts'

const workshop = (page: Page): Promise<void> =>
  page.getByRole('link', { name: 'Workshop', exact: true }).click()

/** Takes the whole book out into a folder of its own and gives where it lies. */
async function takenOut(page: Page, parent: string): Promise<string> {
  await workshop(page)
  await entry(page, 'carry.out').fill(parent)
  await page.getByRole('button', { name: 'Take everything out' }).click()
  await page.getByText('Taken out:').waitFor()
  return join(parent, readdirSync(parent).sort().at(-1) ?? '')
}

async function lookInto(page: Page, folder: string): Promise<void> {
  await workshop(page)
  await entry(page, 'carry.in').fill(folder)
  await page.getByRole('button', { name: 'Look into it' }).click()
}

describe('a book and its jobs carried by hand', () => {
  let from: Bench
  let to: Bench
  let parent = ''
  beforeAll(async () => {
    parent = mkdtempSync(join(tmpdir(), 'bracework-carried-'))
    from = await bench()
    to = await bench()
  })
  afterAll(async () => {
    await from.clear()
    await to.clear()
    rmSync(parent, { recursive: true, force: true })
  })

  it('go out as a folder, are looked into, and stand in another book with their card; bad words stay words', async () => {
    const page = await from.window()
    await startJob(page, 'Isolde Hartwhistle', 'Lower Rebate')
    await giveSizes(page, '930', '1830')
    await kept(page)
    await page.getByRole('link', { name: 'Papers' }).click()
    await page.getByRole('button', { name: 'Issue card 1' }).click()
    await page.getByRole('button', { name: 'Issue card 2' }).waitFor()
    const hash = await page.locator('[data-paper]').first().getAttribute('data-hash')
    for (const words of scriptWords.slice(0, 2)) {
      await startJob(page, words, words)
      await page.getByRole('link', { name: 'Customer and notes' }).click()
      await entry(page, 'notes').fill(words)
      await kept(page)
    }
    const folder = await takenOut(page, parent)

    const other = await to.window()
    await lookInto(other, folder)
    await other.locator('[data-found]').waitFor()
    expect(await other.locator('[data-found]').innerText()).toMatch(/3 jobs, 3 customers, 1 paper/)
    await other.getByRole('button', { name: 'Bring it in' }).click()
    await other.getByText(/are in the book now/).waitFor()
    await other.getByRole('button', { name: 'Go to the jobs' }).click()
    await other.locator('a.line').first().waitFor()
    expect(await other.locator('a.line').count()).toBe(3)
    const told = await other.locator('a.line').allInnerTexts()
    for (const words of scriptWords.slice(0, 2)) expect(told.join('\n')).toContain(words)
    await other.getByRole('link', { name: /Isolde Hartwhistle/ }).click()
    await other.getByRole('link', { name: 'Papers' }).click()
    await other.getByRole('heading', { name: /card 1/ }).waitFor()
    expect(await other.locator('[data-paper]').first().getAttribute('data-hash')).toBe(hash)
    for (const one of [page, other]) expect(await one.evaluate(() => '__ran' in window)).toBe(false)
    await page.close()
    await other.close()
  })

  it('a book with jobs of its own gives place only when that is said, and a copy of it is kept', async () => {
    const page = await to.window()
    await lookInto(page, join(parent, readdirSync(parent)[0] ?? ''))
    await page.getByText(/Your own jobs, customers and prices stand in this book/).waitFor()
    expect(await page.getByRole('button', { name: 'Bring it in', exact: true }).count()).toBe(0)
    await page.getByRole('button', { name: 'Leave it' }).click()
    await page.getByRole('button', { name: 'Look into it' }).click()
    const elsewhere = await page.context().newPage()
    await elsewhere.goto(`${to.host().origin}/#/prices`)
    await elsewhere.getByRole('link', { name: 'Prices', exact: true }).waitFor()
    await page.getByRole('button', { name: 'Let it take their place' }).click()
    await page.getByText(/is kept as/).waitFor()
    // Another window begins again in the book that came.
    await elsewhere.waitForURL(/#\/jobs$/)
    const copies = readdirSync(copiesFolder(to.book)).map((name) => readCopyName(name)?.why)
    expect(copies.filter((why) => why === 'import')).toHaveLength(2)
    await page.close()
  })

  it('a spoilt folder is told file by file and changes nothing', async () => {
    const page = await from.window()
    const folder = await takenOut(page, parent)
    const year = readdirSync(join(folder, 'jobs'))[0] ?? ''
    const name = readdirSync(join(folder, 'jobs', year)).find((one) => one.includes('Isolde')) ?? ''
    const path = join(folder, 'jobs', year, name)
    writeFileSync(path, readFileSync(path, 'utf8').replace(/"stage": "\w+"/, '"stage": "lost"'))
    await lookInto(page, folder)
    await page.getByText('It can’t be brought in.').waitFor()
    const told = await page.locator('.wrong').innerText()
    expect(told).toContain(`jobs/${year}/${name}: jobs[0].stage`)
    expect(told).toContain("got 'lost', accepted is one of enquiry, surveyed, designed")
    expect(await page.getByRole('button', { name: 'Bring it in', exact: true }).count()).toBe(0)
    await page.close()
  })

  it('one job goes out as a file and comes in beside the others under the next free number', async () => {
    const page = await from.window()
    await page.getByRole('link', { name: /Isolde Hartwhistle/ }).click()
    await page.getByRole('link', { name: 'Customer and notes' }).click()
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Take this job out' }).click(),
    ])
    expect(download.suggestedFilename()).toMatch(/^\d{4}-001 Isolde Hartwhistle\.gate-job$/)
    const buffer = readFileSync(await download.path())
    await workshop(page)
    const box = page.getByLabel('A job that was taken out')
    await box.setInputFiles({ name: 'x.gate-job', mimeType: 'text/plain', buffer: Buffer.from('not a job') })
    await page.getByText('It can’t be brought in.').waitFor()
    await box.setInputFiles({ name: 'x.gate-job', mimeType: 'text/plain', buffer })
    await page.getByText('One card comes with it').waitFor()
    await page.getByText('Another job has this number here').waitFor()
    await page.getByRole('button', { name: 'Bring this job in' }).click()
    await page.getByText(/Job \d{4}-004 is in the book; it was \d{4}-001 before/).waitFor()
    await page.getByRole('link', { name: 'Open it' }).click()
    await entry(page, 'size.width').waitFor()
    expect(await entry(page, 'size.width').inputValue()).toBe('930')
    await page.close()
  })
})
