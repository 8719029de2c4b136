import * as v from 'valibot'
import { parseShape, received } from '../gate/parseSpec.ts'
import { keys } from '../gate/specShape.ts'
import { bad, type Problem, type Result } from '../problem.ts'
import type { Holding } from './readRows.ts'
import { isSafePlace } from './safeName.ts'
import { tableNames, type TableName } from './tables.ts'

/** What names a whole book, and one job, among all the files there are. */
export const bookFormat = 'bracework-book'
export const jobFormat = 'bracework-job'

/** How open files are written. Raised only when that changes; what stands in them follows the book's layout. */
export const formatVersion = 1

/** The oldest layout of the book that was ever written as open files. */
const firstLayout = 3

/** The file that says what a folder holds; every other file is named in it. */
export const contentsName = 'book.json'

/** More files than a lifetime of jobs. */
const mostFiles = 1_000_000

const wholeNumber = (most: number, accepted: string) =>
  v.pipe(v.number(accepted), v.integer(accepted), v.minValue(0, accepted), v.maxValue(most, accepted))
const rowCount = wholeNumber(1_000_000_000, 'a whole number from 0')

const places = v.pipe(
  v.array(
    v.pipe(v.string('a file’s place'), v.check(isSafePlace, 'a place inside this folder')),
    'a list of files',
  ),
  v.maxLength(mostFiles, `a list of up to ${mostFiles} files`),
)

const shape = keys({
  format: v.literal(bookFormat, `‘${bookFormat}’`),
  version: v.literal(formatVersion, `the number ${formatVersion}`),
  layout: wholeNumber(1_000_000, 'a whole number'),
  rows: keys(Object.fromEntries(tableNames.map((name) => [name, v.optional(rowCount)]))),
  files: places,
  damaged: v.optional(places),
})

/**
 * What a folder says of itself: the layout of the book it came from, how many rows of each table it holds, and its files. damaged: those of papers
 * that weren't what was issued any more when the book was taken out; they come in as they are, and are found again by going over the papers.
 */
export type Contents = {
  layout: number
  rows: Partial<Record<TableName, number>>
  files: string[]
  damaged: string[]
}

/** The problem with a layout that this program doesn't know. */
export const layoutProblem = (layout: number, latest: number): Problem | undefined => {
  if (layout >= firstLayout && layout <= latest) return undefined
  return {
    code: layout > latest ? 'newer' : 'refused',
    field: 'layout',
    message:
      layout > latest
        ? `it was taken out by a newer Bracework (got ${layout}, accepted is up to ${latest}); bring the program up to date first`
        : `got ${layout}, accepted is from ${firstLayout} to ${latest}`,
  }
}

/** The problem with a file that isn't ours at all, said once instead of field by field. */
export function formatProblem(value: unknown, format: string): Problem | undefined {
  const told = typeof value === 'object' && value !== null && 'format' in value ? value.format : undefined
  if (told === format) return undefined
  const what = format === jobFormat ? 'a job' : 'a job book'
  return {
    code: 'refused',
    field: 'format',
    message: `it isn’t ${what} taken out of Bracework: got ${received(told)}, accepted is ‘${format}’`,
  }
}

function twiceIn(files: readonly string[]): Problem | undefined {
  const seen = new Set<string>()
  for (const [place, file] of files.entries()) {
    const plain = file.toLowerCase()
    if (seen.has(plain))
      return {
        code: 'refused',
        field: `files[${place}]`,
        message: `got ‘${file}’ a second time, accepted is once`,
      }
    seen.add(plain)
  }
  return undefined
}

/** Reads what a folder says of itself. latest: the newest layout this program knows. */
export function readContents(value: unknown, latest: number): Result<Contents> {
  const strange = formatProblem(value, bookFormat)
  if (strange) return bad(strange)
  const read = parseShape(shape, value)
  if (!read.ok) return read
  const { layout, rows, files, damaged = [] } = read.value
  const problem = layoutProblem(layout, latest) ?? twiceIn(files)
  return problem ? bad(problem) : { ok: true, value: { layout, rows, files, damaged } }
}

/** A kind of file: how its place is written, what it holds, and whether it is a list of one table. They are read in this order. */
export type FileKind = { place: RegExp; holding: Holding; list?: TableName }

const one = { least: 1, most: 1 }

export const fileKinds: readonly FileKind[] = [
  { place: /^settings\.json$/, holding: { settings: {}, sections: {} } },
  { place: /^customers( \d+)?\.json$/, holding: { customers: {} } },
  { place: /^prices\/suppliers\.csv$/, holding: { suppliers: {} }, list: 'suppliers' },
  { place: /^prices\/lines( \d+)?\.json$/, holding: { items: {}, supplies: {} } },
  { place: /^prices\/rises\.csv$/, holding: { rises: {} }, list: 'rises' },
  { place: /^prices\/prices\.csv$/, holding: { prices: {} }, list: 'prices' },
  { place: /^jobs\/[^/]+\/[^/]+\.json$/, holding: { jobs: one, changes: {}, options: {}, workDone: {} } },
  { place: /^papers\/[^/]+\/[^/]+\.json$/, holding: { papers: one, acceptances: { most: 1 } } },
  { place: /^rack( \d+)?\.json$/, holding: { rackPieces: {}, rackMoves: {} } },
  {
    place: /^orders\/[^/]+\/[^/]+\.json$/,
    holding: {
      ...{ orders: one, orderJobs: {}, orderLines: {}, orderReceipts: {} },
      ...{ orderLengths: {}, orderCuts: {}, orderRack: {} },
    },
  },
]

/** The files of a folder by their kind, in reading order; the first that is of no kind is a problem. */
export function filesInOrder(files: readonly string[]): Result<{ place: string; kind: FileKind }[]> {
  const found = files.map((place) => ({ place, at: fileKinds.findIndex((kind) => kind.place.test(place)) }))
  const unknown = found.find(({ at }) => at < 0)
  if (unknown)
    return bad({
      code: 'refused',
      field: `files[${found.indexOf(unknown)}]`,
      message: `got ‘${unknown.place}’, accepted are settings, customers, prices, jobs, papers, rack and orders by their names`,
    })
  const value = found
    .sort((a, b) => a.at - b.at)
    .flatMap(({ place, at }) => (fileKinds[at] ? [{ place, kind: fileKinds[at] }] : []))
  return { ok: true, value }
}
