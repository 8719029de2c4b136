import { placedAt, sameValue, valueAt } from '../../shared/job/specPath.ts'
import { cellNames, entryOf, keysOf, type Cells, type Step } from '../../shared/undo/step.ts'
import type { Question, Settling } from '../../shared/undo/deed.ts'
import { customerCell, entryName, settingCell, settingName } from '../../shared/undo/words.ts'

/** A step taken one way: from what it left to what it found, or the other way round. */
export type Turned = Pick<Step, 'table' | 'key' | 'of' | 'jobId' | 'unit'> & {
  from: Cells | null
  to: Cells | null
}

export const turned = (step: Step, way: 'back' | 'again'): Turned => {
  const { was, is, ...rest } = step
  return way === 'back' ? { ...rest, from: is, to: was } : { ...rest, from: was, to: is }
}

/** What was asked about, and how many entries were left as another deed made them. */
export type Settled = { settle: Settling; deed: string; asks: Question[]; kept: number }

const cellsAt = (row: Cells, name: string): unknown => valueAt(row, keysOf(name))

const at = (cells: Cells | null, name: string): unknown =>
  cells && Object.hasOwn(cells, name) ? cells[name] : undefined

const said = (value: unknown): string => {
  if (value === null || value === undefined || value === '') return 'nothing'
  if (typeof value === 'number') return String(Math.round(value * 100) / 100)
  if (typeof value === 'string') return value.length > 60 ? `${value.slice(0, 60)}…` : value
  return 'something else'
}

/** What a row is called where the person is told of it. */
export function rowWords({ table, of, key }: Pick<Turned, 'table' | 'of' | 'key'>): string {
  if (table === 'settings') return `the setting for ${settingName(String(key['key']))}`
  return of === '' ? 'this entry' : `‘${of}’`
}

/** What a cell is called where the person is asked about it. */
export function cellWords({ table, of, key }: Pick<Turned, 'table' | 'of' | 'key'>, name: string): string {
  if (table === 'jobs') return `${entryName(entryOf(name))} of job ${of}`
  if (table === 'customers') return customerCell(name)
  return (table === 'settings' ? settingCell(name) : undefined) ?? rowWords({ table, of, key })
}

/**
 * A row with its cells as a turned step has them. Where a cell stands neither as the step left it nor as it would make it, another deed changed it since: that
 * is asked about, or settled as was said. Gives the names of the cells that moved.
 */
export function withCells(row: Cells, step: Turned, settled: Settled): { row: Cells; moved: string[] } {
  const moved: string[] = []
  let now = row
  for (const name of cellNames({ was: step.from, is: step.to })) {
    const [stands, from, to] = [cellsAt(row, name), at(step.from, name), at(step.to, name)]
    if (sameValue(stands, to)) continue
    if (!sameValue(stands, from)) {
      const question = {
        deed: settled.deed,
        what: cellWords(step, name),
        theirs: said(stands),
        older: said(to),
      }
      if (settled.settle === 'ask') settled.asks.push(question)
      if (settled.settle === 'keep theirs') settled.kept += 1
      if (settled.settle !== 'put it back') continue
    }
    now = placedAt(now, keysOf(name), to) as Cells
    moved.push(name)
  }
  return { row: now, moved }
}
