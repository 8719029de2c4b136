import { sameValue } from '../job/specPath.ts'

/** What stands in a row: its cells by their names, those inside a tree by their path ('entry.spec.size.width'). One that is missing stands for nothing there. */
export type Cells = Record<string, unknown>

/**
 * What a deed did to one row of the book. was null: the row was put in; is null: it was taken out; else only the cells that changed.
 * of: what the joiner calls the row ('0140', 'ex 32 × 150 planed'), '' where it has no name; jobId: the job it belongs to.
 */
export type Step = {
  table: string
  key: Cells
  was: Cells | null
  is: Cells | null
  of: string
  jobId: number | null
  unit?: 'mm' | 'in'
}

/** A row as it was seen before and after one writing, whole. */
export type Seen = { table: string; key: Cells; was: Cells | null; is: Cells | null }

/** A key as it stands in a path: one that holds a point itself ('size.width' among the words typed) mustn't be taken for two. */
const inPath = (key: string): string => key.replaceAll('%', '%25').replaceAll('.', '%2E')

/** The keys of a cell's path: 'entry.typed.size%2Ewidth' is ['entry', 'typed', 'size.width']. */
export const keysOf = (name: string): string[] =>
  name.split('.').map((key) => key.replaceAll('%2E', '.').replaceAll('%25', '%'))

/** The entry a cell belongs to: the words typed for a length and the length itself are one. 'entry.spec.size.width' is 'size.width'. */
export function entryOf(name: string): string {
  const [column, root, ...keys] = keysOf(name)
  return column === 'entry' && (root === 'spec' || root === 'typed') ? keys.join('.') : keysOf(name).join('.')
}

const isTree = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null

const sameKind = (a: unknown, b: unknown): boolean =>
  Array.isArray(a) === Array.isArray(b) && (!Array.isArray(a) || !Array.isArray(b) || a.length === b.length)

/**
 * What differs between two trees, by path: objects are gone into, and lists of one length; other lists are one whole. A side that hasn't the path
 * has no cell for it. treeDifference('entry', { a: { b: 1 } }, { a: { b: 2 } }) is [['entry.a.b', [1], [2]]].
 */
export function treeDifference(path: string, was: unknown, is: unknown): [string, unknown[], unknown[]][] {
  if (isTree(was) && isTree(is) && sameKind(was, is)) {
    const keys = [...new Set([...Object.keys(was), ...Object.keys(is)])]
    return keys.flatMap((key) => {
      const [before, after] = [was, is].map((side) => (Object.hasOwn(side, key) ? [side[key]] : []))
      if (before?.length && after?.length)
        return treeDifference(`${path}.${inPath(key)}`, before[0], after[0])
      return [[`${path}.${inPath(key)}`, before ?? [], after ?? []]]
    })
  }
  return sameValue(was, is) ? [] : [[path, [was], [is]]]
}

/** The cells that differ between two states of a row, on either side. */
function cellsChanged(was: Cells, is: Cells): { was: Cells; is: Cells } {
  const changed = Object.keys(is).flatMap((key) => treeDifference(key, was[key] ?? null, is[key] ?? null))
  const side = (at: 1 | 2) =>
    Object.fromEntries(changed.flatMap((one) => (one[at].length > 0 ? [[one[0], one[at][0]]] : [])))
  return { was: side(1), is: side(2) }
}

const sameKey = (a: Seen, b: Seen): boolean => a.table === b.table && sameValue(a.key, b.key)

/** What one writing did to each row, first to last: a row that was written twice counts once, one put in and taken out again not at all. */
export function seenTogether(rows: readonly Seen[]): Seen[] {
  const places = new Map<string, number>()
  const together: (Seen | null)[] = []
  for (const row of rows) {
    const name = `${row.table} ${JSON.stringify(row.key)}`
    const place = places.get(name)
    const before = place === undefined ? null : together[place]
    if (place !== undefined && before && sameKey(before, row)) together[place] = { ...before, is: row.is }
    else {
      places.set(name, together.length)
      together.push(row)
    }
  }
  return together.flatMap((row) => (row && (row.was !== null || row.is !== null) ? [row] : []))
}

/** A row that was seen before and after as a step, without its name; undefined where nothing in it changed. */
export function stepOf({ table, key, was, is }: Seen): Omit<Step, 'of' | 'jobId'> | undefined {
  if (was === null || is === null) return { table, key, was, is }
  const changed = cellsChanged(was, is)
  const any = Object.keys(changed.was).length + Object.keys(changed.is).length > 0
  return any ? { table, key, ...changed } : undefined
}

/** The cells a step touches. */
export const cellNames = ({ was, is }: Pick<Step, 'was' | 'is'>): string[] => [
  ...new Set([...Object.keys(was ?? {}), ...Object.keys(is ?? {})]),
]

const isEdit = ({ was, is }: Step): boolean => was !== null && is !== null

const entriesOf = (steps: readonly Step[]): string[] => {
  const all = steps.flatMap((step) =>
    cellNames(step).map((name) => `${step.table} ${JSON.stringify(step.key)} ${entryOf(name)}`),
  )
  return [...new Set(all)].sort()
}

/** Whether two deeds are typing in one entry: the same entries of the same rows changed in both, and nothing put in or taken out. */
export const sameEntry = (earlier: readonly Step[], later: readonly Step[]): boolean =>
  [...earlier, ...later].every(isEdit) && sameValue(entriesOf(earlier), entriesOf(later))

function joined(earlier: Step, later: Step): Step | undefined {
  const was: Cells = { ...earlier.was }
  for (const name of cellNames(later))
    if (!cellNames(earlier).includes(name) && later.was && Object.hasOwn(later.was, name))
      was[name] = later.was[name]
  const is: Cells = { ...earlier.is }
  for (const name of cellNames(later)) {
    if (later.is && Object.hasOwn(later.is, name)) is[name] = later.is[name]
    else delete is[name]
  }
  const kept = [...new Set([...Object.keys(was), ...Object.keys(is)])].filter((name) => {
    const [before, after] = [was, is].map((side) => (Object.hasOwn(side, name) ? [side[name]] : []))
    return before?.length !== after?.length || !sameValue(before?.[0], after?.[0])
  })
  const only = (side: Cells) =>
    Object.fromEntries(Object.entries(side).filter(([name]) => kept.includes(name)))
  return kept.length === 0 ? undefined : { ...later, was: only(was), is: only(is) }
}

/** Two lots of typing in one entry as one: what stood before the first, and after the last. Empty when it stands again as it stood. */
export function typedTogether(earlier: readonly Step[], later: readonly Step[]): Step[] {
  const alike = (a: Step, b: Step) => a.table === b.table && sameValue(a.key, b.key)
  const both = earlier.flatMap((step) => {
    const next = later.find((one) => alike(step, one))
    return next ? (joined(step, next) ?? []) : [step]
  })
  return [...both, ...later.filter((step) => !earlier.some((one) => alike(one, step)))]
}
