import { renameSync, rmSync } from 'node:fs'
import { readFile } from 'node:fs/promises'
import type { Page } from '@playwright/test'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { pictureSvg } from '../../renderer/pictures/pictureSvg.ts'
import { jobWords, noteWords, scriptBook } from '../faults/scriptBook.ts'
import { scriptWords } from '../faults/scriptWords.ts'
import { opened } from '../papers/paperReading.ts'
import { bench, entry, type Bench } from './onScreen.ts'

const soak = process.env['BRACEWORK_SOAK'] === '1'
/** Jobs whose every screen is walked through: any has words of twenty fields. */
const walked = soak ? scriptWords.length : 2

declare global {
  interface Window {
    ran?: unknown
    violations?: string[]
  }
}

/** What a page did that no page of ours does. */
type Misdeeds = { dialogs: string[]; loads: string[] }

async function watched(desk: Bench): Promise<{ page: Page; misdeeds: Misdeeds }> {
  const page = await desk.window({ width: 1500, height: 5000 })
  const misdeeds: Misdeeds = { dialogs: [], loads: [] }
  page.on('dialog', (dialog) => {
    misdeeds.dialogs.push(dialog.message())
    void dialog.dismiss()
  })
  page.on('request', (sent) => {
    const address = sent.url()
    if (
      !address.startsWith(desk.host().origin) &&
      !/^(blob|data|about|chrome|chrome-extension):/.test(address)
    )
      misdeeds.loads.push(address)
  })
  await page.addInitScript(() => {
    window.violations = []
    document.addEventListener('securitypolicyviolation', (one) =>
      window.violations?.push(`${one.violatedDirective} ${one.blockedURI}`),
    )
  })
  await page.reload()
  await page.getByRole('link', { name: 'Jobs', exact: true }).waitFor()
  return { page, misdeeds }
}

async function go(page: Page, to: string): Promise<void> {
  await page.evaluate((hash) => (window.location.hash = hash), `#/${to}`)
  await page.waitForTimeout(250)
}

/** All that a page shows: its words, and what stands in its fields. */
const shown = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const fields = [...document.querySelectorAll('input, textarea, select')]
    const values = fields.map((field) => ('value' in field ? String(field.value) : ''))
    return [document.body.textContent, ...values].join('\n')
  })

/** The sentinel, and what the content policy had to stop; nothing of either is ever to be seen. */
const ran = (page: Page) =>
  page.evaluate(() => ({ ran: window.ran ?? null, stopped: window.violations ?? ['not watched'] }))
const nothingRan = { ran: null, stopped: [] }

/** A paper's pages come up as pictures of themselves: waits for one that wasn't there before. */
async function previewed(page: Page, press: string | RegExp): Promise<void> {
  await page.evaluate(() => document.querySelector('canvas[data-painted]')?.removeAttribute('data-painted'))
  await page.getByRole('button', { name: press }).first().click()
  await page.locator('canvas[data-painted]').first().waitFor({ timeout: 20_000 })
}

/** The sheets shown from a job's papers; those that take long to be painted in the long form alone. */
const previews = [
  ...['Show the care note', 'Show the part labels', 'Show the day list', 'Look at it first'],
  ...(soak ? ['Show the fitting sheet', 'Show the worked figures', 'Show the full-size sheets'] : []),
]

/** Each name as a picture's title and as words in it, as the program writes a picture to be kept. */
const picturesNamed = (): { words: string; svg: string }[] =>
  scriptWords.map((words) => {
    const place = { x: 5, y: 50, size: 3, angle: 0, anchor: 'start', weight: 'regular', tone: 'ink' } as const
    const text = { kind: 'text', text: words, ...place } as const
    const picture = { width: 200, height: 100, primitives: [text], description: words }
    return { words, svg: pictureSvg(picture, words) }
  })

/** The words of the paper on show without their spaces, as lines may break anywhere. */
async function paperWords(page: Page): Promise<string> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('link', { name: 'Keep a copy' }).first().click(),
  ])
  const pdf = await opened(new Uint8Array(await readFile(await download.path())))
  const pages = await Promise.all(
    Array.from({ length: pdf.numPages }, async (_, i) => (await pdf.getPage(i + 1)).getTextContent()),
  )
  return pages
    .flatMap(({ items }) => items.map((item) => ('str' in item ? item.str : '')))
    .join('')
    .replaceAll(' ', '')
}

const expectEntry = (page: Page, field: string, words: string): Promise<void> =>
  expect.poll(() => entry(page, field).inputValue(), { message: field }).toBe(words)

