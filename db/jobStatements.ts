import type { Connection } from './connection.ts'
import { jobColumns, rowColumns, type StoredJob, type StoredRow } from './jobRows.ts'

/** Every question the jobs' room puts to the store, made ready once. */
export function jobStatements({ db }: Connection) {
  const from = 'FROM jobs JOIN customers ON customers.id = jobs.customer_id'
  return {
    one: db.prepare<[number], StoredJob>(
      `SELECT ${jobColumns} ${from} WHERE jobs.id = ? AND jobs.put_away = 0`,
    ),
    others: db.prepare<[number, number], StoredJob>(
      `SELECT ${jobColumns} ${from} WHERE jobs.customer_id = ? AND jobs.id <> ? AND jobs.put_away = 0`,
    ),
    // Those that timber may be bought for: ordered or being made, promised, accepted, and of the others the ones touched last.
    toOrder: db
      .prepare<[number, number], number>(
        `SELECT id FROM jobs WHERE stage IN ('ordered', 'making') AND put_away = 0
         UNION SELECT id FROM jobs INDEXED BY jobs_by_due WHERE due > '' AND stage <> 'hung' AND put_away = 0
         UNION SELECT jobs.id FROM (SELECT paper_id FROM acceptances ORDER BY paper_id DESC LIMIT ?) AS latest
           CROSS JOIN papers ON papers.id = latest.paper_id CROSS JOIN jobs ON jobs.id = papers.job_id
           WHERE jobs.stage <> 'hung'
         UNION SELECT id FROM (SELECT id FROM jobs WHERE stage <> 'hung' AND put_away = 0 ORDER BY updated_at DESC LIMIT ?)`,
      )
      .pluck(),
    due: db.prepare<[string, number], StoredRow>(
      `SELECT ${rowColumns} ${from} WHERE jobs.due <= ? AND jobs.stage <> 'hung' AND jobs.put_away = 0 ORDER BY jobs.due, jobs.number LIMIT ?`,
    ),
    insert: db.prepare(
      `INSERT INTO jobs (number, customer_id, title, stage, due, notes, unit, entry, created_at, updated_at, sample)
       VALUES (?, ?, ?, 'enquiry', ?, ?, ?, ?, ?, ?, ?)`,
    ),
    update: db.prepare(
      `UPDATE jobs SET title = ?, stage = ?, due = ?, notes = ?, unit = ?, entry = ?, version = version + 1, updated_at = ? WHERE id = ?`,
    ),
    touch: db.prepare('UPDATE jobs SET version = version + 1, updated_at = ? WHERE id = ?'),
    log: db.prepare('INSERT INTO changes (job_id, path, before, after, at) VALUES (?, ?, ?, ?, ?)'),
    logged: db.prepare<[number], { path: string; before: string; after: string; at: string }>(
      'SELECT path, before, after, at FROM changes WHERE job_id = ? ORDER BY id',
    ),
    count: db.prepare<[], { jobs: number; sampleJobs: number }>(
      'SELECT (SELECT count(*) FROM jobs WHERE put_away = 0) AS jobs, (SELECT count(*) FROM jobs WHERE sample = 1 AND put_away = 0) AS sampleJobs',
    ),
  }
}

export type JobStatements = ReturnType<typeof jobStatements>
