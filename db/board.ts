import {
  mostInColumn,
  type Board,
  type BoardCard,
  type BoardColumn,
  type BoardOrder,
} from '../shared/job/board.ts'
import { promiseSpans, spanDays, type PromiseSpan } from '../shared/job/dueSpan.ts'
import { stages, type Stage } from '../shared/job/job.ts'
import type { Connection } from './connection.ts'
import { filterSql } from './jobFilter.ts'
import { rowColumns, rowFrom, type StoredRow } from './jobRows.ts'

export type BoardRoom = {
  /** The work in hand as it stands on a day (ISO). Asks for what lies in hand only, so the years before cost nothing. */
  read: (by: BoardOrder, today: string) => Board
}

type StoredCard = StoredRow & { carded: number; quotedUntil: string | null }

const stagesInHand = stages.filter((stage) => stage !== 'hung')

const cardColumns = `${rowColumns},
  EXISTS (SELECT 1 FROM papers WHERE papers.job_id = jobs.id AND papers.kind = 'job-card') AS carded,
  (SELECT papers.valid_until FROM papers WHERE papers.job_id = jobs.id AND papers.kind = 'quotation'
   ORDER BY papers.revision DESC LIMIT 1) AS quotedUntil`

/** Cards of jobs that are picked first and filled out then. */
const cards = (where: string, order: string): string =>
  `WITH picked AS (SELECT id FROM jobs WHERE jobs.stage <> 'hung' AND jobs.put_away = 0 AND ${where} ORDER BY ${order} LIMIT @most)
   SELECT ${cardColumns} FROM picked CROSS JOIN jobs ON jobs.id = picked.id CROSS JOIN customers ON customers.id = jobs.customer_id ORDER BY ${order}`

const newestFirst = 'jobs.created_at DESC, jobs.id DESC'
const soonestFirst = 'jobs.due, jobs.number'
const within =
  'jobs.due IS NOT NULL AND jobs.due >= ifnull(@from, jobs.due) AND jobs.due <= ifnull(@upTo, jobs.due)'

const cardFrom = ({ carded, quotedUntil, ...row }: StoredCard): BoardCard => ({
  ...rowFrom(row),
  carded: carded === 1,
  quotedUntil,
})

const statements = ({ db }: Connection) => ({
  any: db.prepare<[], number>('SELECT EXISTS (SELECT 1 FROM jobs WHERE put_away = 0)').pluck(),
  stages: db.prepare<[string], { stage: Stage; count: number }>(
    `SELECT stage, count(*) AS count FROM jobs WHERE stage IN (SELECT value FROM json_each(?)) AND put_away = 0 GROUP BY stage`,
  ),
  // The plus keeps the stages' own index out of it: those late are few.
  late: db.prepare<[string], { stage: Stage; count: number }>(
    `SELECT stage, count(*) AS count FROM jobs WHERE stage <> 'hung' AND due < ? AND put_away = 0 GROUP BY +stage`,
  ),
  stageDated: db.prepare<[{ stage: Stage; most: number }], StoredCard>(
    cards('+jobs.stage = @stage AND jobs.due IS NOT NULL', soonestFirst),
  ),
  stageUndated: db.prepare<[{ stage: Stage; most: number }], StoredCard>(
    cards('jobs.stage = @stage AND jobs.due IS NULL', newestFirst),
  ),
  spanDated: db.prepare<[{ from: string | null; upTo: string | null; most: number }], StoredCard>(
    cards(within, soonestFirst),
  ),
  undated: db.prepare<[{ most: number }], StoredCard>(cards('jobs.due IS NULL', 'jobs.number DESC')),
})

type Statements = ReturnType<typeof statements>

/** How many jobs in hand stand in each span: one short question a span. */
function spanCounts({ db }: Connection): (today: string) => Record<PromiseSpan, number> {
  return (today) => {
    const count = (span: PromiseSpan): number => {
      const { sql, given } = filterSql({ inHand: true, due: spanDays(span, today) })
      return (
        db
          .prepare<[typeof given], number>(`SELECT count(*) FROM jobs WHERE jobs.put_away = 0${sql}`)
          .pluck()
          .get(given) ?? 0
      )
    }
    const [late, thisWeek, nextWeek, later, noDay] = promiseSpans.map(count)
    return {
      ...{ late: late ?? 0, 'this week': thisWeek ?? 0, 'next week': nextWeek ?? 0 },
      ...{ later: later ?? 0, 'no day': noDay ?? 0 },
    }
  }
}

/** A column for each stage but the last: those promised first, then the newest of the others. */
function byStage(run: Statements, today: string): BoardColumn[] {
  const counts = new Map(run.stages.all(JSON.stringify(stagesInHand)).map((one) => [one.stage, one.count]))
  const late = new Map(run.late.all(today).map((one) => [one.stage, one.count]))
  return stagesInHand.map((stage) => {
    const dated = run.stageDated.all({ stage, most: mostInColumn })
    const most = mostInColumn - dated.length
    const others = most > 0 ? run.stageUndated.all({ stage, most }) : []
    return {
      ...{ of: stage, count: counts.get(stage) ?? 0, late: late.get(stage) ?? 0 },
      cards: [...dated, ...others].map(cardFrom),
    }
  })
}

function byDay(run: Statements, today: string, spans: Record<PromiseSpan, number>): BoardColumn[] {
  return promiseSpans.map((span) => {
    const days = spanDays(span, today)
    const found =
      days === 'none'
        ? run.undated.all({ most: mostInColumn })
        : run.spanDated.all({ from: days.from ?? null, upTo: days.upTo ?? null, most: mostInColumn })
    const count = spans[span]
    return { of: span, count, late: span === 'late' ? count : 0, cards: found.map(cardFrom) }
  })
}

/** The room of the work in hand. */
export function boardRoom(connection: Connection): BoardRoom {
  const run = statements(connection)
  const counted = spanCounts(connection)
  const board = (by: BoardOrder, today: string): Board => {
    const spans = counted(today)
    const inHand = promiseSpans.reduce((sum, span) => sum + spans[span], 0)
    const columns = by === 'stage' ? byStage(run, today) : byDay(run, today, spans)
    return { today, empty: run.any.get() !== 1, inHand, spans, columns }
  }
  return { read: (by, today) => connection.read(() => board(by, today)) }
}
