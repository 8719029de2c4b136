import type { FoundJobs } from '../shared/job/found.ts'
import type { Connection } from './connection.ts'
import { filterSql, type JobFilter } from './jobFilter.ts'
import { rowColumns, rowFrom, type StoredRow } from './jobRows.ts'
import { wordsSought } from './search.ts'

/** The most lines the job list shows at once; older ones are found by searching. */
export const mostRows = 1000

/** Few combinations of what is asked come up, so each question is made ready once. */
function questions({ db }: Connection) {
  const ready = new Map<string, ReturnType<typeof db.prepare<[Record<string, string | number>], StoredRow>>>()
  return (sql: string) => {
    const known = ready.get(sql) ?? db.prepare<[Record<string, string | number>], StoredRow>(sql)
    ready.set(sql, known)
    return known
  }
}

/** The rows are picked first and filled out then: only those that are shown have their papers looked for. */
const newest = (where: string): string =>
  `WITH picked AS (SELECT id FROM jobs WHERE jobs.put_away = 0${where} ORDER BY created_at DESC, id DESC LIMIT @most)
   SELECT ${rowColumns} FROM picked CROSS JOIN jobs ON jobs.id = picked.id CROSS JOIN customers ON customers.id = jobs.customer_id
   ORDER BY jobs.created_at DESC, jobs.id DESC`

const best = (where: string): string =>
  `SELECT ${rowColumns} FROM job_words JOIN jobs ON jobs.id = job_words.rowid JOIN customers ON customers.id = jobs.customer_id
   WHERE job_words MATCH @words AND jobs.put_away = 0${where} ORDER BY rank, jobs.id DESC LIMIT @most`

/** The jobs that hold all the words, best first; without words all, the newest first. Only those the filter lets through, 1000 at most. */
export function foundJobs(connection: Connection): (search: string, filter: JobFilter) => FoundJobs {
  const ready = questions(connection)
  return (search, filter) => {
    const words = wordsSought(search)
    const { sql, given } = filterSql(filter)
    const question = ready(words === '' ? newest(sql) : best(sql))
    const asked = { ...given, most: mostRows, ...(words === '' ? {} : { words }) }
    return { rows: question.all(asked).map(rowFrom) }
  }
}
