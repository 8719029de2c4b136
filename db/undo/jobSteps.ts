import { parseDraft } from '../../shared/gate/parseSpec.ts'
import type { Customer, Job } from '../../shared/job/job.ts'
import { valueAt } from '../../shared/job/specPath.ts'
import { entryOf, keysOf, type Cells } from '../../shared/undo/step.ts'
import type { Connection } from '../connection.ts'
import { customersRoom } from '../customers.ts'
import { jobStatements } from '../jobStatements.ts'
import { jobWriting } from '../jobWriting.ts'
import { wordsKept } from '../noteWords.ts'
import { searchRoom } from '../search.ts'
import { withCells, type Settled, type Turned } from './cells.ts'
import { Refused } from './refused.ts'

const cellsOf = ({ title, stage, due, notes, unit, entry }: Job): Cells => ({
  ...{ title, stage, due, notes, unit },
  entry: { spec: entry.spec, typed: entry.typed },
})

/** The path that the log of a job's changes names a cell by: 'spec.size.width', 'typed.size.width', 'stage'. */
const loggedPath = (name: string): string => {
  const [, root] = keysOf(name)
  return name.startsWith('entry.') ? `${root}.${entryOf(name)}` : name
}

function readWhole(job: Job, entry: unknown): Job['entry'] {
  const spec = parseDraft(valueAt(entry, ['spec']))
  if (!spec.ok)
    throw new Refused(
      `The gate of job ${job.number} was changed too far since; set this entry right by hand.`,
    )
  const typed = valueAt(entry, ['typed'])
  return { spec: spec.value, typed: typed as Job['entry']['typed'] }
}

const statements = ({ db }: Connection) => ({
  putAway: db.prepare('UPDATE jobs SET put_away = ?, version = version + 1, updated_at = ? WHERE id = ?'),
  papers: db.prepare<[unknown], number>('SELECT count(*) FROM papers WHERE job_id = ?').pluck(),
  order: db
    .prepare<[unknown], string>(
      `SELECT orders.number FROM order_jobs JOIN orders ON orders.id = order_jobs.order_id
       WHERE order_jobs.job_id = ? AND orders.cancelled_at IS NULL`,
    )
    .pluck(),
  customer: db.prepare<[unknown], Customer>(
    'SELECT id, name, address, town, phone, email FROM customers WHERE id = ?',
  ),
  jobsOf: db.prepare<[number], { id: number }>('SELECT id FROM jobs WHERE customer_id = ? AND put_away = 0'),
})

/** What jobs are taken back with: their rooms and the words they are found by. */
function jobDesk(connection: Connection) {
  const customers = customersRoom(connection)
  const run = jobStatements(connection)
  const words = searchRoom(connection)
  const { stored, rewrite } = jobWriting(connection, customers, run)
  const there = (id: unknown, of: string): Job => {
    const job = typeof id === 'number' ? stored(id) : undefined
    if (!job) throw new Refused(`Job ${of} isn’t in the job book any more.`)
    return job
  }
  const keepWords = wordsKept(connection.db, words, run)
  return { connection, customers, run, words, keepWords, rewrite, there, ask: statements(connection) }
}

type Desk = ReturnType<typeof jobDesk>

const changing =
  ({ there, rewrite }: Desk) =>
  (step: Turned, settled: Settled): void => {
    const before = there(step.key['id'], step.of)
    const cells = cellsOf(before)
    const { row, moved } = withCells(cells, step, settled)
    if (moved.length === 0) return
    const { title, stage, due, notes, unit } = row as Pick<Job, 'title' | 'stage' | 'due' | 'notes' | 'unit'>
    const after = { ...before, title, stage, due, notes, unit, entry: readWhole(before, row['entry']) }
    const kept = moved.map((name) => ({
      path: loggedPath(name),
      before: valueAt(cells, keysOf(name)) ?? null,
      after: valueAt(row, keysOf(name)) ?? null,
    }))
    rewrite(before, after, kept)
  }

/** A job is put away, unless papers were issued for it or its timber is on order. */
const puttingAway =
  ({ there, words, ask, connection }: Desk) =>
  ({ key, of, from }: Turned): void => {
    const job = there(key['id'], of)
    const brought = Number(from?.['papers'] ?? 0)
    if ((ask.papers.get(job.id) ?? 0) > brought)
      throw new Refused(
        `Papers were issued for job ${job.number}, and issued papers stand; so the job stays too.`,
      )
    const ordered = ask.order.get(job.id)
    if (ordered !== undefined)
      throw new Refused(`The timber of job ${job.number} is on order ${ordered}; cancel that order first.`)
    ask.putAway.run(1, connection.now(), job.id)
    words.forgetJob(job.id)
  }

const changingCustomer =
  ({ connection, customers, run, keepWords, ask }: Desk) =>
  (step: Turned, settled: Settled): void => {
    const { now } = connection
    const found = ask.customer.get(step.key['id'])
    if (!found) throw new Refused('This customer isn’t in the job book any more.')
    const { row, moved } = withCells({ ...found }, step, settled)
    if (moved.length === 0) return
    customers.rewrite({ ...found, ...row })
    for (const { id } of ask.jobsOf.all(found.id)) {
      run.touch.run(now(), id)
      for (const name of moved) {
        const [before, after] = [found[name as keyof Customer], row[name]].map((cell) => JSON.stringify(cell))
        run.log.run(id, `customer.${name}`, before ?? 'null', after ?? 'null', now())
      }
      keepWords(id)
    }
  }

/** How jobs and customers are taken back and done again: with the log of the job's changes, so that its history stays true, and the words it is found by. */
export function jobSteps(connection: Connection) {
  const desk = jobDesk(connection)
  const { ask, keepWords, there } = desk
  return {
    change: changing(desk),
    away: puttingAway(desk),
    comeBack: ({ key, of }: Turned): void => {
      ask.putAway.run(0, connection.now(), key['id'])
      keepWords(there(key['id'], of).id)
    },
    changeCustomer: changingCustomer(desk),
  }
}
