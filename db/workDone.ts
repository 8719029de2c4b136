import type { FinishedJob } from '../shared/pricing/estimateRecord.ts'
import type { WorkDone } from '../shared/pricing/workDone.ts'
import type { Connection } from './connection.ts'
import type { QuotationsRoom } from './quotations.ts'

export type WorkDoneRoom = {
  /** What was entered on a job, in the order of its days. */
  list: (jobId: number) => WorkDone[]
  one: (id: number) => WorkDone | undefined
  add: (done: Omit<WorkDone, 'id'>) => WorkDone
  remove: (id: number) => boolean
  /**
   * Each of the newest 1000 jobs with work entered that was quoted, with the estimate it was sold on: of the option accepted, else the first. A step at a
   * time, since each estimate is read out of its quotation.
   */
  finishedSteps: () => Generator<void, FinishedJob[]>
}

/** Estimates are set right by what jobs took lately: older ones were made with other hands and other saws. */
const mostFinished = 1000

const columns = 'id, job_id AS jobId, what, work_group AS "group", operation, quantity, note, done_on AS "on"'

const statements = ({ db }: Connection) => ({
  list: db.prepare<[number], WorkDone>(
    `SELECT ${columns} FROM work_done WHERE job_id = ? ORDER BY done_on, id`,
  ),
  one: db.prepare<[number], WorkDone>(`SELECT ${columns} FROM work_done WHERE id = ?`),
  add: db.prepare(
    `INSERT INTO work_done (job_id, what, work_group, operation, quantity, note, done_on, added_at) VALUES (?, ?, ?, ?, ?, ?, ?, ?)`,
  ),
  remove: db.prepare('DELETE FROM work_done WHERE id = ?'),
  jobs: db.prepare<[number], { jobId: number }>(
    'SELECT DISTINCT job_id AS jobId FROM work_done JOIN jobs ON jobs.id = job_id WHERE jobs.put_away = 0 ORDER BY job_id DESC LIMIT ?',
  ),
})

/** The room of what jobs really took. */
export function workDoneRoom(connection: Connection, quotations: QuotationsRoom): WorkDoneRoom {
  const { now, read, write } = connection
  const run = statements(connection)
  const list = (jobId: number): WorkDone[] => read(() => run.list.all(jobId))
  const one = (id: number): WorkDone | undefined => read(() => run.one.get(id))
  const add = (done: Omit<WorkDone, 'id'>): WorkDone => {
    const { jobId, what, group, operation, quantity, note, on } = done
    const made = run.add.run(jobId, what, group, operation, quantity, note, on, now())
    return { ...done, id: Number(made.lastInsertRowid) }
  }
  function* finishedSteps(): Generator<void, FinishedJob[]> {
    const found: FinishedJob[] = []
    for (const { jobId } of read(() => run.jobs.all(mostFinished)).reverse()) {
      const sold = quotations.soldOn(jobId)
      if (sold) found.push({ jobId, estimate: sold.estimate, done: list(jobId) })
      yield
    }
    return found
  }
  return {
    list,
    one,
    add: (done) => write(() => add(done)),
    remove: (id) => write(() => run.remove.run(id).changes > 0),
    finishedSteps,
  }
}
