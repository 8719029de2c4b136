import type { Database } from 'better-sqlite3'
import { standardDraft } from '../../shared/gate/standardSpec.ts'

const lostName = 'Name lost'
const lostTitle = 'Lost from the damaged book'

/** A customer in the place of each whose row is lost, so that his jobs stay. */
const standInCustomers = `INSERT INTO customers (id, name, created_at)
  SELECT customer_id, '${lostName}', min(created_at) FROM jobs
  WHERE customer_id NOT IN (SELECT id FROM customers) GROUP BY customer_id`

/** The jobs whose row is lost though papers issued for them are there, with the number that stands on those. */
const lostJobs = `SELECT papers.job_id AS id, min(papers.issued_at) AS at,
    max(json_extract(papers.header, '$.number')) AS number, max(json_extract(papers.header, '$.title')) AS title
  FROM papers WHERE papers.job_id NOT IN (SELECT id FROM jobs) GROUP BY papers.job_id`

type LostJob = { id: number; at: string; number: string | null; title: string | null }

/** An issued paper is a record: its job gets a row again, with a gate to be entered anew. */
function standInJobs(db: Database): void {
  const lost = db.prepare<[], LostJob>(lostJobs).all()
  if (lost.length === 0) return
  const entry = JSON.stringify({ spec: standardDraft(), typed: {} })
  const customer = db.prepare('INSERT INTO customers (name, created_at) VALUES (?, ?)')
  const job = db.prepare(
    `INSERT OR IGNORE INTO jobs (id, number, customer_id, title, stage, unit, entry, notes, created_at, updated_at)
     VALUES (?, ?, ?, ?, 'enquiry', 'mm', ?, ?, ?, ?)`,
  )
  for (const { id, at, number, title } of lost) {
    const owner = customer.run(lostName, at).lastInsertRowid
    const notes = 'The job itself could not be read; the papers issued for it are here.'
    job.run(id, number ?? `lost ${id}`, owner, title ?? lostTitle, entry, notes, at, at)
  }
}

type Reference = { table: string; from: string; to: string | null }

/** Leaves out the rows of a table that belong to a row which isn't there. */
function dropOrphans(db: Database, table: string): void {
  const references = db
    .prepare<[string], Reference>('SELECT "table", "from", "to" FROM pragma_foreign_key_list(?)')
    .all(table)
  for (const { table: parent, from, to } of references)
    db.exec(
      `DELETE FROM "${table}" WHERE "${from}" IS NOT NULL AND "${from}" NOT IN (SELECT "${to ?? 'id'}" FROM "${parent}")`,
    )
}

/** What belongs to what belongs to something: the longest line of belongings in a book is shorter than this. */
const mostTurns = 10

/**
 * Joins up what was read out of a damaged book: customers and jobs that are gone though something rests on them get a row again, and what belongs to
 * nothing else is left out. Afterwards every row belongs to something.
 */
export function joinUp(db: Database): void {
  standInJobs(db)
  db.exec(standInCustomers)
  const orphaned = db.prepare<[], string>('SELECT DISTINCT "table" FROM pragma_foreign_key_check').pluck()
  for (let turn = 0; turn < mostTurns; turn += 1) {
    const tables = orphaned.all()
    if (tables.length === 0) return
    for (const table of tables) dropOrphans(db, table)
  }
}
