import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from '@playwright/test'
import { openBook } from '../../db/open.ts'
import { pence } from '../../shared/pricing/pence.ts'
import { bundleIfStale } from '../bundle.ts'
import { hosted } from '../hosted.ts'
import { inChromium } from './browser.ts'
import { median, written, type Effort, type Measured } from './row.ts'

/** The longest that the window may be held up at once, ms. */
const limit = 50

const codeOf = (place: number): string => `W${String(place).padStart(6, '0')}`

/** A book of so many lines, each with a merchant's code and a price. */
function fillLines(path: string, count: number): void {
  const book = openBook(path, { now: () => '2026-01-05T09:00:00.000Z' })
  book.together(() => {
    const supplierId = book.prices.addSupplier({ name: 'Great Yard (invented)', phone: '', notes: '' }).id
    const prices = Array.from({ length: count }, (_, place) => {
      const facts = { form: 'bolt' as const, diameter: 8, length: 20 + place / 10 }
      const { id: itemId } = book.prices.addItem({ kind: 'fixing', name: `bolt ${place}`, facts })
      book.prices.supply({ itemId, supplierId, code: codeOf(place), lengths: [], usual: true })
      const startsOn = '2025-02-03'
      return { itemId, supplierId, unit: 'each' as const, size: null, pence: pence(100 + place), startsOn }
    })
    book.rises.add({ prices, origin: 'first prices', stamp: null })
  })
  book.close()
}

/** The longest task of one go and what the whole go took, ms. */
type Go = { longest: number; whole: number }

/** An event of the browser's own record: a task of a thread that took dur, µs, or the name of a thread. */
type Recorded = { name: string; ph: string; pid: number; tid: number; dur?: number; args?: { name?: string } }

const isRecorded = (event: unknown): event is Recorded =>
  typeof event === 'object' && event !== null && 'ph' in event && 'tid' in event

/** The longest task of a window's main thread while work is done, ms, as the browser itself records it: between two tasks keys and the pointer come in. */
async function longestTask(page: Page, work: () => Promise<void>): Promise<number> {
  const browser = await page.context().newCDPSession(page)
  const all: unknown[] = []
  browser.on('Tracing.dataCollected', ({ value }) => all.push(...value))
  await browser.send('Tracing.start', { transferMode: 'ReportEvents', categories: 'toplevel' })
  await work()
  const ended = new Promise<void>((resolve) => browser.once('Tracing.tracingComplete', () => resolve()))
  await browser.send('Tracing.end')
  await ended
  await browser.detach()
  const events = all.filter(isRecorded)
  const threadOf = ({ pid, tid }: Recorded): string => `${pid}/${tid}`
  const main = new Set(
    events
      .filter(({ name, args }) => name === 'thread_name' && args?.name === 'CrRendererMain')
      .map(threadOf),
  )
  const tasks = events.filter((one) => one.ph === 'X' && /RunTask$/.test(one.name) && main.has(threadOf(one)))
  return Math.max(...tasks.map(({ dur = 0 }) => dur)) / 1000
}

/** A merchant’s list given, read, looked at and put in force. */
async function takeList(page: Page, list: string): Promise<void> {
  await page.setInputFiles('input[type="file"]', list)
  await page.getByRole('button', { name: 'not in your book' }).waitFor()
  await page.getByRole('button', { name: 'See what it does' }).click()
  await page.locator('[data-apply]').click()
  await page.getByText(/prices? ha(s|ve) changed/).waitFor()
  await page.locator('.price-grid .room .line').first().waitFor()
}

async function listTaken(page: Page, list: string): Promise<Go> {
  await page.getByRole('button', { name: 'From a merchant’s list' }).click()
  const start = performance.now()
  const longest = await longestTask(page, () => takeList(page, list))
  return { longest, whole: performance.now() - start }
}

async function goes(folder: string, { lines, listed, count }: Record<'lines' | 'listed' | 'count', number>) {
  const path = join(folder, 'workshop.book')
  fillLines(path, lines)
  const host = await hosted(path, { empty: true })
  try {
    return await inChromium(async (browser) => {
      const page = await browser.newPage()
      await page.goto(`${host.address}#/prices`)
      const taken: Go[] = []
      for (let go = 0; go < count; go += 1) {
        const list = join(folder, `list ${go}.csv`)
        const row = (place: number) => `${codeOf(place)};Goods ${place};${(place % 900) + 1},3${go}`
        writeFileSync(
          list,
          ['Code;Description;Net price', ...Array.from({ length: listed }, (_, at) => row(at))].join('\n'),
        )
        taken.push(await listTaken(page, list))
      }
      return taken
    })
  } finally {
    await host.stop()
  }
}

/** How long the window is held up by one task while a merchant's list of 100,000 lines is read, looked at and put in force over 5,000 prices. */
export async function windowStall({ quick }: Effort): Promise<Measured> {
  await bundleIfStale()
  const folder = mkdtempSync(join(tmpdir(), 'bracework-bench-stall-'))
  try {
    const sizes = quick ? { lines: 500, listed: 5000, count: 1 } : { lines: 5000, listed: 100_000, count: 8 }
    const taken = await goes(folder, sizes)
    const value = Math.min(...taken.map(({ longest }) => longest))
    const ratio = value / limit
    return {
      row: {
        ...{ name: 'window-stall', value, unit: 'ms', against: 'fifty milliseconds, same Chromium' },
        ...{ ratio, aim: 1, holds: ratio <= 1 },
      },
      said: [
        `longest task of each of ${taken.length} goes: ${taken.map(({ longest }) => Math.round(longest)).join(', ')} ms; the least counts, whatever else the machine does only adds`,
        `a whole go took ${written(median(taken.map(({ whole }) => whole)))} ms in the middle`,
      ],
    }
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}
