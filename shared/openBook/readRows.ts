import type * as v from 'valibot'
import { parseShape, received } from '../gate/parseSpec.ts'
import { keys } from '../gate/specShape.ts'
import { unwritable } from '../gate/unwritable.ts'
import { bad, good, type Problem, type Result } from '../problem.ts'
import { mostDepth } from './readTree.ts'
import { rowRules } from './rowRules.ts'
import { columnsIn, tablesIn, type OpenRow, type OpenRows, type TableName } from './tables.ts'

/** As many problems as anybody reads. */
export const mostProblems = 50

/** Whoever mends a file reads of nothing, not of a program's word for it. */
const moved = (where: string, problem: Problem): Problem => ({
  ...problem,
  message: problem.message.replace(/^got null\b/, 'got nothing'),
  field: problem.field === '' ? where : `${where}.${problem.field}`,
})

export type RowReader = (row: unknown, where: string) => Result<OpenRow>

const isRow = (value: unknown): value is OpenRow =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** Reads rows of one table, each strictly: its columns and no others. `where` stands before a problem's field: 'jobs[0]'. */
export function rowReader(table: TableName, layout: number): RowReader {
  const columns = columnsIn(table, layout)
  const shape = keys(
    Object.fromEntries(columns.map(([key, { shape: one }]) => [key, one])) as v.ObjectEntries,
  )
  const rules = columns.filter(([, { rule }]) => rule)
  return (row, where) => {
    const shaped = parseShape(shape, row)
    if (!shaped.ok) return bad(...shaped.problems.map((problem) => moved(where, problem)))
    if (!isRow(row)) return bad({ code: 'refused', field: where, message: `got ${received(row)}` })
    const unwritten = unwritable(row, mostDepth)
    if (unwritten) return bad(moved(where, unwritten))
    const problems = [
      ...rules.flatMap(([key, { rule }]) =>
        (rule?.(row[key]) ?? []).map((problem) => moved(`${where}.${key}`, problem)),
      ),
      ...(rowRules[table]?.(row) ?? []).map((problem) => moved(where, problem)),
    ]
    return problems.length > 0 ? bad(...problems) : good(row)
  }
}

/** A reader for each table of a layout. */
export type Readers = Map<TableName, RowReader>

export const readersFor = (layout: number): Readers =>
  new Map(tablesIn(layout).map((name) => [name, rowReader(name, layout)]))

/** Which tables a file holds, and how many rows at least and at most of each. */
export type Holding = Partial<Record<TableName, { least?: number; most?: number }>>

const wrongCount = (
  field: string,
  got: number,
  { least = 0, most = Infinity }: { least?: number; most?: number },
) => ({
  code: 'refused',
  field,
  message: `got a list of ${got}, accepted is ${least === most ? `a list of ${most}` : `a list of up to ${most}`}`,
})

function readList(rows: unknown[], table: TableName, read: RowReader): Result<OpenRow[]> {
  const problems: Problem[] = []
  const taken: OpenRow[] = []
  for (const [place, row] of rows.entries()) {
    const one = read(row, `${table}[${place}]`)
    if (one.ok) taken.push(one.value)
    else problems.push(...one.problems)
    if (problems.length >= mostProblems) break
  }
  return problems.length > 0 ? { ok: false, problems } : good(taken)
}

/** Reads lists of rows by table, as one open file holds them: all the tables it should hold and no others. */
export function readRows(value: unknown, holding: Holding, readers: Readers): Result<OpenRows> {
  const names = (Object.keys(holding) as TableName[]).filter((name) => readers.has(name))
  if (!isRow(value))
    return bad({
      code: 'refused',
      field: '',
      message: `got ${received(value)}, accepted is ${names.join(', ')}`,
    })
  const problems: Problem[] = Object.keys(value)
    .filter((key) => !names.some((name) => name === key))
    .map((key) => ({
      code: 'unknown-key',
      field: key.slice(0, 60),
      message: `unknown here, accepted are ${names.join(', ')}`,
    }))
  const rows: OpenRows = {}
  for (const name of names) {
    const list = value[name]
    const bounds = holding[name] ?? {}
    const read = readers.get(name)
    if (!Array.isArray(list))
      problems.push({ code: 'refused', field: name, message: `got ${received(list)}, accepted is a list` })
    else if (list.length < (bounds.least ?? 0) || list.length > (bounds.most ?? Infinity))
      problems.push(wrongCount(name, list.length, bounds))
    else if (read) {
      const taken = readList(list, name, read)
      if (taken.ok) rows[name] = taken.value
      else problems.push(...taken.problems)
    }
  }
  return problems.length > 0 ? { ok: false, problems: problems.slice(0, mostProblems) } : good(rows)
}
