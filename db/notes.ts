import type { JobNote, JobNotes } from '../shared/notes/note.ts'
import type { Connection } from './connection.ts'
import { jobStatements } from './jobStatements.ts'
import { wordsKept } from './noteWords.ts'
import { searchRoom } from './search.ts'

/** What is written down: the words, and the day and time they are of. */
export type NoteEntry = Pick<JobNote, 'words' | 'on' | 'at'>

export type NotesRoom = {
  /** A job's notes, the newest day first: a hundred, or all of them. Those taken away aren't among them. */
  list: (jobId: number, all: boolean) => JobNotes
  /** Undefined when there is no such job. */
  add: (jobId: number, entry: NoteEntry) => JobNote | undefined
  /** Puts a note right; what it said before stays in the job's log. Undefined when there is no such note. */
  mend: (id: number, entry: NoteEntry) => JobNote | undefined
  /** Takes a note away, or puts it back. It never leaves the book. */
  putAway: (id: number, away: boolean) => JobNote | undefined
}

/** The notes that are shown unless all are asked for. */
export const notesAtOnce = 100

const columns = `id, job_id AS jobId, place, words, noted_on AS "on", noted_at AS "at", added_at AS addedAt, mended_at AS mendedAt`

type Stored = JobNote & { putAway: number }

const statements = ({ db }: Connection) => ({
  list: db.prepare<[number, number], JobNote>(
    `SELECT ${columns} FROM job_notes WHERE job_id = ? AND put_away = 0 ORDER BY noted_on DESC, noted_at DESC, place DESC LIMIT ?`,
  ),
  count: db
    .prepare<[number], number>('SELECT count(*) FROM job_notes WHERE job_id = ? AND put_away = 0')
    .pluck(),
  one: db.prepare<[number], Stored>(`SELECT ${columns}, put_away AS putAway FROM job_notes WHERE id = ?`),
  next: db
    .prepare<[number], number>('SELECT ifnull(max(place), 0) + 1 FROM job_notes WHERE job_id = ?')
    .pluck(),
  add: db.prepare(
    'INSERT INTO job_notes (job_id, place, words, noted_on, noted_at, added_at) VALUES (?, ?, ?, ?, ?, ?)',
  ),
  mend: db.prepare('UPDATE job_notes SET words = ?, noted_on = ?, noted_at = ?, mended_at = ? WHERE id = ?'),
  putAway: db.prepare('UPDATE job_notes SET put_away = ? WHERE id = ?'),
})

const without = ({ putAway: _, ...note }: Stored): JobNote => note

type Statements = ReturnType<typeof statements>

/** How a note is put down, mended, taken away or put back, with the words it is found by and the log. To be called inside one writing. */
function noteWriting(connection: Connection, run: Statements) {
  const { db, now } = connection
  const jobs = jobStatements(connection)
  const keepWords = wordsKept(db, searchRoom(connection), jobs)

  const one = (id: number): JobNote | undefined => {
    const found = run.one.get(id)
    return found && without(found)
  }
  const log = (note: JobNote, what: string, [before, after]: [unknown, unknown]): void => {
    const [was, is] = [JSON.stringify(before), JSON.stringify(after)]
    if (was !== is) jobs.log.run(note.jobId, `note.${note.place}.${what}`, was, is, now())
  }

  const add = (jobId: number, { words, on, at }: NoteEntry): JobNote | undefined => {
    if (!jobs.one.get(jobId)) return undefined
    const { lastInsertRowid } = run.add.run(jobId, run.next.get(jobId) ?? 1, words, on, at, now())
    keepWords(jobId)
    return one(Number(lastInsertRowid))
  }

  const mend = (id: number, { words, on, at }: NoteEntry): JobNote | undefined => {
    const before = one(id)
    if (!before) return undefined
    const isSame = before.words === words && before.on === on && before.at === at
    if (isSame) return before
    run.mend.run(words, on, at, before.words === words ? before.mendedAt : now(), id)
    log(before, 'words', [before.words, words])
    log(before, 'when', [`${before.on} ${before.at}`, `${on} ${at}`])
    keepWords(before.jobId)
    return one(id)
  }

  const putAway = (id: number, away: boolean): JobNote | undefined => {
    const before = run.one.get(id)
    if (!before) return undefined
    run.putAway.run(away ? 1 : 0, id)
    log(before, 'putAway', [before.putAway === 1, away])
    keepWords(before.jobId)
    return one(id)
  }

  return { add, mend, putAway }
}

/** The room of a job's dated notes. */
export function notesRoom(connection: Connection): NotesRoom {
  const { read, write } = connection
  const run = statements(connection)
  const { add, mend, putAway } = noteWriting(connection, run)
  return {
    list: (jobId, all) =>
      read(() => {
        const notes = run.list.all(jobId, all ? -1 : notesAtOnce)
        return { notes, more: (run.count.get(jobId) ?? 0) - notes.length }
      }),
    add: (jobId, entry) => write(() => add(jobId, entry)),
    mend: (id, entry) => write(() => mend(id, entry)),
    putAway: (id, away) => write(() => putAway(id, away)),
  }
}
