import { readdirSync, statSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from '@playwright/test'
import Sqlite from 'better-sqlite3'
import { expect } from 'vitest'
import { entry } from '../onScreen.ts'
import type { Story } from './byKeys.ts'
import type { CoreTask } from './table.ts'
import { told } from '../taskDesk.ts'
import { jobOf, jobsOf } from './storyJob.ts'

/** What a way of doing the tasks puts in: the figures typed, which differ between the two ways. */
export type Given = {
  town: string
  title: string
  widths: number[]
  heights: number[]
  rises: number
  width: number
  extra: number
  minutes: number
  note: string
  percent: string
}
type Outcome = (page: Page, story: Story, given: Given) => Promise<void>

const today = (): string => new Date().toISOString().slice(0, 10)

const named: Outcome = async (page, { name }, given) => {
  await entry(page, 'size.width').waitFor()
  const { customer, title, entry: asked } = await jobOf(page, name)
  expect([customer.town, title]).toEqual([given.town, given.title])
  expect(asked.spec.size).toMatchObject({ from: 'leaf', width: null, height: null })
  await expect
    .poll(() => page.evaluate(() => document.activeElement?.getAttribute('data-field')))
    .toBe('size.width')
}

const measured: Outcome = async (page, { name }, { widths, heights, rises }) => {
  await page.locator('[data-view="large"] svg').waitFor()
  await expect
    .poll(async () => (await jobOf(page, name)).entry.spec.site)
    .toEqual({ slopeAlong: rises / 1000 })
  expect((await jobOf(page, name)).entry.spec.size).toMatchObject({ from: 'opening', widths, heights })
}

const resized: Outcome = (page, { drawn }, { width }) =>
  expect.poll(async () => (await jobOf(page, drawn)).entry.spec.size).toMatchObject({ width })

const priced: Outcome = async (page, { name }, { extra, minutes }) => {
  const { id } = await jobOf(page, name)
  const own = async () => (await told(page, 'options.list', { jobId: id }))[0]?.entry
  await expect.poll(async () => Object.values((await own())?.overrules ?? {})).toEqual([{ minutes }])
  expect((await own())?.extras).toMatchObject([{ words: 'Taking the old gate away', pence: extra }])
  await expect.poll(() => page.locator('[data-gross]').first().innerText()).toMatch(/^£\d/)
}

const quoted: Outcome = async (page, { name }, { extra }) => {
  const { id } = await jobOf(page, name)
  const quotations = async () =>
    (await told(page, 'papers.list', { jobId: id })).filter(({ kind }) => kind === 'quotation')
  await expect.poll(async () => (await quotations()).length).toBe(1)
  const [paper] = await quotations()
  const { money } = await told(page, 'quotations.money', { paperId: paper?.id ?? 0 })
  expect(money.options[0]?.estimate.lines.filter(({ group }) => group === 'extras')).toMatchObject([
    { pence: extra },
  ])
}

const accepted: Outcome = async (page, { name }, { note }) => {
  const { id } = await jobOf(page, name)
  await expect.poll(async () => (await jobsOf(page, name))[0]?.accepted).toBe(true)
  const [paper] = (await told(page, 'papers.list', { jobId: id })).filter(({ kind }) => kind === 'quotation')
  const { acceptance } = await told(page, 'quotations.money', { paperId: paper?.id ?? 0 })
  expect(acceptance).toMatchObject({ option: 0, note })
}

const ordered: Outcome = async (page, { name }) => {
  await page.locator('[data-order]').waitFor()
  const { id } = await jobOf(page, name)
  const orders = await told(page, 'orders.list', { jobId: id })
  expect(orders).toMatchObject([{ state: 'placed' }])
  expect(orders[0]?.cost).toBeGreaterThan(0)
}

const issued: Outcome = async (page, { name }) => {
  const { id } = await jobOf(page, name)
  const cards = async () =>
    (await told(page, 'papers.list', { jobId: id })).filter(({ kind }) => kind === 'job-card')
  await expect.poll(async () => (await cards()).map(({ revision }) => revision)).toEqual([1])
  await page.getByRole('heading', { name: /card 1$/ }).waitFor()
}

/** The very bytes of the first card went to the print window, though a second has been issued since. */
const reprinted: Outcome = async (page, { name }) => {
  const { id } = await jobOf(page, name)
  const cards = (await told(page, 'papers.list', { jobId: id })).filter(({ kind }) => kind === 'job-card')
  expect(cards.map(({ revision }) => revision).sort()).toEqual([1, 2])
  const old = cards.find(({ revision }) => revision === 1)
  await expect.poll(() => page.evaluate(() => document.body.dataset['printed'])).toBe(old?.sha256)
}

const raised: Outcome = async (page, _story, { percent }) => {
  await page.getByText(/prices? ha(s|ve) changed/).waitFor()
  const rises = await told(page, 'prices.rises', {})
  const [last] = rises.sort((a, b) => b.id - a.id)
  expect(last?.origin).toContain(`${percent} %`)
  const { prices } = await told(page, 'prices.book', {})
  const came = prices.filter(({ riseId }) => riseId === last?.id)
  expect(came).toHaveLength(last?.lines ?? 0)
  expect(came.length).toBeGreaterThan(10)
  expect(new Set(came.map(({ startsOn }) => startsOn))).toEqual(new Set([today()]))
}

/** The newest copy on the stick opens as a book, is whole and has the job in it. */
const copied: Outcome = async (page, { name, stick }) => {
  await page.getByText(/It was read back and is the same/).waitFor()
  const madeAt = (file: string) => statSync(join(stick, file)).mtimeMs
  const [newest] = readdirSync(stick).sort((a, b) => madeAt(b) - madeAt(a))
  const copy = new Sqlite(join(stick, newest ?? 'none'), { readonly: true, fileMustExist: true })
  expect(copy.pragma('integrity_check', { simple: true })).toBe('ok')
  expect(copy.prepare('SELECT count(*) FROM customers WHERE name = ?').pluck().get(name)).toBe(1)
  copy.close()
}

const again: Outcome = async (page, { name }) => {
  await entry(page, 'size.widths.0').waitFor()
  await expect.poll(async () => (await jobsOf(page, name)).length).toBe(2)
  const first = await jobOf(page, name)
  const [newest] = await jobsOf(page, name)
  const { entry: made, stage } = await told(page, 'jobs.open', { id: newest?.id ?? 0 })
  expect(made.spec.size).toEqual(first.entry.spec.size)
  expect(stage).not.toBe(first.stage)
  await expect.poll(() => page.url()).toContain(`#/job/${newest?.id}/gate`)
}

/** What stands in the book, on the disk or at the printer's door once a task is done. */
export const outcomes: Record<CoreTask, Outcome> = {
  'new job': named,
  survey: measured,
  'change a size on the drawing': resized,
  price: priced,
  quote: quoted,
  accept: accepted,
  'order timber': ordered,
  'issue a card': issued,
  'reprint an old card': reprinted,
  'raise prices': raised,
  'back up': copied,
  'make the same again': again,
}
