import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { bench, type Bench } from './onScreen.ts'
import { ask, makeJob, priceTimber } from './timberBook.ts'

describe('timber for a gate taller than any length that the merchant keeps', () => {
  let desk: Bench
  beforeAll(async () => {
    desk = await bench()
    await desk.restart(() => priceTimber(desk.book, [2400]))
    const page = await desk.window()
    await makeJob(page, { name: 'Isolde Hartwhistle', width: 985, height: 2490, accepted: false })
    await page.context().close()
  })
  afterAll(() => desk.clear())

  const planned = async () => {
    const page = await desk.window()
    await page.goto(`${new URL(page.url()).origin}/#/timber/make`)
    await page.getByRole('checkbox', { name: /Isolde Hartwhistle/ }).check()
    await page.locator('[data-plan]:enabled').click()
    return page
  }

  it('names the blank, the longest to be had, what its ends lost, and by how much it is too short', async () => {
    const page = await planned()
    const told = page.locator('[data-unpriced]')
    await told.waitFor()
    expect(await told.innerText()).toMatch(
      /The board of \d{4}-001 takes \d{4}(\.\d)?\smm; the longest to be had is 2380\smm \(a length of 2400\smm less 20\smm trimmed off its ends; the last saw cut meets its end\), \d+(\.\d)?\smm too short/,
    )
    await page.context().close()
  })

  it('says what stays uncut and what to do, where one piece on the rack is all that is long enough', async () => {
    const page = await desk.window()
    const item = { itemId: 2, length: 2700, count: 1, place: 'loft', jobId: null, note: '' }
    for (const itemId of [1, 2, 3]) await ask(page, 'rack.add', { ...item, itemId })
    await page.context().close()
    const tried = await planned()
    await tried.getByText(/can’t hold every part/).waitFor()
    const words = await tried.getByText(/can’t hold every part/).innerText()
    expect(words).toMatch(/uncut stay \d+ of \d{4}/)
    expect(words).toMatch(/no merchant offers a length that holds them, add one/)
    await tried.context().close()
  })
})
