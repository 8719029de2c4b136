import { mkdirSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import type { Page } from '@playwright/test'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { noteOwnWords } from '../../shared/language/ownWords.ts'
import { plainWords, pseudoCatalogue } from '../language/pseudo.ts'
import { bench, type Bench } from './onScreen.ts'

const written = new Set<string>()

/** Months and weekdays as Britain has them, the names of languages, units: the same in every language that is written in Britain. */
const alike =
  /^(Jan|Feb|Mar|Apr|May|June?|July?|Aug|Sept?|Oct|Nov|Dec|Mon|Tue|Wed|Thu|Fri|Sat|Sun|British|American|Tryout|RH|VAT|in|ex|kg|km|S)$/

/** The places that are looked over, and what is opened there first. */
const places = [
  'workshop',
  'jobs',
  'cards',
  'prices',
  'prices/rises',
  'timber/rack',
  'timber/orders',
  'estimates',
  'job/12/gate',
  'job/4/price',
  'job/10/price/options',
  'job/4/papers',
  'job/4/customer',
]

/** What is shown and read out at a place: words, and the attributes that speak. */
const shownOn = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const texts: string[] = []
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT)
    while (walker.nextNode()) texts.push(walker.currentNode.textContent ?? '')
    for (const name of ['aria-label', 'placeholder', 'title', 'alt'])
      for (const element of document.querySelectorAll(`[${name}]`))
        texts.push(element.getAttribute(name) ?? '')
    return texts.map((text) => text.trim()).filter((text) => text !== '')
  })

/**
 * Words of ours whose end can't be seen: cut by their box, or past the window's edge. Three places show one line of what is whole elsewhere: what is
 * chosen of a list (whole in the list), the line that says how things stand (whole when opened), a row of the price book (whole on its card).
 */
const cutOffOn = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const found: string[] = []
    for (const element of document.querySelectorAll('body *')) {
      const style = getComputedStyle(element)
      const own = [...element.childNodes].some(
        (node) => node.nodeType === 3 && (node.textContent ?? '').includes('⟦'),
      )
      if (
        !own ||
        style.visibility === 'hidden' ||
        element.clientWidth === 0 ||
        element.closest('svg, .unseen, .shown, .checks, .windowed')
      )
        continue
      const clipped = style.overflowX !== 'visible' && element.scrollWidth > element.clientWidth + 1
      const beyond =
        element.getBoundingClientRect().right > window.innerWidth + 1 && !element.closest('.scrolls')
      if (clipped || beyond) found.push((element.textContent ?? '').trim().slice(0, 60))
    }
    return found
  })

/** What is chosen of the few words side by side. */
const chosenOn = async (page: Page): Promise<string[]> =>
  (await page.locator('label.word.chosen').allTextContents()).map((text) => text.trim())

const goTo = async (page: Page, place: string) => {
  await page.goto(`${new URL(page.url()).origin}/#/${place}`)
  await page.waitForTimeout(450)
}

describe('a language that is a file beside the book', () => {
  let shop: Bench
  let page: Page
  const go = (place: string) => goTo(page, place)
  beforeAll(async () => {
    shop = await bench({ empty: false })
    const folder = join(dirname(shop.book), 'languages')
    mkdirSync(folder)
    writeFileSync(join(folder, 'qps.json'), JSON.stringify(pseudoCatalogue()))
    page = await shop.window()
    page.on('response', (reply) => {
      if (!reply.url().includes('/request/')) return
      const keep = {
        add: (text: string) => void written.add(text),
        has: () => false,
        within: () => [],
        count: () => 0,
      }
      void reply.json().then(
        (answer: unknown) => noteOwnWords(answer, keep),
        () => undefined,
      )
    })
  })
  afterAll(() => shop.clear())

  it('is offered in the workshop, and speaks on every screen but in what a person wrote', async () => {
    await go('workshop')
    await page.getByText('Tryout', { exact: true }).click()
    await page.getByText('⟦').first().waitFor()
    const missed: string[] = []
    const cut: string[] = []
    let all = 0
    for (const place of places) {
      await go(place)
      const own = [...written].sort((a, b) => b.length - a.length)
      for (const text of await shownOn(page)) {
        const rest = own.reduce((left, one) => left.replaceAll(one, ' '), text)
        all += 1
        const left = plainWords(rest).filter((word) => !alike.test(word))
        if (left.length > 0) missed.push(`${place}: ${left.join(' ')} in “${text.slice(0, 90)}”`)
      }
      cut.push(...(await cutOffOn(page)).map((text) => `${place}: ${text}`))
    }
    process.stdout.write(
      `${all - missed.length} of ${all} texts on ${places.length} screens are looked up or a person’s own\n`,
    )
    expect(missed).toEqual([])
    expect(cut).toEqual([])
  })

  it('is followed by American words with inches and Letter paper, and by British ones with neither', async () => {
    await go('workshop')
    await page.getByText('American', { exact: true }).click()
    await page.waitForFunction(() => document.documentElement.lang === 'en-US')
    await page.getByRole('link', { name: 'Lumber' }).waitFor()
    await expect
      .poll(() => chosenOn(page))
      .toEqual(expect.arrayContaining(['inches', 'US Letter', 'American']))
    await go('job/4/price')
    expect(await page.locator('body').innerText()).toMatch(/Lumber/)
    await go('workshop')
    await page.getByText('British', { exact: true }).click()
    await page.getByRole('link', { name: 'Timber' }).waitFor()
    await expect.poll(() => chosenOn(page)).toEqual(expect.arrayContaining(['mm', 'A4', 'British']))
  })
})
