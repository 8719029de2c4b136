import { writeSync } from 'node:fs'
import { dirname, join } from 'node:path'
import Sqlite from 'better-sqlite3'
import { connect } from '../../db/connection.ts'
import { customersRoom } from '../../db/customers.ts'
import { jobsRoom } from '../../db/jobs.ts'
import type { OpenedBook } from '../../electron/openedBook.ts'
import { buyingPlan } from '../../shared/cutting/buyingPlan/plan.ts'
import { digestOf } from './bookDigest.ts'
import { asked, carried, type Prepared } from './workshopBook.ts'

/**
 * Run under the recorder: does a workshop's work on a prepared book through the program's own requests. After each it says the request's place, which
 * is its word that it is kept, then what the book holds. `node bookWork.ts HOW BOOK TURNS PREPARED`; HOW is 'open' (opens and closes only),
 * 'work', 'keep' or 'held' (copies made here and on a stick, and brought back; held: while another program looks into the book), or 'loose': edits with `synchronous = NORMAL`, which the program never has.
 */
const [how = '', path = '', turns = '1', given = '{}'] = process.argv.slice(2)
const prepared = JSON.parse(given) as Prepared

type Step = (open: OpenedBook, turn: number) => Promise<unknown>

/** What a step of keeping gives its word for besides: a copy that is there from now on, or that the book which was open is kept. */
type Kept = { copy?: string; replaced?: true }

const jobFor = (turn: number): number => prepared.jobs[turn % prepared.jobs.length] ?? 0
const edit =
  (path: string, value: (turn: number) => unknown): Step =>
  (open, turn) =>
    asked(open, 'jobs.change', { id: jobFor(turn), changes: [{ path, value: value(turn) }] })

const issue =
  (name: 'papers.issue' | 'quotations.issue'): Step =>
  async (open, turn) => {
    const { id, version } = await asked(open, 'jobs.open', { id: jobFor(turn) })
    return asked(open, name, { jobId: id, format: 'a4', version })
  }

/** Six thousand prices, which are written in three pieces: those of one line from day to day. */
async function rise(open: OpenedBook, turn: number): Promise<unknown> {
  const lines = Array.from({ length: 6000 }, (_, place) => ({
    ...{ itemId: Object.values(prepared.items)[place % 3] ?? 0, supplierId: prepared.supplier },
    ...{ unit: 'metre', size: null, pence: 200 + place + turn },
    startsOn: new Date(Date.UTC(2027, 0, 1 + turn * 2000 + Math.floor(place / 3))).toISOString().slice(0, 10),
  }))
  const { stamp } = await asked(open, 'prices.preview', { prices: lines })
  return asked(open, 'prices.apply', { prices: lines, origin: `rise ${turn}`, stamp })
}

async function order(open: OpenedBook, turn: number): Promise<unknown> {
  const jobIds = [jobFor(turn)]
  const { stamp, requests } = await asked(open, 'orders.task', { jobIds })
  const plan = requests.paired ? buyingPlan(requests.paired) : undefined
  if (!plan?.ok) throw new Error(`no plan: ${JSON.stringify(plan)}`)
  return asked(open, 'orders.place', { jobIds, stamp, paired: true, plan: plan.value, note: `turn ${turn}` })
}

const steps: Step[] = [
  ...Array.from({ length: 8 }, (_, place) => edit('spec.size.width', (turn) => 800 + 7 * place + turn / 2)),
  (open, turn) =>
    asked(open, 'jobs.create', {
      ...{ customerName: `Ned Mullion ${turn}`, town: 'Much Test', phone: '', title: 'Yard door', due: null },
    }),
  edit('notes', (turn) => `hang it before the ${turn}th; `.repeat(40)),
  issue('papers.issue'),
  order,
  issue('quotations.issue'),
  (open, turn) =>
    asked(open, 'rack.add', {
      ...{
        itemId: prepared.items['boards'],
        length: 700 + turn,
        count: 2,
        place: 'door',
        jobId: null,
        note: '',
      },
    }),
  (open, turn) => asked(open, 'settings.change', { name: `Bench ${turn}` }),
  rise,
  edit('title', (turn) => `Side gate, turn ${turn}`),
]

const copiesOf = 'jobs-copies'
const bringBack =
  (name: string) =>
  async (open: OpenedBook): Promise<Kept> => {
    await asked(open, 'keeping.restore', { name })
    return { replaced: true }
  }

/** Edits among the copies, so that each book that is put aside holds something of its own. */
const keepingSteps: ((open: OpenedBook, turn: number) => Promise<Kept>)[] = [
  ...[0, 1, 2].map((place) => async (open: OpenedBook, turn: number): Promise<Kept> => {
    await edit('spec.size.width', () => 700 + 11 * place + turn)(open, turn)
    return {}
  }),
  async (open) => ({ copy: `${copiesOf}/${(await asked(open, 'keeping.copy', {})).name}` }),
  async (open, turn) => {
    await edit('title', () => `Side gate, kept ${turn}`)(open, turn)
    return {}
  },
  async (open) => {
    const folder = join(dirname(path), 'stick')
    return { copy: `stick/${(await asked(open, 'keeping.backUp', { folder })).name}` }
  },
  bringBack('2026-02-28 17.00.00 closing.book'),
  async (open, turn) => {
    await edit('notes', () => `brought back, turn ${turn}`)(open, turn)
    return {}
  },
  bringBack('2026-02-27 17.00.00 closing.book'),
]

const say = (words: object): void => void writeSync(1, `${JSON.stringify(words)}\n`)

/** What the book holds, seen by another reader than the program. */
function holdsOf(): () => string {
  const db = new Sqlite(path, { readonly: true })
  return () => digestOf(db)
}

async function work(): Promise<void> {
  const open = await carried(path)
  const holds = holdsOf()
  say({ holds: holds() })
  for (let turn = 1; turn <= Number(turns); turn += 1)
    for (const step of steps) {
      await step(open, turn)
      say({ kept: true })
      say({ holds: holds() })
    }
  await open.close()
}

/** What the book holds, seen by a reader that comes and goes: the book's name may lead to another file now. */
function holdsNow(): string {
  const db = new Sqlite(path, { readonly: true })
  try {
    return digestOf(db)
  } finally {
    db.close()
  }
}

/** Looks into the book and goes on looking, so that what was last written stays in its own file. */
function lookOn(): void {
  const other = new Sqlite(path, { readonly: true })
  other.exec('BEGIN')
  other.prepare('SELECT count(*) FROM jobs').get()
}

async function keep(): Promise<void> {
  const open = await carried(path)
  say({ holds: holdsNow() })
  for (let turn = 1; turn <= Number(turns); turn += 1)
    for (const step of keepingSteps) {
      if (how === 'held') lookOn()
      say({ kept: true, ...(await step(open, turn)) })
      say({ holds: holdsNow() })
    }
  await open.close()
}

function workLoosely(): void {
  const connection = connect(path, () => '2026-03-02T08:00:00.000Z')
  connection.db.pragma('synchronous = NORMAL')
  const jobs = jobsRoom(connection, customersRoom(connection))
  const holds = holdsOf()
  say({ holds: holds() })
  for (let turn = 1; turn <= Number(turns); turn += 1) {
    jobs.change(jobFor(turn), [{ path: 'spec.size.width', value: 800 + turn }])
    say({ kept: true })
    say({ holds: holds() })
  }
}

if (how === 'loose') workLoosely()
else if (how === 'work') await work()
else if (how === 'keep' || how === 'held') await keep()
else await (await carried(path)).close()
