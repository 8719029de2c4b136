import type { Page } from '@playwright/test'
import { openBook } from '../../db/open.ts'
import { atOnce } from '../../db/prices.ts'
import { priceStandardGate } from './pricedBook.ts'

/** Puts prices for all that a standard gate takes into a book that nobody has open, with the lengths, mm, that the invented merchant keeps of every section. */
export function priceTimber(path: string, lengths: number[]): void {
  priceStandardGate(path)
  const book = openBook(path, { now: () => '2026-01-06T10:00:00.000Z' })
  const { items, supplies } = atOnce(book.prices.lineSteps())
  const timber = new Set(items.filter(({ kind }) => kind === 'timber').map(({ id }) => id))
  book.together(() => {
    for (const supply of supplies)
      if (timber.has(supply.itemId)) book.prices.supply({ ...supply, lengths, usual: true })
  })
  book.close()
}

/** Asks the book for one thing over the page's own carrier. */
export const ask = (page: Page, name: string, payload: object): Promise<unknown> =>
  page.evaluate(
    async ([asked, sent]) => {
      const reply = await fetch(`/request/${asked}`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: sent ?? '',
      })
      const answer: { ok: boolean; value: unknown; problems: unknown } = await reply.json()
      if (!answer.ok) throw new Error(`${asked}: ${JSON.stringify(answer.problems)}`)
      return answer.value
    },
    [name, JSON.stringify(payload)],
  )

const isRow = (one: unknown): one is { id: number } =>
  typeof one === 'object' && one !== null && 'id' in one && typeof one.id === 'number'

async function idOf(page: Page, name: string, payload: object): Promise<number> {
  const given = await ask(page, name, payload)
  if (!isRow(given)) throw new Error(`${name} gave no row`)
  return given.id
}

/** A job with a plain gate of that width and height, quoted and accepted where wanted. */
export async function makeJob(
  page: Page,
  given: { name: string; width: number; height: number; accepted: boolean },
): Promise<void> {
  const { name, width, height } = given
  const who = { customerName: name, town: '', phone: '', title: 'Side gate', due: null }
  const id = await idOf(page, 'jobs.create', who)
  const changes = [
    { path: 'spec.size.width', value: width },
    { path: 'spec.size.height', value: height },
  ]
  await ask(page, 'jobs.change', { id, changes })
  if (!given.accepted) return
  const paperId = await idOf(page, 'quotations.issue', { jobId: id, format: 'a4', version: 2 })
  await ask(page, 'quotations.accept', { paperId, option: 0, acceptedOn: '2026-02-03', note: '' })
}
