import type { KindOfYear, MonthOfYear } from '../shared/job/yearBook.ts'
import type { Connection } from './connection.ts'

/** starts: the moments (ISO) at which the twelve months begin and the next year does, by the workshop's own calendar. */
export type YearAsked = { year: number; starts: string[] }

export type YearRoom = {
  /** A year added up, a step at a time: no step reads more than some thousand rows. */
  steps: (asked: YearAsked) => Generator<void, { months: MonthOfYear[]; kinds: KindOfYear[] }>
  /** The first and the last moment (ISO) or day that a job was begun or is promised; null in an empty book. */
  reach: () => { first: string; last: string; promised: string | null } | null
}

type Kind = Omit<KindOfYear, 'begun' | 'hung'>
type StoredKind = { construction: string; leaves: number | null; stable: number; count: number }
type Span = [from: string, until: string]

const rowsAtOnce = 4000
const kindColumns = `jobs.construction, json_extract(jobs.entry, '$.spec.leaves') AS leaves,
  ifnull(json_type(jobs.entry, '$.spec.stable') = 'object', 0) AS stable`

const statements = ({ db }: Connection) => ({
  begun: db.prepare<Span, StoredKind>(
    `SELECT ${kindColumns}, count(*) AS count FROM jobs WHERE created_at >= ? AND created_at < ? AND jobs.put_away = 0 GROUP BY 1, 2, 3`,
  ),
  promised: db.prepare<[number, number, string, string], { due: string }>(
    'SELECT due FROM jobs WHERE id > ? AND id <= ? AND due >= ? AND due < ? AND put_away = 0',
  ),
  // The last that a job's stage was moved to, so that one taken back from hung isn't counted.
  hung: db.prepare<[number, number, string, string], StoredKind & { at: string }>(
    `SELECT changes.at, ${kindColumns}, 1 AS count FROM changes JOIN jobs ON jobs.id = changes.job_id
     WHERE changes.id > ? AND changes.id <= ? AND changes.path = 'stage' AND changes.after = '"hung"' AND changes.at >= ? AND changes.at < ? AND jobs.put_away = 0
       AND NOT EXISTS (SELECT 1 FROM changes AS later WHERE later.job_id = changes.job_id AND later.path = 'stage' AND later.id > changes.id)`,
  ),
  worth: db.prepare<Span, number>(
    `SELECT ifnull(sum(json_extract(papers.money, '$.options[' || acceptances.option_place || '].estimate.net')), 0)
     FROM acceptances JOIN papers ON papers.id = acceptances.paper_id
     WHERE acceptances.accepted_on >= ? AND acceptances.accepted_on < ?
       AND NOT EXISTS (SELECT 1 FROM papers AS other CROSS JOIN acceptances AS later ON later.paper_id = other.id
         WHERE other.job_id = papers.job_id AND (later.added_at, later.paper_id) > (acceptances.added_at, acceptances.paper_id))`,
  ),
  timber: db.prepare<Span, number>(
    'SELECT ifnull(sum(cost_pence), 0) FROM orders WHERE placed_on >= ? AND placed_on < ? AND cancelled_at IS NULL',
  ),
  lastJob: db.prepare<[], number>('SELECT ifnull(max(id), 0) FROM jobs').pluck(),
  lastChange: db.prepare<[], number>('SELECT ifnull(max(id), 0) FROM changes').pluck(),
  reach: db.prepare<[], { first: string | null; last: string | null; promised: string | null }>(
    `SELECT (SELECT min(created_at) FROM jobs) AS first, (SELECT max(created_at) FROM jobs) AS last,
       (SELECT max(due) FROM jobs WHERE stage <> 'hung' AND put_away = 0) AS promised`,
  ),
})

/** The kinds met in a year, counted under what makes a kind. */
function kindsCount() {
  const kinds = new Map<string, KindOfYear>()
  const add = ({ construction, leaves, stable, count }: StoredKind, what: 'begun' | 'hung'): void => {
    const kind: Kind = { construction, leaves: leaves ?? 1, stable: stable === 1 }
    const key = JSON.stringify(kind)
    const known = kinds.get(key) ?? { ...kind, begun: 0, hung: 0 }
    kinds.set(key, { ...known, [what]: known[what] + count })
  }
  const all = (): KindOfYear[] =>
    [...kinds.values()].sort(
      (a, b) => b.begun + b.hung - a.begun - a.hung || (a.construction < b.construction ? -1 : 1),
    )
  return { add, all }
}

const emptyMonth = (): MonthOfYear => ({ begun: 0, promised: 0, hung: 0, worthPence: 0, timberPence: 0 })
const two = (number: number): string => String(number).padStart(2, '0')

/** The first day of a year's month from 0, or of the next year's January for 12. */
const firstOf = (year: number, month: number): string =>
  month === 12 ? `${year + 1}-01-01` : `${year}-${two(month + 1)}-01`

/** Runs of row numbers up to the last, each short enough for one step. */
const runs = (last: number): [number, number][] =>
  Array.from({ length: Math.ceil(last / rowsAtOnce) }, (_, place) => [
    place * rowsAtOnce,
    (place + 1) * rowsAtOnce,
  ])

type Sums = { months: MonthOfYear[]; kinds: ReturnType<typeof kindsCount> }
type Statements = ReturnType<typeof statements>

/** What one month's own questions answer: jobs begun, and the money of it. */
function* monthSteps(run: Statements, { year, starts }: YearAsked, { months, kinds }: Sums): Generator<void> {
  for (const [place, month] of months.entries()) {
    for (const found of run.begun.all(starts[place] ?? '', starts[place + 1] ?? '')) {
      month.begun += found.count
      kinds.add(found, 'begun')
    }
    yield
    const days: Span = [firstOf(year, place), firstOf(year, place + 1)]
    month.worthPence = run.worth.pluck().get(...days) ?? 0
    month.timberPence = run.timber.pluck().get(...days) ?? 0
    yield
  }
}

function* promisedSteps(run: Statements, { year }: YearAsked, { months }: Sums): Generator<void> {
  for (const [after, upTo] of runs(run.lastJob.get() ?? 0)) {
    for (const { due } of run.promised.all(after, upTo, firstOf(year, 0), firstOf(year, 12))) {
      const month = months[Number(due.slice(5, 7)) - 1]
      if (month) month.promised += 1
    }
    yield
  }
}

function* hungSteps(run: Statements, { starts }: YearAsked, { months, kinds }: Sums): Generator<void> {
  for (const [after, upTo] of runs(run.lastChange.get() ?? 0)) {
    for (const found of run.hung.all(after, upTo, starts[0] ?? '', starts[12] ?? '')) {
      const month = months[starts.findLastIndex((start) => start <= found.at)]
      if (month) month.hung += 1
      kinds.add(found, 'hung')
    }
    yield
  }
}

/** The same steps, each of them one reading of the book. */
function* reading(connection: Connection, steps: Generator<void>): Generator<void> {
  while (!connection.read(() => steps.next()).done) yield
}

/** The room of the years. */
export function yearRoom(connection: Connection): YearRoom {
  const run = statements(connection)
  return {
    *steps(asked) {
      const sums: Sums = { months: Array.from({ length: 12 }, emptyMonth), kinds: kindsCount() }
      for (const steps of [monthSteps, promisedSteps, hungSteps])
        yield* reading(connection, steps(run, asked, sums))
      return { months: sums.months, kinds: sums.kinds.all() }
    },
    reach: () => {
      const { first, last, promised } = connection.read(() => run.reach.get()) ?? {}
      return first && last ? { first, last, promised: promised ?? null } : null
    },
  }
}
