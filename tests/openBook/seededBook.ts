import { readdirSync, readFileSync } from 'node:fs'
import fc from 'fast-check'
import { parseSpec } from '../../shared/gate/parseSpec.ts'
import type { GateSpec } from '../../shared/gate/spec.ts'
import { stages, type Job } from '../../shared/job/job.ts'
import { pence } from '../../shared/pricing/pence.ts'
import { plainEntry } from '../../shared/pricing/terms.ts'
import { seeded, type Draws } from '../../build/bench/seeded.ts'
import { smallPhotograph } from '../fixtures/photograph.ts'
import { metrePrice } from '../fixtures/prices.ts'
import { idsOf, orderingBook, placed, receivedWhole, type OrderingBook } from '../handlers/anOrder.ts'
import { opened, type Opened } from '../handlers/opened.ts'
import { scriptWords, badNames } from './hostileWords.ts'

const folder = new URL('../fixtures/whole/', import.meta.url)

/** The example gates. */
export const exampleGates: GateSpec[] = readdirSync(folder)
  .filter((file) => file.endsWith('.json'))
  .map((file) => {
    const spec = parseSpec(JSON.parse(readFileSync(new URL(file, folder), 'utf8')))
    if (!spec.ok) throw new Error(`${file} is refused`)
    return spec.value
  })

/** Words of every kind: plain, of other scripts, hostile, empty, with line ends and quotation marks. */
export const oddWords = (draws: Draws): string =>
  draws.one([
    'Peg Sash',
    'Ångström Müller-Ødegård',
    'محمد, 12 mm "gate"',
    'line one\nline two\r\nline three',
    "it's 5' 11\" wide",
    "'=quoted already",
    ' outer spaces ',
    '',
    ...scriptWords,
    ...badNames.filter((name) => !/[\0\ud83d]$|\0/.test(name) && name.length <= 200),
  ])

async function addJobs(context: Opened, draws: Draws, count: number): Promise<Job[]> {
  const { book } = context
  const made: Job[] = []
  for (let place = 0; place < count; place += 1) {
    const words = () => oddWords(draws)
    const customer = { name: words(), address: words(), town: words(), phone: words(), email: words() }
    const spec = draws.one(exampleGates)
    const unit = draws.one(['mm', 'in'] as const)
    const due = draws.one([null, '2026-05-31', '2027-01-02'])
    const at = `20${draws.between(19, 26)}-0${draws.between(1, 9)}-11T09:00:00.000Z`
    const job = book.jobs.create({ customer, title: words(), due, unit, spec, at })
    const notes = { path: 'notes', value: words() }
    const stage = { path: 'stage', value: draws.one(stages) }
    const gap = { path: 'spec.boards.gap', value: draws.between(10, 60) / 10, typed: '1/8"' }
    const changed = book.jobs.change(job.id, [notes, stage, gap])
    if (!changed?.ok) throw new Error(JSON.stringify(changed))
    made.push(changed.value.job)
  }
  return made
}

function addPapers({ book, now }: Opened, draws: Draws, jobs: readonly Job[]): void {
  for (const { id: jobId, number, version, title, customer, due, notes } of jobs) {
    for (let revision = 1; revision <= draws.between(0, 2); revision += 1) {
      const issuedAt = now()
      const { id: _, ...who } = customer
      book.papers.issue({
        ...{
          jobId,
          version,
          kind: 'job-card',
          revision,
          format: draws.one(['a4', 'letter']),
          issuedAt,
          engine: '3',
        },
        spec: draws.one(exampleGates),
        figures: {
          'brace.single.angle': { value: 56.904, unit: '°', formula: 'θ', inputs: { H: 900 }, source: 'x' },
        },
        parts: { leaves: [], cuts: [], holes: [], checks: [] },
        header: { workshop: oddWords(draws), number, title, customer: who, due, notes, revision, issuedAt },
        pages: draws.between(1, 9),
        bytes: Uint8Array.from({ length: draws.between(1, 4000) }, () => draws.between(0, 255)),
      })
    }
  }
}

