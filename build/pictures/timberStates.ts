import type { Page } from '@playwright/test'
import { gateOf, type State } from './state.ts'

/** Goes to a sheet of timber by its address, as a kept link would. */
const at =
  (address: string) =>
  async (page: Page): Promise<void> => {
    await page.goto(`${new URL(page.url()).origin}/#/${address}`)
    await page.waitForTimeout(700)
  }

/** Asks the book for something over the page's own carrier. */
type Given = { id: number; state: string }[] & { rows: { id: number }[] }
const ask = (page: Page, name: string, body: object): Promise<{ value: Given }> =>
  page.evaluate(
    async ([asked, sent]) => {
      const reply = await fetch(`/request/${asked}`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: sent ?? '',
      })
      return reply.json()
    },
    [name, JSON.stringify(body)],
  )

/** Ticks every job whose name is so, however far down the list it stands: only rows in sight are there to be ticked. */
async function tick(page: Page, name: RegExp): Promise<void> {
  const list = page.getByRole('grid', { name: 'Jobs to order for' })
  await list.waitFor()
  await list.evaluate((box) => box.scrollTo(0, 0))
  const boxes = list.getByRole('checkbox', { name }).and(page.locator(':not(:checked):enabled'))
  for (let more = true; more;) {
    await page.waitForTimeout(50)
    while ((await boxes.count()) > 0) await boxes.first().check()
    more = await list.evaluate((box) => {
      const before = box.scrollTop
      box.scrollBy(0, box.clientHeight / 2)
      return box.scrollTop > before
    })
  }
  await list.evaluate((box) => box.scrollTo(0, 0))
}

async function choose(page: Page, numbers: string[]): Promise<void> {
  await at('timber/make')(page)
  await tick(page, new RegExp(`^(${numbers.join('|')}) `))
}

const planned = async (page: Page, numbers: string[]): Promise<void> => {
  await choose(page, numbers)
  await page.locator('[data-plan]').click()
  await page.locator('[data-place]').waitFor()
  await page.locator('[data-dearer]').waitFor()
}

/** The order that the pictures share: placed once, whichever picture comes first. */
async function toOrder(page: Page): Promise<void> {
  const { value } = await ask(page, 'orders.list', {})
  const [made] = value
  if (made) {
    await at(`timber/order/${made.id}`)(page)
    await page.locator('[data-order]').waitFor()
    return
  }
  await planned(page, ['S-003', 'S-004', 'S-006'])
  await page.locator('[data-place]').click()
  await page.locator('[data-order]').waitFor()
}

async function receiveSome(page: Page): Promise<void> {
  await toOrder(page)
  const more = page.getByRole('button', { name: /came now: one more/ })
  if ((await more.count()) > 2) {
    await more.nth(0).click()
    await more.nth(2).click()
    await page.locator('[data-book-in]').click()
    await page.getByRole('button', { name: /^Cut / }).first().waitFor()
  }
}

const down = (selector: string) => (page: Page) =>
  page.locator(selector).evaluate((box) => box.scrollTo(0, box.clientHeight * 0.85))

const then =
  (...steps: ((page: Page) => Promise<unknown>)[]) =>
  async (page: Page): Promise<void> => {
    for (const step of steps) await step(page)
    await page.waitForTimeout(300)
  }

/** Pieces enough for a long rack. */
async function fillRack(page: Page): Promise<void> {
  const rack = await ask(page, 'rack.list', {})
  if (rack.value.length > 60) return
  const places = ['long wall, upper arms', 'long wall, lower arms', 'loft above the door', '']
  for (let n = 0; n < 60; n += 1)
    await ask(page, 'rack.add', {
      ...{ itemId: 1 + (n % 9), length: 480 + ((n * 137) % 2400), count: 1, jobId: null },
      ...{ place: places[n % 4], note: n % 7 === 0 ? 'sound, but with a shake at one end' : '' },
    })
}

/** A job whose boards nobody prices: its number in the book. One of its own, whatever jobs were made before. */
async function unpriced(page: Page): Promise<number> {
  await gateOf(page, '985', '1785')
  const id = Number(/job\/(\d+)/.exec(page.url())?.[1])
  const section = { name: 'ex 32 × 175 shiplap', species: 'European larch', thickness: 26, width: 160 }
  const reply = await ask(page, 'jobs.change', {
    id,
    changes: [{ path: 'spec.boards.section', value: section }],
  })
  if (!('ok' in reply) || reply.ok !== true) throw new Error(JSON.stringify(reply))
  await page.waitForTimeout(400)
  return id
}

