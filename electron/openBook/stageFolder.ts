import { createHash } from 'node:crypto'
import type { Staging } from '../../db/openBook/staging.ts'
import type { WholeRoom } from '../../db/openBook/whole.ts'
import { received } from '../../shared/gate/parseSpec.ts'
import { csvRows } from '../../shared/openBook/csv.ts'
import {
  contentsName,
  filesInOrder,
  readContents,
  type Contents,
  type FileKind,
} from '../../shared/openBook/manifest.ts'
import { mostProblems, readersFor, readRows, type Readers } from '../../shared/openBook/readRows.ts'
import { readTree } from '../../shared/openBook/readTree.ts'
import { tablesIn, type OpenRow, type TableName } from '../../shared/openBook/tables.ts'
import { bad, good, type Problem, type Result } from '../../shared/problem.ts'
import type { Pace } from './pace.ts'
import { readPlace, wordsOf } from './readPlace.ts'

/** A book put together from a folder, and what was found on the way. With problems nothing of it is to be used. */
export type Staged = {
  staging: Staging
  counts: Map<TableName, number>
  workshop: string
  problems: Problem[]
}

type Desk = { root: string; contents: Contents; readers: Readers; pace: Pace } & Staged

const within = (place: string, problem: Problem): Problem => ({
  ...problem,
  field: problem.field === '' ? place : `${place}: ${problem.field}`,
})

const isFull = ({ problems }: Desk): boolean => problems.length >= mostProblems

/** Counts a row and, while nothing is wrong yet, adds it. After the first problem rows are only read: what hangs on it would fail too. */
function take(
  desk: Desk,
  place: string,
  one: { table: TableName; row: OpenRow; where: string; bytes?: Uint8Array },
): void {
  const { table, row } = one
  desk.counts.set(table, (desk.counts.get(table) ?? 0) + 1)
  if (table === 'settings' && row['key'] === 'name' && typeof row['value'] === 'string')
    desk.workshop = row['value']
  if (desk.problems.length > 0) return
  const problem = desk.staging.add(one)
  if (problem) desk.problems.push(within(place, problem))
}

async function takeList(
  desk: Desk,
  place: string,
  { words, table }: { words: string; table: TableName },
): Promise<void> {
  const read = desk.readers.get(table)
  for (const cells of csvRows(words, table, desk.contents.layout)) {
    const row = cells.ok ? read?.(cells.value.row, cells.value.where) : cells
    if (!row || isFull(desk)) return
    if (!row.ok) desk.problems.push(...row.problems.map((problem) => within(place, problem)))
    else if (cells.ok) take(desk, place, { table, row: row.value, where: cells.value.where })
    await desk.pace.breathe()
  }
}

/** The bytes of a paper, which lie beside what it was made from; they must be those that were issued. */
async function paperBytes(desk: Desk, place: string, paper: OpenRow): Promise<Uint8Array | undefined> {
  const beside = place.replace(/\.json$/, '.pdf')
  const read = await readPlace(desk.root, beside)
  if (!read.ok) {
    desk.problems.push(...read.problems)
    return undefined
  }
  const got = createHash('sha256').update(read.value).digest('hex')
  const known = got === paper['sha256'] || desk.contents.damaged.includes(place)
  if (known && read.value.length > 0) return read.value
  desk.problems.push({
    code: 'refused',
    field: beside,
    message: `it isn’t the paper that was issued: got the fingerprint ${received(got)}, accepted is ${received(paper['sha256'])}`,
  })
  return undefined
}

async function takeRows(
  desk: Desk,
  place: string,
  { words, kind }: { words: string; kind: FileKind },
): Promise<void> {
  const tree = readTree(words)
  const rows = tree.ok ? readRows(tree.value, kind.holding, desk.readers) : tree
  if (!rows.ok) return void desk.problems.push(...rows.problems.map((problem) => within(place, problem)))
  for (const table of tablesIn(desk.contents.layout))
    for (const [at, row] of (rows.value[table] ?? []).entries()) {
      const bytes = table === 'papers' ? await paperBytes(desk, place, row) : undefined
      take(desk, place, { table, row, where: `${table}[${at}]`, ...(bytes && { bytes }) })
      await desk.pace.breathe()
    }
}

async function takeFile(desk: Desk, place: string, kind: FileKind): Promise<void> {
  const bytes = await readPlace(desk.root, place)
  const words = bytes.ok ? wordsOf(place, bytes.value) : bytes
  if (!words.ok) desk.problems.push(...words.problems)
  else if (kind.list) await takeList(desk, place, { words: words.value, table: kind.list })
  else await takeRows(desk, place, { words: words.value, kind })
}

/** Rows that are fewer or more than the folder says: part of a file is gone, or was put there. */
const wrongCounts = ({ contents, counts }: Desk): Problem[] =>
  tablesIn(contents.layout).flatMap((table) => {
    const [got, told] = [counts.get(table) ?? 0, contents.rows[table] ?? 0]
    if (got === told) return []
    const message = `got ${told}, but the files hold ${got}; accepted is as many as they hold`
    return [{ code: 'refused', field: `${contentsName}: rows.${table}`, message }]
  })

async function readFolderContents(root: string, latest: number): Promise<Result<Contents>> {
  const bytes = await readPlace(root, contentsName)
  if (!bytes.ok)
    return bad({
      code: 'refused',
      field: contentsName,
      message: `This folder isn’t a job book that was taken out: ${bytes.problems.map(({ message }) => message).join('; ')}.`,
    })
  const words = wordsOf(contentsName, bytes.value)
  const tree = words.ok ? readTree(words.value) : words
  const read = tree.ok ? readContents(tree.value, latest) : tree
  return read.ok
    ? read
    : { ok: false, problems: read.problems.map((problem) => within(contentsName, problem)) }
}

/**
 * Puts the book together that a folder holds, apart from the one in use, checking all of it. Gives it with every problem found, 50 at
 * most; the problems alone where the folder doesn't even say what it holds. Throws Stopped when the person stops it; nothing is left then.
 */
export async function stageFolder(whole: WholeRoom, root: string, pace: Pace): Promise<Result<Staged>> {
  const contents = await readFolderContents(root, whole.layout)
  if (!contents.ok) return contents
  const files = filesInOrder(contents.value.files)
  if (!files.ok)
    return { ok: false, problems: files.problems.map((problem) => within(contentsName, problem)) }
  const { layout } = contents.value
  pace.work.of = files.value.length
  const staging = whole.stage(layout)
  const found: Staged = { staging, counts: new Map(), workshop: '', problems: [] }
  const desk: Desk = Object.assign(found, {
    root,
    contents: contents.value,
    readers: readersFor(layout),
    pace,
  })
  try {
    for (const { place, kind } of files.value) {
      await takeFile(desk, place, kind)
      pace.work.done += 1
      if (isFull(desk)) break
    }
    if (desk.problems.length === 0) desk.problems.push(...wrongCounts(desk))
    if (desk.problems.length === 0) for (const _step of staging.finishSteps()) await pace.breathe()
    return good(found)
  } catch (error) {
    staging.discard()
    throw error
  }
}
