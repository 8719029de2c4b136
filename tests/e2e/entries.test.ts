import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { bench, entry, giveSizes, kept, startJob, type Bench } from './onScreen.ts'

describe('entries at the screen', () => {
  let desk: Bench
  beforeAll(async () => {
    desk = await bench()
  })
  afterAll(() => desk.clear())

  it('asks what 1,830 means, draws nothing until it is told, and keeps the question over a reopening', async () => {
    const page = await desk.window()
    await startJob(page, 'Ambrose Tenon')
    await entry(page, 'size.width').fill('985')
    await entry(page, 'size.height').fill('1,830')
    await page.getByText(/can be read in/).waitFor()
    expect(await page.locator('[data-view="large"]').count()).toBe(0)
    await kept(page)
    await page.reload()
    await page.getByText(/can be read in/).waitFor()
    expect(await entry(page, 'size.height').inputValue()).toBe('1,830')
    await page.locator('.meanings button').filter({ hasText: '1830 mm' }).click()
    await page.locator('[data-view="large"] svg').waitFor()
    await expect.poll(() => entry(page, 'size.height').inputValue()).toBe('1830')
    await page.close()
  })

  it('keeps words that are no length, and says so beside the field', async () => {
    const page = await desk.window()
    await startJob(page, 'Delphine Ovolo')
    await entry(page, 'size.width').fill('about a yard')
    await page.getByRole('alert').first().waitFor()
    await kept(page)
    await page.reload()
    await entry(page, 'size.width').waitFor()
    await expect.poll(() => entry(page, 'size.width').inputValue()).toBe('about a yard')
    await page.close()
  })

  it('takes a whole gate from the keyboard alone', async () => {
    const page = await desk.window()
    await page.keyboard.press('Control+n')
    await expect.poll(() => page.evaluate(() => document.activeElement?.tagName)).toBe('INPUT')
    for (const words of ['Cornelius Fillet', 'Much Mallet', '01632 960147', 'Side gate', 'in 3 weeks']) {
      await page.keyboard.type(words)
      await page.keyboard.press('Enter')
    }
    await expect
      .poll(() => page.evaluate(() => document.activeElement?.getAttribute('data-field')))
      .toBe('size.width')
    await page.keyboard.type('3\' 3"')
    await page.keyboard.press('Enter')
    await page.keyboard.type('72"')
    await page.keyboard.press('ArrowUp')
    await expect.poll(() => entry(page, 'size.height').inputValue()).toBe('1829')
    await page.keyboard.press('Enter')
    await page.keyboard.press('ArrowRight')
    await page.keyboard.press('Enter')
    await page.keyboard.press('ArrowLeft')
    await page.locator('[data-view="large"] svg').waitFor()
    await kept(page)
    await page.keyboard.press('Escape')
    await page.keyboard.press('Escape')
    await page.keyboard.press('/')
    await page.keyboard.type('fillet')
    await expect.poll(() => page.locator('a.line').count()).toBe(1)
    await expect.poll(() => page.locator('a.line').innerText()).toContain('Much Mallet')
    await page.keyboard.press('Enter')
    await entry(page, 'size.width').waitFor()
    const chosen = (field: string) =>
      page.evaluate(
        (one) => document.querySelector(`[data-field="${one}"]`)?.parentElement?.textContent?.trim(),
        field,
      )
    await expect.poll(() => chosen('unit')).toBe('inches')
    await expect.poll(() => chosen('hung')).toBe('left')
    await page.close()
  })

  it('keeps the letters typed before the list of what can be done has the hand, out of the entry behind it', async () => {
    const page = await desk.window()
    await startJob(page, 'Osbert Trammel')
    await entry(page, 'size.width').fill('913')
    await entry(page, 'size.width').focus()
    await page.evaluate(() => {
      for (const key of ['F2', 'w', 'o', 'x', 'Backspace', 'r', 'k'])
        document.activeElement?.dispatchEvent(
          new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }),
        )
    })
    await page.keyboard.type('sh')
    const asked = page.getByRole('combobox', { name: 'What to do, or a job' })
    await expect.poll(() => asked.inputValue()).toBe('worksh')
    expect(await entry(page, 'size.width').inputValue()).toBe('913')
    await page.close()
  })

  it('lights a size in the drawing while one is in its field, and goes to the entry of a part that is pressed', async () => {
    const page = await desk.window()
    await startJob(page, 'Lettice Coping')
    await giveSizes(page, '985', '1830')
    await entry(page, 'size.height').focus()
    const lit = page.locator('[data-view="large"] .lit').first()
    await expect.poll(() => lit.getAttribute('data-part')).toBe('dimension height')
    await page.locator('[data-view="large"] [data-part="top ledge"]').first().click()
    await expect
      .poll(() => page.evaluate(() => document.activeElement?.getAttribute('data-field')))
      .toBe('ledges.section')
    await page.close()
  })

  it('answers how for the brace angle with its formula, numbers and source', async () => {
    const page = await desk.window()
    await startJob(page, 'Barnard Muntin')
    await giveSizes(page, '985', '1830')
    await page.getByRole('button', { name: /Brace angle: .*how/ }).click()
    const how = page.locator('.figure-working')
    await how.waitFor()
    expect(await how.innerText()).toMatch(/asin/)
    expect(await how.innerText()).toMatch(/clear height/)
    expect(await how.innerText()).toMatch(/plane geometry/)
    await page.keyboard.press('Escape')
    await how.waitFor({ state: 'detached' })
    expect(await entry(page, 'size.width').count()).toBe(1)
    await page.keyboard.press('Escape')
    await page.getByLabel('Search the jobs').waitFor()
    await page.close()
  })
})