/** Thirty plain gates of as many sizes: timber that takes long to plan. */
async function manyJobs(page: Page): Promise<void> {
  const known = await ask(page, 'jobs.list', { search: 'Scantling', stage: null })
  for (let n = known.value.rows.length; n < 30; n += 1) {
    const who = { customerName: `Abel Scantling ${n + 1}`, town: '', phone: '', title: '', due: null }
    const { value: id } = await page.evaluate(async (body) => {
      const reply = await fetch('/request/jobs.create', {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify(body),
      })
      const answer: { value: { id: number } } = await reply.json()
      return { value: answer.value.id }
    }, who)
    const changes = [
      { path: 'spec.size.width', value: 700 + ((n * 37) % 400) },
      { path: 'spec.size.height', value: 1400 + ((n * 53) % 700) },
    ]
    await ask(page, 'jobs.change', { id, changes })
  }
}
async function planning(page: Page): Promise<void> {
  await manyJobs(page)
  await at('timber/make')(page)
  await tick(page, /Scantling/)
  await page.locator('[data-plan]').click()
  await page.locator('[data-stop]:enabled').waitFor()
  await page.waitForTimeout(1500)
}
const stopped = async (page: Page): Promise<void> => {
  await planning(page)
  await page.locator('[data-stop]').click()
  await page.locator('[data-dearer]').waitFor()
}

/** Orders of timber from the choice of jobs to the offcuts, and the rack. */
export const timberStates: State[] = [
  { name: 'timber-orders-empty', empty: true, open: at('timber') },
  { name: 'timber-make-empty', empty: true, open: at('timber/make') },
  { name: 'timber-rack-empty', empty: true, open: at('timber/rack') },
  { name: 'timber-rack', open: at('timber/rack') },
  { name: 'timber-choose', open: (page) => choose(page, ['S-008', 'S-005']) },
  { name: 'timber-planned-one', open: (page) => planned(page, ['S-013']) },
  { name: 'timber-planned-three', open: (page) => planned(page, ['S-003', 'S-004', 'S-006']) },
  {
    name: 'timber-planned-three-cuts',
    open: then((page) => planned(page, ['S-003', 'S-004', 'S-006']), down('.result')),
  },
  {
    name: 'timber-planned-long-names',
    open: then((page) => planned(page, ['S-005', 'S-009', 'S-010', 'S-011', 'S-014']), down('.result')),
  },
  {
    name: 'timber-planned-unpriced',
    open: async (page) => {
      await at(`timber/make/${await unpriced(page)}`)(page)
      await page.locator('[data-plan]').click()
      await page.locator('[data-place]').waitFor()
    },
  },
  { name: 'timber-placed', open: toOrder },
  { name: 'timber-placed-cuts', open: then(toOrder, down('.order')) },
  {
    name: 'timber-cancel-asked',
    open: then(toOrder, (page) => page.getByRole('button', { name: 'Cancel this order' }).click()),
  },
  { name: 'timber-part-received', open: receiveSome },
  {
    name: 'timber-cutting',
    open: then(receiveSome, async (page) => {
      const keeps = page.locator('.cutting ol > li').filter({
        has: page.locator('svg[aria-label*="back to the rack"]'),
      })
      await keeps.getByRole('button', { name: /^Cut / }).first().click()
      await page.locator('[data-cut-form]').scrollIntoViewIfNeeded()
    }),
  },
  {
    name: 'timber-job-ordered',
    open: then(toOrder, async (page) => {
      await page.locator('[data-order] .for a').first().click()
      await page.locator('[data-ordered]').waitFor()
      await page.waitForTimeout(500)
    }),
  },
  { name: 'timber-jobs-ordered', open: then(toOrder, at('jobs')) },
  { name: 'timber-orders', open: then(toOrder, at('timber')) },
  { name: 'timber-rack-full', open: then(fillRack, at('timber/rack')) },
  {
    name: 'timber-rack-piece',
    open: then(fillRack, at('timber/rack'), async (page) => {
      await page.locator('[data-piece]').first().click()
      await page.waitForTimeout(200)
      const leave = page.getByRole('button', { name: 'Take it out of the rack' })
      if ((await leave.count()) > 0) await leave.click()
    }),
  },
  {
    name: 'timber-rack-add',
    open: then(at('timber/rack'), (page) =>
      page.getByRole('button', { name: 'Put a piece on the rack' }).click(),
    ),
  },
  {
    name: 'timber-stock-take',
    open: then(fillRack, at('timber/count'), async (page) => {
      await page
        .getByRole('button', { name: /^Seen here/ })
        .nth(0)
        .click()
      await page
        .getByRole('button', { name: /^Not here/ })
        .nth(1)
        .click()
      await page
        .getByRole('button', { name: /^Moved/ })
        .nth(2)
        .click()
    }),
  },
]

/** Timber that takes long to plan, of thirty jobs made for it: taken last. */
export const longPlanStates: State[] = [
  { name: 'timber-planning', open: planning },
  { name: 'timber-stopped', open: stopped },
]
