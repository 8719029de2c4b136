import type { Page } from '@playwright/test'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { faultsInBothLights } from './lookFaults.ts'
import { bench, entry, type Bench } from './onScreen.ts'
import { ask, makeJob, priceTimber } from './timberBook.ts'

const sheet = (page: Page, name: string) =>
  page.getByRole('navigation', { name: 'Sheets of timber' }).getByRole('link', { name, exact: true }).click()

async function toTimber(page: Page, name: string): Promise<void> {
  await page.getByRole('link', { name: 'Timber', exact: true }).click()
  await sheet(page, name)
}

async function plan(page: Page): Promise<void> {
  await page.locator('[data-plan]:enabled').click()
  await page.locator('[data-place]').waitFor()
}

/** Places the order on the table and gives its number. */
async function place(page: Page): Promise<string> {
  await page.locator('[data-place]:enabled').click()
  await page.locator('[data-order]').waitFor()
  return /\d{4}-T\d+/.exec(await page.getByRole('heading', { level: 1 }).innerText())?.[0] ?? ''
}

const figure = (page: Page, name: string) => page.locator(`[data-${name}]`).first().innerText()
const cutForm = (page: Page) => page.locator('[data-cut-form]')
const rackRow = (page: Page, words: string) =>
  page.locator('.rack-rows .room .line').filter({ hasText: words })

