import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { bench, entry, giveSizes, kept, startJob, type Bench } from './onScreen.ts'

describe('two windows on one job', () => {
  let desk: Bench
  beforeAll(async () => {
    desk = await bench()
  })
  afterAll(() => desk.clear())

  it('lose no edit: each sees the other’s, and both stand in the book', async () => {
    const one = await desk.window()
    await startJob(one, 'Thaddeus Quirk')
    await giveSizes(one, '985', '1830')
    await kept(one)
    const two = await desk.window()
    await two.goto(`${desk.host().origin}/${new URL(one.url()).hash}`)
    await entry(two, 'size.width').waitFor()
    await entry(one, 'size.width').fill('1005')
    await entry(two, 'boards.gap').fill('3')
    await kept(one)
    await kept(two)
    await expect.poll(() => entry(two, 'size.width').inputValue()).toBe('1005')
    await expect.poll(() => entry(one, 'boards.gap').inputValue()).toBe('3')
    await one.close()
    await two.close()
  })

  it('tell both values when they wrote in one field, and put the other’s back when asked', async () => {
    const one = await desk.window()
    await startJob(one, 'Philippa Dado')
    await giveSizes(one, '985', '1830')
    await kept(one)
    const two = await desk.window()
    await two.goto(`${desk.host().origin}/${new URL(one.url()).hash}`)
    await entry(two, 'size.width').waitFor()
    await Promise.all([entry(one, 'size.height').fill('1790'), entry(two, 'size.height').fill('1910')])
    const told = Promise.race([
      one
        .getByText(/changed in another window/)
        .waitFor()
        .then(() => one),
      two
        .getByText(/changed in another window/)
        .waitFor()
        .then(() => two),
    ])
    const second = await told
    const words = () => second.locator('.notice').innerText()
    await expect.poll(words).toMatch(/1790/)
    await expect.poll(words).toMatch(/1910/)
    const theirs = second === one ? '1910' : '1790'
    await second.getByRole('button', { name: 'Put theirs back' }).click()
    await kept(second)
    const first = second === one ? two : one
    await expect.poll(() => entry(first, 'size.height').inputValue()).toBe(theirs)
    await one.close()
    await two.close()
  })

  it('says when the book doesn’t answer, and keeps what was entered once it does', async () => {
    const page = await desk.window()
    await startJob(page, 'Rosamund Bead')
    await giveSizes(page, '985', '1830')
    await kept(page)
    await page.route('**/request/jobs.change', (route) => route.abort())
    await entry(page, 'size.width').fill('1015')
    await page.getByText(/Not kept yet/).waitFor()
    await page.unroute('**/request/jobs.change')
    await page.getByText(/Not kept yet/).waitFor({ state: 'detached' })
    await kept(page)
    await page.reload()
    await entry(page, 'size.width').waitFor()
    await expect.poll(() => entry(page, 'size.width').inputValue()).toBe('1015')
    await page.close()
  })

  it('keeps the last key when the window is closed at once', async () => {
    const page = await desk.window()
    await startJob(page, 'Gideon Astragal')
    await giveSizes(page, '985', '1830')
    await kept(page)
    const hash = new URL(page.url()).hash
    await entry(page, 'size.height').fill('1777')
    await page.close({ runBeforeUnload: true })
    const again = await desk.window()
    await expect
      .poll(
        async () => {
          await again.goto(`${desk.host().origin}/${hash}`)
          await again.reload()
          await entry(again, 'size.height').waitFor()
          return entry(again, 'size.height').inputValue()
        },
        // On a busy machine one look takes a second, and the window's last words come in after it.
      )
      .toBe('1777')
    await again.close()
  })
})