describe(`names that would run as a script (${scriptWords.length} in ${walked} jobs and all lists)`, () => {
  let desk: Bench
  const book = { jobs: [] as number[], order: 0, quoted: 0 }
  const screens = { seen: 0 }
  beforeAll(async () => {
    desk = await bench()
    const made = await scriptBook(`${desk.book}-names`, { jobs: scriptWords.length, issued: walked })
    book.jobs = made.jobs
    book.order = made.order
    book.quoted = made.quoted
    await desk.restart(() => {
      for (const ending of ['', '-wal', '-shm']) rmSync(`${desk.book}${ending}`, { force: true })
      renameSync(`${desk.book}-names`, desk.book)
    })
  })
  afterAll(() => desk.clear())

  it('are words on every list', async () => {
    const { page, misdeeds } = await watched(desk)
    const lists = [
      'jobs/all',
      'prices',
      'prices/rises',
      'workshop',
      'timber/rack',
      'timber/count',
      'timber/make',
    ]
    for (const list of lists) {
      await go(page, list)
      await page.waitForTimeout(500)
      const text = await shown(page)
      const missing = ['prices/rises', 'timber/make'].includes(list)
        ? []
        : scriptWords.filter((words) => !text.includes(words))
      expect({ list, missing }).toEqual({ list, missing: [] })
      expect({ list, ...(await ran(page)) }).toEqual({ list, ...nothingRan })
      screens.seen += 1
    }
    for (const more of ['jobs', 'jobs/year', 'timber/orders', `timber/order/${book.order}`, 'estimates']) {
      await go(page, more)
      expect({ more, ...(await ran(page)) }).toEqual({ more, ...nothingRan })
      screens.seen += 1
    }
    expect(misdeeds).toEqual({ dialogs: [], loads: [] })
    await page.context().close()
  })

  it('are words in each field, drawing, table and sheet of a job, and on its papers', async () => {
    const { page, misdeeds } = await watched(desk)
    for (const [place, id] of book.jobs.slice(0, walked).entries()) {
      const { notes = '', ...fields } = jobWords(place)
      await go(page, `job/${id}/customer`)
      for (const [field, words] of Object.entries(fields)) await expectEntry(page, field, words)
      await go(page, `job/${id}/notes`)
      await expectEntry(page, 'notes', notes)
      for (const words of noteWords(place)) await page.getByText(words).first().waitFor({ timeout: 15_000 })
      expect({ place, ...(await ran(page)) }).toEqual({ place, ...nothingRan })
      await go(page, `job/${id}/gate`)
      await page.locator('[data-view="large"] svg').waitFor()
      for (const part of ['price', 'price/options', 'price/quotations', 'price/took', 'papers']) {
        await go(page, `job/${id}/${part}`)
        expect({ part, ...(await ran(page)) }).toEqual({ part, ...nothingRan })
        screens.seen += 1
      }
      await page.locator('iframe').first().waitFor()
      // A name too long for the card's head ends there in '…'.
      const name = (jobWords(place)['customer.name'] ?? '').replaceAll(' ', '').slice(0, 24)
      await expect.poll(() => paperWords(page)).toContain(name)
      for (const preview of place === 0 || soak ? previews : []) {
        await previewed(page, preview)
        expect({ place, preview, ...(await ran(page)) }).toEqual({ place, preview, ...nothingRan })
        screens.seen += 1
      }
      await page.getByRole('button', { name: 'Show the picture' }).click()
      await page.locator('canvas[data-picture]').waitFor()
      expect({ place, ...(await ran(page)) }).toEqual({ place, ...nothingRan })
      screens.seen += 3
    }
    expect(misdeeds).toEqual({ dialogs: [], loads: [] })
    process.stdout.write(
      `script words: ${scriptWords.length} names on ${screens.seen} screens: 0 ran, 0 dialogs, 0 loads\n`,
    )
    await page.context().close()
  })

  it('are words in the previews of a quotation and an order, and in pictures that are kept', async () => {
    const { page, misdeeds } = await watched(desk)
    await go(page, `job/${book.quoted}/price/quotations`)
    await previewed(page, /^Open/)
    await go(page, `timber/order/${book.order}`)
    await previewed(page, 'Show it on paper')
    const found = await page.evaluate((pictures) => {
      const holder = document.body.appendChild(document.createElement('div'))
      return pictures.map(({ words, svg }) => {
        const read = new DOMParser().parseFromString(svg, 'image/svg+xml')
        // As a page that took the file for its own would have it: with all that could run in it.
        holder.innerHTML = svg.replace(/^<\?xml.*\?>/, '')
        const inside = [read, holder].map((one) => [...one.querySelectorAll('svg, svg *')])
        const kinds = [...new Set(inside.flat().map(({ localName }) => localName))].sort()
        const said = inside.map((all) =>
          all.filter(({ localName }) => localName === 'text').map((one) => one.textContent),
        )
        return { words, kinds, said: said.flat() }
      })
    }, picturesNamed())
    expect(found).toEqual(
      scriptWords.map((words) => ({
        words,
        kinds: ['desc', 'rect', 'svg', 'text', 'title'],
        said: [words, words],
      })),
    )
    await page.waitForTimeout(300)
    expect(await ran(page)).toEqual(nothingRan)
    expect(misdeeds).toEqual({ dialogs: [], loads: [] })
    process.stdout.write(`script words: ${found.length} names in pictures that are kept: all words\n`)
    await page.context().close()
  })

  it('would be found out by the same watch if a screen took one for more than words', async () => {
    const { page } = await watched(desk)
    await page.evaluate(() => document.body.insertAdjacentHTML('beforeend', '<img src=x onerror=ran=3>'))
    await expect.poll(() => ran(page)).not.toEqual(nothingRan)
    await page.context().close()
  })
})