describe('timber from three accepted jobs to the offcuts that the next order uses', () => {
  let desk: Bench
  beforeAll(async () => {
    desk = await bench()
    await desk.restart(() => priceTimber(desk.book, [3000, 4800]))
    const page = await desk.window()
    await makeJob(page, { name: 'Isolde Hartwhistle', width: 985, height: 1785, accepted: true })
    await makeJob(page, { name: 'Ambrose Tenonby', width: 1010, height: 1720, accepted: true })
    await makeJob(page, { name: 'Perpetua Sleeper', width: 870, height: 1655, accepted: true })
    await makeJob(page, { name: 'Leopold Scotia', width: 760, height: 900, accepted: false })
    await ask(page, 'jobs.create', {
      ...{ customerName: 'Hal Twybill', town: '', phone: '', title: 'no sizes yet', due: null },
    })
    await page.context().close()
  })
  afterAll(() => desk.clear())

  it('is planned, proven, placed; a length received and cut, its offcut booked; the next plan uses it and says so', async () => {
    const page = await desk.window()
    await toTimber(page, 'Make an order')
    const hindered = page.getByRole('checkbox', { name: /Hal Twybill/ })
    await hindered.waitFor()
    expect(await hindered.isDisabled()).toBe(true)
    await page.getByRole('button', { name: 'Tick all accepted (3)' }).click()
    await plan(page)
    expect(await figure(page, 'sure')).toBe('No cheaper way there is')
    const cost = await figure(page, 'cost')
    await page.locator('[data-dearer]').waitFor()
    expect(await page.locator('[data-rack-gives]').innerText()).toContain('Nothing on it fits here')
    expect(await page.locator('[data-buy]').innerText()).toContain('Much Mallet Timber (invented)')
    await entry(page, 'order.note').fill('ring before they come')
    const number = await place(page)
    expect(number).toBe('2026-T01'.replace('2026', String(new Date().getFullYear())))
    expect(await figure(page, 'cost')).toBe(cost)
    expect(await page.getByText('ring before they come').count()).toBe(1)
    await page.locator('[data-paper]').click()
    await page.getByRole('region', { name: `Timber order ${number}` }).waitFor()
    await page.getByRole('button', { name: 'Back to the order' }).click()

    // A length that leaves an offcut for the rack comes first, and is cut.
    const length = page
      .locator('.cutting ol > li')
      .filter({ has: page.locator('svg[aria-label*="back to the rack"]') })
    const words = (await length.first().locator('svg').getAttribute('aria-label')) ?? ''
    const [, whole, offcut] = /^(\S+) long: .*; (\S+) back to the rack$/.exec(words) ?? []
    const section =
      (await length.first().locator('xpath=ancestor::section[1]').getAttribute('data-section')) ?? ''
    const own = page.locator(`[data-section="${section}"] .cutting ol > li`).filter({
      has: page.locator(`svg[aria-label="${words}"]`),
    })
    expect(await own.getByText('not here yet').count()).toBe(1)
    await page.getByRole('button', { name: `${section}, ${whole} mm, came now: one more` }).click()
    await page.getByRole('button', { name: 'Book in 1 length' }).click()
    await page.locator('[data-state]').filter({ hasText: 'Part of it has come' }).waitFor()
    await own.getByRole('button', { name: /^Cut / }).click()
    await cutForm(page).waitFor()
    expect(await entry(page, 'cut.length').inputValue()).toBe(offcut)
    await entry(page, 'cut.place').fill('long wall')
    await page.locator('[data-put-cut]').click()
    await cutForm(page).waitFor({ state: 'detached' })
    await own.getByText(/cut$/).waitFor()

    await sheet(page, 'The rack')
    await rackRow(page, `${offcut} mm`).waitFor()
    expect(await rackRow(page, `${offcut} mm`).innerText()).toContain('long wall')
    expect(await rackRow(page, `${offcut} mm`).innerText()).toContain('free')

    // The small gate's brace comes out of what was left.
    await sheet(page, 'Make an order')
    const ordered = page.locator('.jobs-to-order .room .line').filter({ hasText: 'Isolde Hartwhistle' })
    await ordered.getByText(`on order ${number} already`).waitFor()
    expect(await ordered.getByRole('checkbox').isDisabled()).toBe(true)
    await page.getByRole('checkbox', { name: /Leopold Scotia/ }).check()
    await plan(page)
    const gives = await page.locator('[data-rack-gives]').innerText()
    expect(gives).toContain(`${offcut}\u00a0mm`)
    expect(gives).toContain('long wall')
    const second = await place(page)
    await sheet(page, 'The rack')
    await rackRow(page, `order ${second}`).first().waitFor()

    // Cancelled, the piece is free again and the job can be ordered for.
    await sheet(page, 'Orders')
    await page.getByRole('link', { name: second }).click()
    await page.getByRole('button', { name: 'Cancel this order' }).click()
    await page.getByRole('button', { name: 'Cancel the order' }).click()
    await page.locator('[data-state]').filter({ hasText: 'Cancelled' }).waitFor()
    await sheet(page, 'Make an order')
    await expect.poll(() => page.getByRole('checkbox', { name: /Leopold Scotia/ }).isDisabled()).toBe(false)

    await page.getByRole('link', { name: 'Jobs', exact: true }).click()
    const line = page.locator('a.line').filter({ hasText: 'Isolde Hartwhistle' })
    await line.getByText(`on order ${number}`).waitFor()
    await line.click()
    await page
      .locator('[data-ordered]')
      .filter({ hasText: `ordered ${number}` })
      .waitFor()
    await page.context().close()
  })

  it('books in the rest at once, and is all cut when every length is', async () => {
    const page = await desk.window()
    await toTimber(page, 'Orders')
    await page.getByRole('link', { name: /-T01$/ }).click()
    await page.locator('[data-all-came]').click()
    await page.locator('[data-book-in]:enabled').click()
    await page.locator('[data-state]').filter({ hasText: 'All of it has come' }).waitFor()
    expect(await figure(page, 'to-come')).toBe('0')
    const cut = page.getByRole('button', { name: /^Cut / })
    for (let left = Number(await figure(page, 'to-cut')); left > 0;) {
      await cut.first().click()
      await page.locator('[data-put-cut]:enabled').click()
      await cutForm(page).waitFor({ state: 'detached' })
      await expect.poll(async () => Number(await figure(page, 'to-cut'))).toBeLessThan(left)
      left = Number(await figure(page, 'to-cut'))
    }
    await page.locator('[data-state]').filter({ hasText: 'All of it is cut' }).waitFor()
    await page.context().close()
  })

  it('refuses a plan that prices have overtaken, and works it out again', async () => {
    const page = await desk.window()
    await toTimber(page, 'Make an order')
    await page.getByRole('checkbox', { name: /Leopold Scotia/ }).check()
    await plan(page)
    const before = await figure(page, 'cost')
    await ask(page, 'rack.add', {
      ...{ itemId: 2, length: 4700, count: 3, place: 'loft', jobId: null, note: '' },
    })
    await page.locator('[data-place]').click()
    await page.getByRole('button', { name: 'Work it out again' }).first().click()
    await page.locator('[data-place]').waitFor()
    expect(await figure(page, 'cost')).not.toBe(before)
    expect(await page.locator('[data-rack-gives]').innerText()).toContain('4700\u00a0mm')
    await page.context().close()
  })

  it('has its rack put right, taken from, and counted place by place', async () => {
    const page = await desk.window()
    await toTimber(page, 'The rack')
    await page.getByRole('button', { name: 'Put a piece on the rack' }).click()
    await entry(page, 'add.item').click()
    await page.getByRole('option', { name: /ex 32 × 150 planed/ }).click()
    await entry(page, 'add.length').fill('1333')
    await page.getByRole('button', { name: 'How many: one more' }).click()
    await entry(page, 'add.place').fill('under the bench')
    await page.getByRole('button', { name: 'Put it there' }).click()
    await page.getByText('All 2 are on the rack').waitFor()
    await page.getByRole('button', { name: 'Close' }).click()
    await page.getByLabel('Search the rack').fill('under bench')
    await expect.poll(() => rackRow(page, '1333 mm').count()).toBe(2)

    await rackRow(page, '1333 mm').first().getByRole('button').click()
    await entry(page, 'piece.length').fill('1321')
    await page.getByRole('button', { name: 'Set it right' }).click()
    await rackRow(page, '1321 mm').waitFor()
    await rackRow(page, '1321 mm').getByRole('button').click()
    await page.getByRole('button', { name: 'Take it out of the rack' }).click()
    await page.getByRole('button', { name: 'It was scrapped' }).click()
    await expect.poll(() => rackRow(page, '1321 mm').count()).toBe(0)

    await page.getByRole('button', { name: 'Take stock' }).click()
    await page.getByRole('button', { name: /^All 3 here/ }).click()
    await page.getByRole('button', { name: /^Moved.*1333 mm/ }).click()
    await entry(page, 'count.moved').fill('loft')
    await page.getByRole('button', { name: 'Note it' }).click()
    await page.getByRole('button', { name: /^Moved: loft/ }).waitFor()
    await page
      .getByRole('button', { name: /^Not here.*4700 mm/ })
      .first()
      .click()
    const told = await page.locator('[data-told]').innerText()
    expect(told).toMatch(/^2 seen, 1 moved, 1 not here\. \d+ not looked at/)
    await page.getByRole('button', { name: 'Finish, and take 1 out of the rack' }).click()
    await page.getByLabel('Search the rack').fill('loft')
    await rackRow(page, '1333 mm').waitFor()
    expect(await rackRow(page, '4700 mm').count()).toBe(2)
    await page.context().close()
  })

  it('keeps what is lost at the saw, and plans by it', async () => {
    const page = await desk.window()
    await page.getByRole('link', { name: 'Workshop', exact: true }).click()
    await entry(page, 'cutting.leastOffcut').fill('4000')
    await expect
      .poll(async () => JSON.stringify(await ask(page, 'book.summary', {})))
      .toContain('"leastOffcut":4000')
    await toTimber(page, 'Make an order')
    await page.getByRole('checkbox', { name: /Leopold Scotia/ }).check()
    await plan(page)
    expect(await page.locator('[data-rack-back]').innerText()).toContain(
      'No offcut of 4000\u00a0mm or more is left',
    )
    await page.context().close()
  })

  it('has no serious fault for a screen reader or a weak eye on any sheet, light and dark, and nothing runs off sideways', async () => {
    const page = await desk.window()
    await toTimber(page, 'Make an order')
    await page.getByRole('checkbox', { name: /Leopold Scotia/ }).check()
    expect(await faultsInBothLights(page), 'choice of jobs').toEqual([])
    await plan(page)
    await page.locator('[data-dearer]').waitFor()
    expect(await faultsInBothLights(page), 'plan').toEqual([])
    await sheet(page, 'Orders')
    await page.getByRole('link', { name: /-T01$/ }).waitFor()
    expect(await faultsInBothLights(page), 'orders').toEqual([])
    await page.getByRole('link', { name: /-T01$/ }).click()
    await page.locator('[data-order]').waitFor()
    expect(await faultsInBothLights(page), 'order').toEqual([])
    await sheet(page, 'The rack')
    await page.getByLabel('Search the rack').fill('4700')
    await rackRow(page, '4700 mm').first().getByRole('button').click()
    await entry(page, 'piece.place').waitFor()
    expect(await faultsInBothLights(page), 'rack').toEqual([])
    await page.getByRole('button', { name: 'Take stock' }).click()
    await page
      .getByRole('button', { name: /^Not here/ })
      .first()
      .waitFor()
    expect(await faultsInBothLights(page), 'stock-take').toEqual([])
    await page.context().close()
  })
})
