import * as v from 'valibot'
import { parseShape, received } from '../gate/parseSpec.ts'
import { keys } from '../gate/specShape.ts'
import { jobFileEnding } from '../jobFileEnding.ts'
import { bad, good, type Problem, type Result } from '../problem.ts'
import { formatProblem, formatVersion, jobFormat, layoutProblem } from './manifest.ts'
import { readRows, readersFor, type Holding } from './readRows.ts'
import { readTree } from './readTree.ts'
import { mostPhotographs } from '../notes/photograph.ts'
import { safeName } from './safeName.ts'
import type { OpenRow, OpenRows } from './tables.ts'

/** The most that a job's file may weigh, signs: the papers of a job of many years with room to spare. */
export const mostOfJobFile = 24 * 1024 * 1024

/** A line of the price book that the job's options name, so that the same line can be found in another book. */
export type NamedLine = { id: number; kind: string; name: string }

/**
 * One job to carry to another book: its customer, its gate, options, notes, what it took, the log of its changes and, where asked for, its
 * cards as issued and its photographs. Quotations stay in their own book: their money hangs on its price lines. pdfs, pictures and
 * smallPictures: bytes in base64, one for each paper or photograph. A file of an older layout has no notes and no photographs.
 */
export type JobFile = {
  layout: number
  customer: OpenRow
  job: OpenRow
  options: OpenRow[]
  changes: OpenRow[]
  workDone: OpenRow[]
  papers: OpenRow[]
  pdfs: string[]
  jobNotes: OpenRow[]
  photographs: OpenRow[]
  pictures: string[]
  smallPictures: string[]
  lines: NamedLine[]
}

const base64s = (accepted: string, list: string) =>
  v.array(v.pipe(v.string(accepted), v.regex(/^[A-Za-z0-9+/]+={0,2}$/, accepted)), list)

const envelope = keys({
  format: v.literal(jobFormat, `‘${jobFormat}’`),
  version: v.literal(formatVersion, `the number ${formatVersion}`),
  layout: v.pipe(v.number('a whole number from 1'), v.integer('a whole number from 1')),
  customers: v.unknown(),
  jobs: v.unknown(),
  options: v.unknown(),
  changes: v.unknown(),
  workDone: v.unknown(),
  papers: v.unknown(),
  pdfs: base64s('a paper as it was printed', 'a list of papers as they were printed'),
  jobNotes: v.optional(v.unknown()),
  photographs: v.optional(v.unknown()),
  pictures: v.optional(
    base64s('a photograph as it was put in', 'a list of photographs as they were put in'),
    [],
  ),
  smallPictures: v.optional(
    base64s('a small picture as it was put in', 'a list of small pictures as they were put in'),
    [],
  ),
  lines: v.array(
    keys({
      id: v.pipe(v.number('a whole number'), v.integer('a whole number')),
      kind: v.string('a text'),
      name: v.string('a text'),
    }),
    'a list of price lines',
  ),
})

const one = { least: 1, most: 1 }
const holding: Holding = {
  customers: one,
  jobs: one,
  options: { most: 100 },
  changes: {},
  workDone: {},
  papers: { most: 1000 },
  jobNotes: {},
  photographs: { most: mostPhotographs },
}

/** The name a job's file gets: its number and its customer. */
export const jobFileName = (number: string, customer: string): string =>
  `${safeName(`${number} ${customer}`)}.${jobFileEnding}`

/** A job as the text of a file of its own. The same job gives the same text. */
export function writeJobFile({ layout, customer, job, ...rest }: JobFile): string {
  const { options, changes, workDone, papers, pdfs, jobNotes, photographs, pictures, smallPictures, lines } =
    rest
  const head = { format: jobFormat, version: formatVersion, layout }
  const rows = {
    customers: [customer],
    jobs: [job],
    options,
    changes,
    workDone,
    jobNotes,
    papers,
    photographs,
  }
  const beside = { pdfs, pictures, smallPictures, lines }
  return `${JSON.stringify({ ...head, ...rows, ...beside }, null, 2)}\n`
}

type Beside = Pick<JobFile, 'pdfs' | 'pictures' | 'smallPictures'>

/** What hangs together only by being of one job. */
function looseEnds(rows: OpenRows, { pdfs, pictures, smallPictures }: Beside): Problem[] {
  const job = rows.jobs?.[0]
  const customer = rows.customers?.[0]
  const wrong = (field: string, got: unknown, accepted: string): Problem => ({
    code: 'refused',
    field,
    message: `got ${received(got)}, accepted is ${accepted}`,
  })
  const problems: Problem[] = []
  if (job?.['customerId'] !== customer?.['id'])
    problems.push(
      wrong('jobs[0].customerId', job?.['customerId'], `the customer’s ${String(customer?.['id'])}`),
    )
  for (const table of ['options', 'changes', 'workDone', 'jobNotes', 'papers', 'photographs'] as const)
    for (const [place, row] of (rows[table] ?? []).entries())
      if (row['jobId'] !== job?.['id'])
        problems.push(wrong(`${table}[${place}].jobId`, row['jobId'], `the job’s ${String(job?.['id'])}`))
  const papers = rows.papers ?? []
  if (pdfs.length !== papers.length)
    problems.push(wrong('pdfs', pdfs, `a list of ${papers.length}, one for each paper`))
  const photographs = rows.photographs ?? []
  for (const [name, list] of Object.entries({ pictures, smallPictures }))
    if (list.length !== photographs.length)
      problems.push(wrong(name, list, `a list of ${photographs.length}, one for each photograph`))
  for (const [place, { kind }] of papers.entries())
    if (kind !== 'job-card') problems.push(wrong(`papers[${place}].kind`, kind, 'job-card'))
  return problems
}

/** Reads a job's file from outside, strictly: every problem with its field, what came and what is accepted. */
export function readJobFile(written: string, latest: number): Result<JobFile> {
  if (written.length > mostOfJobFile)
    return bad({
      code: 'refused',
      field: '',
      message: `it weighs ${Math.ceil(written.length / 1024 / 1024)} MB, accepted is up to ${mostOfJobFile / 1024 / 1024} MB`,
    })
  const value = readTree(written)
  if (!value.ok) return value
  const strange = formatProblem(value.value, jobFormat)
  if (strange) return bad(strange)
  const read = parseShape(envelope, value.value)
  if (!read.ok) return read
  const { format: _format, version: _version, layout, lines, ...held } = read.value
  const { pdfs, pictures, smallPictures, ...lists } = held
  const beside = { pdfs, pictures, smallPictures }
  const newer = layoutProblem(layout, latest)
  if (newer) return bad(newer)
  const rows = readRows(lists, holding, readersFor(layout))
  if (!rows.ok) return rows
  const problems = looseEnds(rows.value, beside)
  if (problems.length > 0) return { ok: false, problems }
  const { customers = [], jobs = [], options = [], changes = [], workDone = [] } = rows.value
  const { papers = [], jobNotes = [], photographs = [] } = rows.value
  const [customer] = customers
  const [job] = jobs
  if (!customer || !job) return bad({ code: 'refused', field: 'jobs', message: 'got none, accepted is one' })
  const own = { options, changes, workDone, papers, jobNotes, photographs }
  return good({ layout, customer, job, ...own, ...beside, lines })
}
