import type { Change } from '../../shared/job/job.ts'
import { hand, isThere } from './hand.ts'
import type { Edit } from './edits.ts'

const all = 'bracework.unsent.'
const place = (jobId: number): string => `${all}${jobId}.${hand}`

/**
 * Lays by edits that the book hasn't taken yet, at every key: a window that dies in the middle of a word leaves them behind, and so does a job that is put away while
 * the book doesn't answer. Each window has a place of its own.
 */
export function layBy(jobId: number, edits: readonly Edit[]): void {
  if (edits.length === 0) window.localStorage.removeItem(place(jobId))
  else window.localStorage.setItem(place(jobId), JSON.stringify(edits))
}

/** Lets go of everything laid by: another book has taken this one's place, and its jobs are others. */
export function forgetUnsent(): void {
  for (const key of Object.keys(window.localStorage))
    if (key.startsWith(all)) window.localStorage.removeItem(key)
}

const isChange = (one: unknown): one is Change =>
  typeof one === 'object' && one !== null && 'path' in one && typeof one.path === 'string' && 'value' in one

/** Edits as they were laid by; none when they can't be read. */
function editsIn(held: string): Edit[] {
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

/** The edits laid by for a job, taken out of their place: this window's own, and those of windows that are gone. One that is open still sends its own. */
export async function takeUp(jobId: number): Promise<Edit[]> {
  const stem = `${all}${jobId}`
  const found: Edit[] = []
  for (const key of Object.keys(window.localStorage).sort()) {
    if (key !== stem && !key.startsWith(`${stem}.`)) continue
    if (await isThere(key.slice(stem.length + 1))) continue
    found.push(...editsIn(window.localStorage.getItem(key) ?? ''))
    window.localStorage.removeItem(key)
  }
  return found
}
