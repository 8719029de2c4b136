import { applyChanges } from '../../shared/job/applyChange.ts'
import type { Change, Job, Overlap } from '../../shared/job/job.ts'
import { sameValue, valueAt } from '../../shared/job/specPath.ts'

/** Changes that only make sense together (a construction and its brace, say): kept or refused as one. */
export type Edit = Change[]

/** The key a path's typed words are kept under: 'size.width' for 'spec.size.width'. */
export const typedKey = (path: string): string => path.replace(/^spec\./, '')

/** What stands at a change's path of a job, null where there is nothing. */
export const standing = (job: Job, path: string): unknown =>
  valueAt(path.startsWith('spec.') ? job.entry : job, path.split('.')) ?? null

/** The job with edits laid over it, by the same rules as the book's own; an edit that no longer fits is left out. */
export const withEdits = (job: Job, edits: readonly Edit[]): Job =>
  edits.reduce((now, edit) => {
    const applied = applyChanges(now, edit)
    return applied.ok ? applied.value.job : now
  }, job)

/**
 * The waiting edits with one more. An edit of a single field takes the place of that field's last waiting edit, keeping what was
 * believed to stand there before the first.
 */
export function queued(waiting: readonly Edit[], edit: Edit): Edit[] {
  const only = edit.length === 1 ? edit[0] : undefined
  const last = waiting.at(-1)
  const before = last?.length === 1 ? last[0] : undefined
  if (!only || !before || before.path !== only.path) return [...waiting, edit]
  return [...waiting.slice(0, -1), [{ ...only, was: before.was }]]
}

/** Overlaps worth telling: both windows wrote different things. */
export const tellable = (overlaps: readonly Overlap[]): Overlap[] =>
  overlaps.filter((one) => !sameValue(one.theirs, one.mine))

/** The first edits of those waiting that go in one request: up to 100 changes, and always one edit. */
export function oneBatch(waiting: readonly Edit[]): Edit[] {
  let changes = 0
  const fits = waiting.findIndex((edit) => (changes += edit.length) > 100)
  return fits === -1 ? [...waiting] : waiting.slice(0, Math.max(1, fits))
}
