import type { Estimate, EstimateGroup } from '../../shared/pricing/estimate.ts'
import { operations, operationRates, type Operation, type StandardTimes } from '../../shared/pricing/needs.ts'
import { operationWords } from '../../shared/pricing/standardTimes.ts'
import type { EstimateRecord, WorkDone } from '../../shared/pricing/workDone.ts'
import { groupWords } from '../price/lineWords.ts'

/** What is counted: hours of work, metres of timber, sums of money in pence. */
export type Measure = 'hours' | 'metres' | 'money'

/** One thing estimated beside what it really took; done null where nothing was entered for it. part: a part of the row above. */
export type AgainstRow = {
  key: string
  words: string
  measure: Measure
  estimated: number
  done: number | null
  part: boolean
}

const measures: Record<EstimateGroup, Measure> = {
  timber: 'metres',
  fixings: 'money',
  ironmongery: 'money',
  finish: 'money',
  making: 'hours',
  hanging: 'hours',
  extras: 'money',
}

const whatOf: Record<Measure, WorkDone['what']> = { hours: 'hours', metres: 'timber', money: 'cost' }

type Line = Estimate['lines'][number]

/** What a line was estimated at, in its group's measure; work that isn't counted in minutes (kilometres) has no hours. */
function estimatedOf(line: Line, measure: Measure): number {
  if (measure === 'money') return line.pence
  if (measure === 'metres') return line.metres ?? line.quantity
  return line.unit === 'minute' ? line.quantity / 60 : 0
}

/** An operation or a section, as a line's id names it behind its group: 'rip' of 'making.rip'. */
export const nameBehind = ({ group, id }: Pick<Line, 'group' | 'id'>): string => id.slice(group.length + 1)

const total = (amounts: readonly number[]): number | null =>
  amounts.length === 0 ? null : amounts.reduce((sum, one) => sum + one, 0)

const rowOf = (
  head: Pick<AgainstRow, 'key' | 'words' | 'measure' | 'part'>,
  lines: readonly Line[],
  entries: readonly WorkDone[],
): AgainstRow => ({
  ...head,
  estimated: lines.reduce((sum, line) => sum + estimatedOf(line, head.measure), 0),
  done: total(entries.map(({ quantity }) => quantity)),
})

/** What a job was estimated at beside what was entered for it, by group, with each operation that something was entered on by name. */
export function against(estimate: Pick<Estimate, 'lines'> | null, done: readonly WorkDone[]): AgainstRow[] {
  const groups = Object.keys(measures) as EstimateGroup[]
  return groups.flatMap((group) => {
    const measure = measures[group]
    const lines = (estimate?.lines ?? []).filter((line) => line.group === group)
    const entries = done.filter((entry) => entry.group === group && entry.what === whatOf[measure])
    if (lines.length === 0 && entries.length === 0) return []
    const named = [...new Set(entries.map(({ operation }) => operation))].filter((name) => name !== '')
    return [
      rowOf({ key: group, words: groupWords[group], measure, part: false }, lines, entries),
      ...named.map((name) =>
        rowOf(
          { key: `${group}.${name}`, words: operationName(name), measure, part: true },
          lines.filter((line) => nameBehind(line) === name),
          entries.filter(({ operation }) => operation === name),
        ),
      ),
    ]
  })
}

const isOperation = (name: string): name is Operation => operations.some((one) => one === name)

/** An operation as it is said; a section by its own name. */
export const operationName = (name: string): string => (isOperation(name) ? operationWords[name] : name)

/** To what a standard time is sensibly rounded: whole minutes from ten up, half minutes from one, else 0.05. */
function sensible(minutes: number): number {
  const step = minutes >= 10 ? 1 : minutes >= 1 ? 0.5 : 0.05
  return Math.round(Math.round(minutes / step) * step * 100) / 100
}

/**
 * The standard time that a record would have been right with, minutes: what it took by how often it was done, whatever the standard was
 * then. undefined where that can't be told, or where it is the standard already. 14 rips in 90 minutes: 6.5 each.
 */
export function betterTime(
  times: StandardTimes,
  { group, operation, count, done }: EstimateRecord,
): { operation: Operation; minutes: number } | undefined {
  if (!isOperation(operation) || !count || done <= 0) return undefined
  if ((operationRates[operation] === 'hour' ? 'making' : 'hanging') !== group) return undefined
  const minutes = sensible(done / count)
  return minutes === times[operation] || minutes === 0 ? undefined : { operation, minutes }
}

/** How far off an estimate was: +20 is a fifth over. undefined where nothing was estimated. */
export const percentOff = ({ estimated, done }: { estimated: number; done: number }): number | undefined =>
  estimated > 0 ? Math.round((done / estimated - 1) * 100) : undefined
