import type { Page } from '@playwright/test'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { bench, type Bench } from './onScreen.ts'
import { longestStall, sharesOf, smallShare, watchStalls } from './stalls.ts'
import { makeJob, priceTimber } from './timberBook.ts'

const jobs = 30

async function toChoice(page: Page): Promise<void> {
  await page.goto(`${new URL(page.url()).origin}/#/timber/make`)
  await page.locator('.jobs-to-order .room .line').first().waitFor()
}

/** Ticks every job, scrolling through the list as the person does. */
async function tickAll(page: Page): Promise<void> {
  const boxes = page.locator('.jobs-to-order input:enabled:not(:checked)')
  const list = page.getByRole('grid', { name: 'Jobs to order for' })
  for (let screen = 0; screen < jobs; screen += 1) {
    while ((await boxes.count()) > 0) await boxes.first().check()
    if (await page.getByText('for 30 jobs').count()) return
    await list.evaluate((box) => box.scrollBy(0, 300))
    await page.waitForTimeout(50)
  }
}

/** Until the planner has a plan in hand and works on. */
async function inHand(page: Page): Promise<void> {
  await page.locator('[data-plan]:enabled').click()
  await page.locator('[data-stop]:enabled').waitFor()
}

/** Presses stop in the page itself; gives how long it takes until the planning is over on the screen, ms. */
const stopNow = (page: Page): Promise<number> =>
  page.evaluate(async () => {
    const button = document.querySelector<HTMLButtonElement>('[data-stop]')
    const began = performance.now()
    button?.click()
    while (document.querySelector('[data-planning]')) await new Promise((resolve) => setTimeout(resolve, 0))
    return performance.now() - began
  })

describe('timber for thirty jobs at once, whose cheapest plan takes long to prove', () => {
  let desk: Bench
  beforeAll(async () => {
    desk = await bench()
    await desk.restart(() => priceTimber(desk.book, [2400, 3000, 3900, 4800]))
    const page = await desk.window()
    for (let n = 0; n < jobs; n += 1)
      await makeJob(page, {
        ...{ name: `Customer number ${n + 1}`, accepted: false },
        ...{ width: 700 + ((n * 37) % 400), height: 1400 + ((n * 53) % 700) },
      })
    await page.context().close()
  })
  afterAll(() => desk.clear())

  it('is stopped at once with the best plan so far, which says by how much it may be dearer, and can be placed', async () => {
    const page = await desk.window()
    await toChoice(page)
    await tickAll(page)
    const shares = await sharesOf(async (go) => {
      if (go > 0) await page.getByRole('button', { name: 'Choose other jobs' }).click()
      await inHand(page)
      const began = performance.now()
      await page.waitForTimeout(1500)
      expect(await page.locator('[data-so-far]').innerText()).toMatch(/^£\d/)
      const worked = performance.now() - began
      const took = await stopNow(page)
      await page.locator('[data-place]').waitFor()
      return took / worked
    })
    expect(Math.min(...shares), `of each go: ${shares.join(', ')}`).toBeLessThanOrEqual(smallShare)
    expect(await page.locator('[data-sure]').innerText()).toMatch(
      /^At most .+ dearer than the best there is$/,
    )
    expect(await page.getByText(/^Stopped by you after \d+ s\./).count()).toBe(1)
    await page.locator('[data-place]').click()
    await page.locator('[data-order]').waitFor()
    expect(await page.locator('[data-order]').innerText()).toMatch(/At most .+ dearer than the best there is/)
    await page.getByRole('button', { name: 'Cancel this order' }).click()
    await page.getByRole('button', { name: 'Cancel the order' }).click()
    await page.locator('[data-state]').filter({ hasText: 'Cancelled' }).waitFor()
    await page.context().close()
  })

  it('never holds the window up for long while it is planned, stopped and shown', async () => {
    const page = await desk.window()
    const shares = await sharesOf(async () => {
      await page.goto(`${new URL(page.url()).origin}/#/timber`)
      await page.reload()
      await toChoice(page)
      await tickAll(page)
      await watchStalls(page)
      const began = performance.now()
      await inHand(page)
      await page.waitForTimeout(2000)
      await stopNow(page)
      await page.locator('[data-dearer]').waitFor()
      await page.locator('.cutting ol > li').nth(40).waitFor()
      const whole = performance.now() - began
      return (await longestStall(page)) / whole
    })
    expect(Math.min(...shares), `of each go: ${shares.join(', ')}`).toBeLessThanOrEqual(smallShare)
    await page.context().close()
  })

  it('is put away while it is planned, and other jobs can be chosen at once', async () => {
    const page = await desk.window()
    await toChoice(page)
    await tickAll(page)
    await inHand(page)
    await page.getByRole('button', { name: 'Choose other jobs' }).click()
    await page.getByRole('heading', { name: 'Which jobs is the timber for?' }).waitFor()
    expect(await page.locator('[data-plan]').innerText()).toContain('for 30 jobs')
    await page.context().close()
  })
})