async function addMoney(context: OrderingBook, draws: Draws): Promise<void> {
  const { book, ask, items, supplier, jobs } = context
  const boards = items['boards'] ?? 0
  const other = book.prices.addSupplier({
    name: `Yard ${oddWords(draws)}`,
    phone: oddWords(draws),
    notes: oddWords(draws),
  })
  book.prices.supply({
    itemId: boards,
    supplierId: other.id,
    code: oddWords(draws).slice(0, 60),
    lengths: [],
    usual: false,
  })
  for (let rise = 0; rise < draws.between(1, 4); rise += 1) {
    const prices = [
      metrePrice(boards, supplier, { pence: pence(draws.between(100, 900)), startsOn: '2026-02-01' }),
      metrePrice(boards, other.id, { pence: pence(draws.between(100, 900)), startsOn: '2027-02-01' }),
    ]
    const added = book.rises.add({ prices, origin: `list ${oddWords(draws)}`, stamp: null })
    if (draws.between(0, 2) === 0 && added) book.rises.undo(added.id)
  }
  const [first] = jobs
  if (!first) return
  const overrules = { [`timber.${boards}`]: { quantity: draws.between(1, 99) / 10 } }
  const entry = {
    ...plainEntry,
    overrules,
    chosen: { [`x.${oddWords(draws).slice(0, 20)}`]: boards },
    kilometres: 12.5,
  }
  const { version } = await ask('jobs.open', { id: first.id })
  const paper = await ask('quotations.issue', { jobId: first.id, format: 'a4', version })
  if (draws.between(0, 1) === 0)
    await ask('quotations.accept', {
      paperId: paper.id,
      option: 0,
      acceptedOn: '2026-03-01',
      note: oddWords(draws),
    })
  await ask('options.add', {
    jobId: first.id,
    option: { name: oddWords(draws).slice(0, 60), spec: null, entry },
  })
  await ask('options.add', {
    jobId: first.id,
    option: { name: 'Oak', spec: draws.one(exampleGates), entry: plainEntry },
  })
  await ask('workDone.add', {
    ...{ jobId: first.id, what: 'hours', group: 'making', operation: oddWords(draws).slice(0, 60) },
    ...{ quantity: -draws.between(1, 50) / 8, note: oddWords(draws), on: '2026-03-04' },
  })
}

async function addTimber(context: OrderingBook, draws: Draws): Promise<void> {
  const { ask, jobs, items } = context
  const itemId = items['boards'] ?? 0
  await ask('rack.add', {
    ...{ itemId, length: 1234.5, count: draws.between(1, 4), place: oddWords(draws).slice(0, 60) },
    ...{ jobId: jobs[0]?.id ?? null, note: oddWords(draws).slice(0, 300) },
  })
  const order = await placed(context, jobs.slice(0, 1))
  if (draws.between(0, 2) === 0) {
    await ask('orders.cancel', { id: order.id })
    await placed(context, jobs.slice(0, 1))
  } else {
    const { lengths } = await receivedWhole(context, order)
    for (const { id: lengthId, offcut } of lengths.slice(0, draws.between(0, lengths.length)))
      await ask('orders.cut', {
        id: order.id,
        lengthId,
        count: 1,
        offcuts: offcut >= 50 ? [{ length: offcut, place: oddWords(draws).slice(0, 60) }] : [],
        cutOn: '2026-03-10',
      })
  }
  if (draws.between(0, 1) === 0 && jobs.length > 1) await placed(context, jobs.slice(1, 2))
  const free = (await ask('rack.list', {})).filter(({ keptFor }) => keptFor === null)
  for (const { id } of free.slice(0, 1)) await ask('rack.take', { ids: [id], why: 'scrapped' })
  if (free[1])
    await ask('rack.change', {
      id: free[1].id,
      length: 1200.25,
      place: oddWords(draws).slice(0, 60),
      note: '',
    })
  if (idsOf(jobs).length === 0) throw new Error('no jobs')
}

/** Notes by day, one mended and one taken away, and photographs. */
async function addNotes({ ask }: Opened, draws: Draws, jobs: readonly Job[]): Promise<void> {
  const day = { on: '2026-03-05', at: '14:05' }
  for (const { id: jobId } of jobs) {
    const first = await ask('notes.add', { jobId, words: `Ring. ${oddWords(draws)}`, ...day })
    const second = await ask('notes.add', { jobId, words: `Rang. ${oddWords(draws)}`, ...day })
    await ask('notes.mend', {
      id: first.id,
      words: `Rung. ${oddWords(draws)}`,
      on: '2026-03-06',
      at: '08:00',
    })
    if (draws.between(0, 1) === 0) await ask('notes.putAway', { id: second.id, away: true })
    const words = oddWords(draws).slice(0, 300)
    const photograph = await ask('photographs.add', { jobId, ...smallPhotograph, words })
    await ask('photographs.add', { jobId, ...smallPhotograph, words: '' })
    if (draws.between(0, 1) === 0) await ask('photographs.putAway', { id: photograph.id, away: true })
  }
}

/** A book of every kind of thing, drawn from a seed, behind the handlers. */
export async function seededBook(
  seed: number,
  given: Parameters<typeof opened>[0] = {},
): Promise<OrderingBook> {
  const draws = seeded(seed)
  const context = await orderingBook(2, opened(given))
  await context.ask('settings.change', { name: oddWords(draws), unit: draws.one(['mm', 'in'] as const) })
  await addMoney(context, draws)
  const jobs = await addJobs(context, draws, draws.between(1, 6))
  addPapers(context, draws, jobs)
  await addTimber(context, draws)
  await addNotes(context, draws, jobs)
  return context
}

/** Words of any signs at all, for properties. */
export const anyWords = fc.string({ unit: 'binary', maxLength: 400 })
