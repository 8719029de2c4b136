import type { Paper } from '../shared/job/job.ts'
import type { Acceptance, QuotedMoney, QuotedOption } from '../shared/pricing/quotation.ts'
import type { StandingQuotation } from '../shared/pricing/requests.ts'
import type { StandingJob } from '../shared/pricing/riseEffects.ts'
import { BookProblem } from './bookProblem.ts'
import type { Connection } from './connection.ts'
import { paperColumns, paperName } from './papers.ts'

export type QuotationsRoom = {
  /** A quotation's frozen money, and whether it was accepted; undefined when there is none under that number. */
  money: (paperId: number) => StandingQuotation | undefined
  /** Puts down that a quotation was accepted, once. False, and nothing written, when it was before. */
  accept: (acceptance: Acceptance) => boolean
  /**
   * The quotations that a rise bears upon, one a job, a step at a time: the one accepted last where the timber isn't ordered yet; else
   * the latest, while it is open on that day and the job is no further than quoted.
   */
  standingSteps: (day: string) => Generator<void, StandingJob[]>
  /** The option a job was sold on: of the quotation accepted last the one accepted, else of the latest the first. */
  soldOn: (jobId: number) => QuotedOption | undefined
  /** The option of a job that was accepted last; undefined where none was. */
  accepted: (jobId: number) => QuotedOption | undefined
}

type Stored = Paper & { money: string }
type StandingRow = Omit<StandingJob, 'money' | 'acceptance'> & {
  option: number | null
  revision: number
  sha256: string
}

/** As many of the latest quotations accepted are looked at for timber that isn't ordered yet: some years of them. */
const latestAccepted = 1000

const statements = ({ db }: Connection) => ({
  one: db.prepare<[number], Stored>(
    `SELECT ${paperColumns}, money FROM papers WHERE id = ? AND kind = 'quotation'`,
  ),
  money: db.prepare<[number], { money: string }>('SELECT money FROM papers WHERE id = ?'),
  acceptance: db.prepare<[number], Acceptance>(
    `SELECT paper_id AS paperId, option_place AS option, accepted_on AS acceptedOn, note FROM acceptances WHERE paper_id = ?`,
  ),
  accept: db.prepare(
    `INSERT INTO acceptances (paper_id, option_place, accepted_on, note, added_at) VALUES (?, ?, ?, ?, ?)
     ON CONFLICT (paper_id) DO NOTHING`,
  ),
  standing: db.prepare<[string, string], StandingRow>(
    `WITH offered AS (
       SELECT papers.id AS paperId, papers.revision, papers.sha256, papers.valid_until, jobs.id AS jobId, jobs.number, customers.name AS customer, jobs.title,
         acceptances.option_place AS option,
         row_number() OVER (
           PARTITION BY papers.job_id ORDER BY acceptances.paper_id IS NULL, acceptances.added_at DESC, papers.revision DESC
         ) AS place
       FROM jobs JOIN papers ON papers.job_id = jobs.id AND papers.kind = 'quotation' JOIN customers ON customers.id = jobs.customer_id
         LEFT JOIN acceptances ON acceptances.paper_id = papers.id
       WHERE jobs.id IN (
         SELECT job_id FROM papers INDEXED BY papers_by_validity WHERE kind = 'quotation' AND valid_until >= ?
         UNION SELECT papers.job_id FROM (SELECT paper_id FROM acceptances ORDER BY paper_id DESC LIMIT ${latestAccepted}) AS latest
           CROSS JOIN papers ON papers.id = latest.paper_id
       ) AND jobs.stage IN ('enquiry', 'surveyed', 'designed', 'quoted') AND jobs.put_away = 0
     )
     SELECT paperId, revision, sha256, jobId, number, customer, title, option FROM offered
     WHERE place = 1 AND (option IS NOT NULL OR valid_until >= ?) ORDER BY paperId`,
  ),
  sold: db.prepare<[number], Stored & { option: number | null }>(
    `SELECT ${paperColumns}, money, acceptances.option_place AS option FROM papers LEFT JOIN acceptances ON acceptances.paper_id = papers.id
     WHERE papers.job_id = ? AND papers.kind = 'quotation'
     ORDER BY acceptances.paper_id IS NULL, acceptances.added_at DESC, papers.revision DESC LIMIT 1`,
  ),
})

const isMoney = (read: unknown): read is QuotedMoney =>
  typeof read === 'object' && read !== null && 'options' in read && Array.isArray(read.options)

type Statements = ReturnType<typeof statements>

/** What was frozen is the program's own writing: it was typed when it went in, and is only ever read back. */
function moneyIn(text: string, paper: Pick<Paper, 'kind' | 'revision'>): QuotedMoney {
  const read: unknown = JSON.parse(text)
  if (isMoney(read)) return read
  throw new BookProblem(
    'damaged',
    `The money of ${paperName(paper)} can’t be read: the job book is damaged there. Bring back a copy of the book.`,
  )
}

/** More quotations than a small workshop has open at once; the rest are read again each time. */
const mostKept = 500

/** Frozen money never changes, so it is read once. A number alone isn't enough to know it by: a sample's may come again. */
function moneyReading({ read }: Connection, run: Statements): (row: StandingRow) => QuotedMoney {
  const known = new Map<string, QuotedMoney>()
  return ({ paperId, revision, sha256 }) => {
    const key = `${paperId} ${sha256}`
    const before = known.get(key)
    if (before) return before
    const text = read(() => run.money.get(paperId))?.money ?? 'null'
    const money = moneyIn(text, { kind: 'quotation', revision })
    if (known.size < mostKept) known.set(key, money)
    return money
  }
}

/** The quotations' room: papers with money, and what became of them. */
export function quotationsRoom(connection: Connection): QuotationsRoom {
  const { now, read, write } = connection
  const run = statements(connection)
  const frozen = moneyReading(connection, run)

  function* standingSteps(day: string): Generator<void, StandingJob[]> {
    const standing: StandingJob[] = []
    for (const row of read(() => run.standing.all(day, day))) {
      const { jobId, paperId, number, customer, title, option } = row
      const acceptance = option === null ? null : { option }
      standing.push({ jobId, paperId, number, customer, title, money: frozen(row), acceptance })
      yield
    }
    return standing
  }

  return {
    money: (paperId) => {
      const found = read(() => run.one.get(paperId))
      if (!found) return undefined
      const { money, ...paper } = found
      const acceptance = read(() => run.acceptance.get(paperId)) ?? null
      return { paper, money: moneyIn(money, paper), acceptance }
    },
    accept: ({ paperId, option, acceptedOn, note }) =>
      write(() => run.accept.run(paperId, option, acceptedOn, note, now()).changes > 0),
    standingSteps,
    soldOn: (jobId) => {
      const found = read(() => run.sold.get(jobId))
      return found && moneyIn(found.money, found).options[found.option ?? 0]
    },
    accepted: (jobId) => {
      const found = read(() => run.sold.get(jobId))
      if (!found || found.option === null) return undefined
      return moneyIn(found.money, found).options[found.option]
    },
  }
}
