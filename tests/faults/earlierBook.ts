import { copyFileSync, rmSync } from 'node:fs'
import Sqlite from 'better-sqlite3'
import { connect } from '../../db/connection.ts'
import { createBook } from '../../db/create.ts'
import { customersRoom } from '../../db/customers.ts'
import { jobsRoom } from '../../db/jobs.ts'
import { fillWords } from '../../db/keeping/wordsAgain.ts'
import { migrate, readMigrations } from '../../db/migrate.ts'
import { newJobFor } from '../db/powerCutJob.ts'
import { digestOf } from './bookDigest.ts'

const jobs = 24

/** A book of today's layout with jobs that were changed. */
function todaysBook(path: string): void {
  createBook(path, readMigrations())
  const connection = connect(path, () => '2026-03-02T08:00:00.000Z')
  const room = jobsRoom(connection, customersRoom(connection))
  for (let place = 1; place <= jobs; place += 1) {
    const { id } = room.create(newJobFor(`gate ${place}`))
    room.change(id, [{ path: 'spec.size.width', value: 600 + place, typed: String(600 + place) }])
  }
  connection.close()
}

/** Makes a book as an earlier program left it: laid out up to a step, with the jobs it could hold. */
function earlierBook(path: string, layout: number): void {
  const today = `${path}-today`
  todaysBook(today)
  createBook(path, readMigrations().slice(0, layout))
  const db = new Sqlite(path)
  db.pragma('journal_mode = WAL')
  db.prepare('ATTACH ? AS today').run(today)
  for (const table of ['customers', 'jobs', 'changes', 'job_words', 'customer_words']) {
    const named = db
      .prepare<[], { name: string }>(`SELECT name FROM pragma_table_info('${table}', 'main')`)
      .all()
    const columns = [...(table.endsWith('words') ? ['rowid'] : []), ...named.map(({ name }) => name)].join(
      ', ',
    )
    db.exec(`INSERT INTO main.${table} (${columns}) SELECT ${columns} FROM today.${table}`)
  }
  db.close()
  rmSync(today)
}

/** Makes a book with jobs at a layout; gives what it holds there and after each step on, the last being the program's own. */
export function layouts(path: string, from: number): string[] {
  earlierBook(path, from)
  const tried = `${path}-tried`
  copyFileSync(path, tried)
  const db = new Sqlite(tried)
  const states = [digestOf(db)]
  for (const { number } of readMigrations().slice(from)) {
    migrate(db, readMigrations().slice(0, number))
    states.push(digestOf(db))
  }
  // A step that leaves the words to be filled is followed by that, in a writing of its own.
  fillWords(db)
  if (states.at(-1) !== digestOf(db)) states.push(digestOf(db))
  db.close()
  rmSync(tried)
  return states
}
