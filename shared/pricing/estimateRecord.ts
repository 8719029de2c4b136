import type { Estimate, EstimateLine } from './estimate.ts'
import type { EstimateRecord, WorkDone } from './workDone.ts'

/** A job that was done: the estimate it was sold on, and the work entered on it. */
export type FinishedJob = { jobId: number; estimate: Pick<Estimate, 'lines'>; done: readonly WorkDone[] }

/** What is compared: minutes of work, metres of timber. Sums of money are told elsewhere. */
const compared = (done: WorkDone): boolean => done.what !== 'cost'

/** What a line was estimated at, in minutes or metres. */
const estimatedOf = (line: EstimateLine): number =>
  line.group === 'timber' ? (line.metres ?? line.quantity) : line.unit === 'minute' ? line.quantity : 0

/** An operation stands behind its group in a line's id: 'rip' in 'making.rip', the section in 'timber.ex 32 × 150'. */
const operationOf = ({ group, id }: Pick<EstimateLine, 'group' | 'id'>): string => id.slice(group.length + 1)

const inMeasure = ({ what, quantity }: WorkDone): number => (what === 'hours' ? quantity * 60 : quantity)

/** How often a line's operation is done, a finish once a coat; undefined where its minutes were put by hand. */
function countOf({ unit, how }: EstimateLine): number | undefined {
  const { number, coats = 1 } = how.inputs
  return unit === 'minute' && number !== undefined ? number * coats : undefined
}

type Row = Pick<EstimateRecord, 'group' | 'operation' | 'estimated' | 'done'> & {
  counts: (number | undefined)[]
}

/** The counts in all, where every line has one. */
function counted(counts: Row['counts']): { count?: number } {
  const known = counts.filter((count) => count !== undefined)
  const whole = known.length > 0 && known.length === counts.length
  return whole ? { count: known.reduce((sum, count) => sum + count, 0) } : {}
}

/** One job's rows: an operation that hours were entered on by name, and the rest of its group in one. */
function rowsOf({ estimate, done }: FinishedJob): Row[] {
  const rows: Row[] = []
  for (const entry of done.filter(compared)) {
    const { group, operation } = entry
    const own = rows.find((row) => row.group === group && row.operation === operation)
    if (own) own.done += inMeasure(entry)
    else rows.push({ group, operation, estimated: 0, done: inMeasure(entry), counts: [] })
  }
  for (const line of estimate.lines) {
    const named = rows.find((row) => row.group === line.group && row.operation === operationOf(line))
    const rest = rows.find((row) => row.group === line.group && row.operation === '')
    const row = named ?? rest
    if (!row) continue
    row.estimated += estimatedOf(line)
    row.counts.push(row === named ? countOf(line) : undefined)
  }
  return rows
}

/**
 * Estimated against done over jobs, by group and operation: minutes of work, metres of timber. Where hours were entered on an operation it
 * stands by itself; hours entered on a group ('' as operation) stand against what is left of it. A job counts only
 * in what was entered for it. Two jobs ripped in 20 and 30 minutes by estimate and 0.75 hours each: 2 jobs, 50 against 90.
 */
export function estimateRecord(jobs: readonly FinishedJob[]): EstimateRecord[] {
  const records = new Map<string, Row & { jobs: number }>()
  for (const job of jobs)
    for (const row of rowsOf(job)) {
      const key = `${row.group}|${row.operation}`
      const own = records.get(key)
      if (!own) records.set(key, { ...row, jobs: 1 })
      else {
        own.jobs += 1
        own.estimated += row.estimated
        own.done += row.done
        own.counts.push(...row.counts)
      }
    }
  return [...records.values()].map(({ counts, ...record }) => ({ ...record, ...counted(counts) }))
}
