import { parseDraft } from '../gate/parseSpec.ts'
import { draftShape } from '../gate/spec.ts'
import { bad, good, type Problem, type Result } from '../problem.ts'
import type { Change, Job, Overlap } from './job.ts'
import { isJobField, jobFieldAt, readJobField, withJobField, type JobFieldPath } from './jobField.ts'
import { canHold, holdsReservedKey, placedAt, sameValue, valueAt } from './specPath.ts'
import { wordsAfterUnitChange, wordsForgotten, wordsKept } from './typedWords.ts'

/** What stood in a field before and after, null for nothing. Words typed for a length stand at 'typed.size.width'. */
export type KeptChange = { path: string; before: unknown; after: unknown }

/** A job after its changes, what to write down of them, and which of them replaced another window's edit. */
export type Applied = { job: Job; kept: KeptChange[]; overlaps: Overlap[] }

/** The sizes may be missing but their keys may not: taking them out leaves null. */
const emptied = /^size\.(width|height|widths\.\d|heights\.\d)$/

const refused = (field: string, message: string): Problem => ({ code: 'refused', field, message })

const specKeys = Object.keys(draftShape.entries)

/** What stands at a change's path now; undefined for a path that no job has. */
function standing(job: Job, path: string): unknown {
  if (isJobField(path)) return jobFieldAt(job, path)
  return valueAt(job.entry.spec, path.split('.').slice(1)) ?? null
}

function changeField(job: Job, path: JobFieldPath, change: Change): Result<Job> {
  if (change.typed !== undefined) return bad(refused(path, 'words are kept for lengths of the gate only'))
  const read = readJobField(path, change.value)
  return read.ok ? good(withJobField(job, path, read.value)) : read
}

/** The words typed go with the value: a new value without words forgets the old ones, which would now say something else. */
function typedAfter({ entry }: Job, { path, typed }: Change, moved: boolean): Record<string, string> {
  const key = path.slice('spec.'.length)
  if (typed !== undefined) return wordsKept(entry.typed, key, typed.trim())
  return moved ? wordsForgotten(entry.typed, key) : entry.typed
}

function changeSpec(job: Job, change: Change): Result<Job> {
  const [root, ...keys] = change.path.split('.')
  const path = keys.join('.')
  if (root !== 'spec' || keys[0] === undefined || !specKeys.includes(keys[0]))
    return bad(refused(change.path, 'this can’t be changed; a field of the job or of the gate is accepted'))
  const { spec } = job.entry
  if (!canHold(spec, keys) || holdsReservedKey(change.value))
    return bad(refused(change.path, 'there is nothing there to change; it may have been taken out meanwhile'))
  const value = change.value ?? (emptied.test(path) ? null : undefined)
  const moved = !sameValue(valueAt(spec, keys), value)
  const changed = moved ? placedAt(spec, keys, value) : spec
  // The draft is read as a whole once all changes are in, since one alone may need the next (a brace and its construction).
  return good({
    ...job,
    entry: { spec: changed as Job['entry']['spec'], typed: typedAfter(job, change, moved) },
  })
}

/**
 * Someone else's value that this change writes over: neither what the window believed stood there (before this call or after its
 * own earlier changes) nor what it sets.
 */
function overlapOf(before: Job, now: Job, change: Change): Overlap | undefined {
  if (change.was === undefined) return undefined
  const theirs = standing(now, change.path)
  const expected = [change.was, change.value].some((value) => sameValue(value, theirs))
  if (expected || sameValue(change.was, standing(before, change.path))) return undefined
  return { path: change.path, theirs, mine: change.value ?? null }
}

function differences(before: Job, after: Job, changes: Change[]): KeptChange[] {
  const paths = [...new Set(changes.map((change) => change.path))]
  const fields = paths.map((path) => ({ path, before: standing(before, path), after: standing(after, path) }))
  const words = [...new Set([...Object.keys(before.entry.typed), ...Object.keys(after.entry.typed)])].map(
    (path) => ({
      path: `typed.${path}`,
      before: before.entry.typed[path] ?? null,
      after: after.entry.typed[path] ?? null,
    }),
  )
  return [...fields, ...words].filter((field) => !sameValue(field.before, field.after))
}

/** The draft read as a whole, its problems named by the paths that changes use. */
function readWhole(job: Job): Result<Job> {
  const read = parseDraft(job.entry.spec)
  if (read.ok) return good({ ...job, entry: { spec: read.value, typed: job.entry.typed } })
  return {
    ok: false,
    problems: read.problems.map((problem) => ({ ...problem, field: `spec.${problem.field}` })),
  }
}

function inTheirUnit(before: Job, after: Job): Job {
  if (before.unit === after.unit) return after
  return {
    ...after,
    entry: { ...after.entry, typed: wordsAfterUnitChange(after.entry, before.unit, after.unit) },
  }
}

/**
 * A job with a list of changes made, all or none. Refused, each with its path: fields no job has, values a field doesn't take, a gate
 * that would no longer read as one. Another window's value that is written over is given back as an overlap, and stands in `kept`
 * as what was there before.
 */
export function applyChanges(job: Job, changes: Change[]): Result<Applied> {
  const problems: Problem[] = []
  const overlaps: Overlap[] = []
  let now = job
  for (const change of changes) {
    const next = isJobField(change.path) ? changeField(now, change.path, change) : changeSpec(now, change)
    if (!next.ok) {
      problems.push(...next.problems)
      continue
    }
    const overlap = overlapOf(job, now, change)
    if (overlap) overlaps.push(overlap)
    now = next.value
  }
  const whole = readWhole(now)
  if (!whole.ok) problems.push(...whole.problems)
  if (problems.length > 0 || !whole.ok) return { ok: false, problems }
  const after = inTheirUnit(job, whole.value)
  return good({ job: after, kept: differences(job, after, changes), overlaps })
}
