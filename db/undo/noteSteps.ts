import type { Cells } from '../../shared/undo/step.ts'
import type { Connection } from '../connection.ts'
import { jobStatements } from '../jobStatements.ts'
import { wordsKept } from '../noteWords.ts'
import { searchRoom } from '../search.ts'

const called: Readonly<Record<string, string>> = { job_notes: 'note', photographs: 'photograph' }

/** What the log of a job tells of its notes and photographs: by what name, and how it stands in a row. */
const told: readonly [what: string, stands: (row: Cells) => unknown][] = [
  ['putAway', (row) => row['put_away'] === 1],
  ['words', (row) => row['words']],
  ['when', (row) => `${String(row['noted_on'])} ${String(row['noted_at'])}`],
]

/**
 * Puts down in the job's log what became of a note or a photograph by taking back or doing again, and notes the words that the job is found by. Does nothing for
 * other rows.
 */
export function noteLog(connection: Connection): (table: string, before: Cells, after: Cells) => void {
  const { db, now } = connection
  const run = jobStatements(connection)
  const keepWords = wordsKept(db, searchRoom(connection), run)
  return (table, before, after) => {
    const kind = called[table]
    if (kind === undefined) return
    const jobId = Number(after['job_id'])
    for (const [what, stands] of told) {
      const [was, is] = [JSON.stringify(stands(before)), JSON.stringify(stands(after))]
      if (was !== is) run.log.run(jobId, `${kind}.${String(after['place'])}.${what}`, was, is, now())
    }
    keepWords(jobId)
  }
}
