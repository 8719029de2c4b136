import type { Change } from '../../shared/job/job.ts'
import type { Edit } from './edits.ts'

const place = (jobId: number): string => `bracework.unsent.${jobId}`

/** Lays by edits that the book did not take before their job was put away, so that they go when it is next opened. */
export function layBy(jobId: number, edits: readonly Edit[]): void {
  if (edits.length === 0) window.localStorage.removeItem(place(jobId))
  else window.localStorage.setItem(place(jobId), JSON.stringify(edits))
}

/** Lets go of everything laid by: another book has taken this one's place, and its jobs are others. */
export function forgetUnsent(): void {
  for (const key of Object.keys(window.localStorage))
    if (key.startsWith(place(0).slice(0, -1))) window.localStorage.removeItem(key)
}

const isChange = (one: unknown): one is Change =>
  typeof one === 'object' && one !== null && 'path' in one && typeof one.path === 'string' && 'value' in one

/** The edits laid by for a job, taken out of their place; none when there are none or they can't be read. */
export function takeUp(jobId: number): Edit[] {
  const held = window.localStorage.getItem(place(jobId))
  if (held === null) return []
  window.localStorage.removeItem(place(jobId))
  try {
    const edits: unknown = JSON.parse(held)
    return Array.isArray(edits)
      ? edits.filter((edit): edit is Edit => Array.isArray(edit) && edit.every(isChange))
      : []
  } catch (error) {
    if (error instanceof SyntaxError) return []
    throw error
  }
}
