import type { FoundJobs } from '../shared/job/found.ts'
import { bestFirst } from './bestFirst.ts'
import type { Connection } from './connection.ts'
import { filterSql, type JobFilter } from './jobFilter.ts'
import { rowColumns, rowFrom, type StoredRow } from './jobRows.ts'
import { atStage, wordsSought, wordsTyped } from './search.ts'

/** The most lines the job list shows at once; older ones are found by searching. */
export const mostRows = 1000

/** As many of the newest jobs that hold the words are ranked and shown; a word that more hold is followed by another one. */
export const mostFound = 500

type Given = Record<string, string | number>
type FoundRow = StoredRow & { address: string }

/** Few combinations of what is asked come up, so each question is made ready once. */
function questions({ db }: Connection) {
  const ready = new Map<string, ReturnType<typeof db.prepare<[Given], FoundRow>>>()
  return (sql: string) => {
    const known = ready.get(sql) ?? db.prepare<[Given], FoundRow>(sql)
    ready.set(sql, known)
    return known
  }
}

/** The rows are picked first and filled out then: only those that are shown have their papers looked for. */
const newest = (where: string): string =>
  `WITH picked AS (SELECT id FROM jobs WHERE jobs.put_away = 0${where} ORDER BY created_at DESC, id DESC LIMIT @most)
   SELECT ${rowColumns}, customers.address FROM picked CROSS JOIN jobs ON jobs.id = picked.id
     CROSS JOIN customers ON customers.id = jobs.customer_id ORDER BY jobs.created_at DESC, jobs.id DESC`

/** The newest that match are taken first: ranking all that hold a common word would cost more than a keystroke may take. */
const newestWith = (where: string): string =>
  `SELECT ${rowColumns}, customers.address
   FROM (SELECT job_words.rowid AS id FROM job_words${where === '' ? '' : ' CROSS JOIN jobs ON jobs.id = job_words.rowid'}
     WHERE job_words MATCH @words${where} ORDER BY job_words.rowid DESC LIMIT @most) AS found
   CROSS JOIN jobs ON jobs.id = found.id CROSS JOIN customers ON customers.id = jobs.customer_id
   WHERE jobs.put_away = 0 ORDER BY jobs.id DESC`

const shown = ({ address: _, ...row }: FoundRow) => rowFrom(row)

/**
 * The jobs that hold all the words, best first, of the newest 500 that do; without words the newest first, 1000 at most. Only those the filter lets
 * through. limited: there are more, older ones. With words the stage is asked of the index of words, which keeps it quick.
 */
export function foundJobs(connection: Connection): (search: string, filter: JobFilter) => FoundJobs {
  const ready = questions(connection)
  return (search, filter) => {
    const words = wordsSought(search)
    if (words === '') {
      const { sql, given } = filterSql(filter)
      const rows = ready(newest(sql)).all({ ...given, most: mostRows + 1 })
      return { rows: rows.slice(0, mostRows).map(shown), limited: rows.length > mostRows }
    }
    const { stage, ...others } = filter
    const { sql, given } = filterSql(others)
    const asked = { ...given, words: atStage(words, stage ?? null), most: mostFound + 1 }
    const rows = ready(newestWith(sql)).all(asked)
    const ranked = bestFirst(rows.slice(0, mostFound), wordsTyped(search), (row) => [
      ...[row.number, row.customer, row.title, row.town, row.address],
    ])
    return { rows: ranked.map(shown), limited: rows.length > mostFound }
  }
}
