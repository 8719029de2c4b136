import type { LengthUnit } from '../job/job.ts'
import { paperDate } from '../papers/paperDate.ts'
import { changeTold, inSittings, oneSitting, quoted, type KeptEntry } from './changeTold.ts'
import type { Happening } from './happening.ts'

/** Everything of a job that something can be told from, each list oldest first. Days and moments are ISO. */
export type JobPast = {
  number: string
  createdAt: string
  unit: LengthUnit
  changes: readonly KeptEntry[]
  papers: readonly { kind: 'job-card' | 'quotation'; revision: number; at: string }[]
  acceptances: readonly { revision: number; on: string; note: string; at: string }[]
  orders: readonly { number: string; at: string; cancelledAt: string | null; lengths: number }[]
  /** Lengths that came (of those bought) or were cut, of an order. */
  received: readonly { number: string; count: number; on: string; at: string }[]
  cut: readonly { number: string; count: number; on: string; at: string }[]
  /** quantity: hours, metres or pence, as what says. */
  work: readonly { what: 'hours' | 'timber' | 'cost'; quantity: number; note: string; at: string }[]
  notes: readonly { words: string; at: string }[]
  photographs: readonly { at: string }[]
}

const several = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`

/** Rows that follow each other closely and are alike, as one: each run's rows. */
function runs<T extends { at: string }>(rows: readonly T[], alike: (a: T, b: T) => boolean): T[][] {
  const found: T[][] = []
  for (const row of rows) {
    const last = found.at(-1)?.at(-1)
    if (last && alike(last, row) && Date.parse(row.at) - Date.parse(last.at) <= oneSitting)
      found.at(-1)?.push(row)
    else found.push([row])
  }
  return found
}

const lastOf = <T>(rows: readonly T[]): T => {
  const last = rows.at(-1)
  if (last === undefined) throw new Error('a run of none')
  return last
}

/** Timber that came for an order, all rows of a delivery together, with how much is there in all. */
function receivedTold({ orders, received }: JobPast): Happening[] {
  const sums = new Map<string, number>()
  return runs(received, (a, b) => a.number === b.number && a.on === b.on).map((run) => {
    const { number, at } = lastOf(run)
    const count = run.reduce((sum, row) => sum + row.count, 0)
    const there = (sums.get(number) ?? 0) + count
    sums.set(number, there)
    const of = orders.find((order) => order.number === number)?.lengths ?? there
    const rest = there >= of ? 'all of it is here' : `${there} of ${of} are here`
    return {
      at,
      kind: 'timber',
      words: `Timber of order ${number} came: ${several(count, 'length')}, ${rest}`,
    }
  })
}

const cutTold = ({ cut }: JobPast): Happening[] =>
  runs(cut, (a, b) => a.number === b.number).map((run) => ({
    at: lastOf(run).at,
    kind: 'timber',
    words: `Timber of order ${lastOf(run).number} cut: ${several(
      run.reduce((sum, row) => sum + row.count, 0),
      'length',
    )}`,
  }))

const ordersTold = ({ orders }: JobPast): Happening[] =>
  orders.flatMap(({ number, at, cancelledAt }): Happening[] => [
    { at, kind: 'timber', words: `Timber ordered, order ${number}` },
    ...(cancelledAt === null
      ? []
      : [{ at: cancelledAt, kind: 'timber' as const, words: `Order ${number} cancelled` }]),
  ])

const papersTold = ({ papers, acceptances }: JobPast): Happening[] => [
  ...papers.map(({ kind, revision, at }): Happening => ({
    at,
    kind: 'papers',
    words: kind === 'quotation' ? `Quotation ${revision} issued, to send` : `Card ${revision} issued`,
  })),
  ...acceptances.map(({ revision, on, note, at }): Happening => ({
    at,
    kind: 'papers',
    words: `Quotation ${revision} accepted on ${paperDate(on)}${note === '' ? '' : `: ${quoted(note)}`}`,
  })),
]

const plain = (value: number): string => String(Math.round(value * 100) / 100)

/** What was used, by what it is counted in; a sum stands without a sign of money, as the log knows of none. */
const amounts: Record<JobPast['work'][number]['what'], (quantity: number) => string> = {
  hours: (hours) => `It took ${several(Number(plain(hours)), 'hour')}`,
  timber: (metres) => `It took ${plain(metres)} m of timber`,
  cost: (pence) => `It cost ${(pence / 100).toFixed(2)}`,
}

const workTold = ({ work }: JobPast): Happening[] =>
  work.map(({ what, quantity, note, at }) => ({
    at,
    kind: 'work',
    words: `${amounts[what](quantity)}${note === '' ? '' : `: ${quoted(note)}`}`,
  }))

const notesTold = ({ notes, photographs }: JobPast): Happening[] => [
  ...notes.map(({ words, at }): Happening => ({ at, kind: 'notes', words: `Note: ${quoted(words)}` })),
  ...runs(photographs, () => true).map((run): Happening => ({
    at: lastOf(run).at,
    kind: 'photographs',
    words: run.length === 1 ? 'A photograph added' : `${run.length} photographs added`,
  })),
]

/**
 * What happened when on a job, oldest first: told from what is kept of it, so that there is nothing to go out of step. Many keys in one
 * entry within minutes are one line.
 */
export function whatHappened(past: JobPast): Happening[] {
  const { number, createdAt, unit, changes } = past
  const begun: Happening = { at: createdAt, kind: 'job', words: `Job ${number} started` }
  const changed = inSittings(changes).flatMap((change) => changeTold(change, unit) ?? [])
  const told = [
    changed,
    papersTold(past),
    ordersTold(past),
    receivedTold(past),
    cutTold(past),
    workTold(past),
    notesTold(past),
  ]
  // A stable sort: what was kept at one moment stays in the order it was told in.
  return [begun, ...told.flat()].sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0))
}
