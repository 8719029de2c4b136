import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { onTestFinished } from 'vitest'
import { openBook, type Book, type OpenOptions } from '../../db/open.ts'
import { standardDraft } from '../../shared/gate/standardSpec.ts'
import type { NewJob } from '../../db/jobWriting.ts'

/** A clock that goes on a second with each look, from the morning of 2 March 2026. */
export function tickingClock(start = '2026-03-02T08:00:00.000Z'): () => string {
  let looks = 0
  return () => new Date(Date.parse(start) + 1000 * looks++).toISOString()
}

/** A folder of its own for one test, gone when the test is over. */
export function temporaryFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'bracework-test-'))
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }))
  return folder
}

export const bookPath = (): string => join(temporaryFolder(), 'jobs.book')

/** A real book on the disk, closed when the test is over. */
export function openedBook(path = bookPath(), options: Partial<OpenOptions> = {}): Book {
  const book = openBook(path, { now: tickingClock(), ...options })
  onTestFinished(() => book.close())
  return book
}

/** A new job's details: a customer nobody has, and the standard gate. */
export const newJob = (given: Partial<NewJob> = {}): NewJob => ({
  customer: { name: 'Peg Sash', address: '', town: 'Nether Test', phone: '01632 960001', email: '' },
  title: 'Side gate',
  due: null,
  unit: 'mm',
  spec: standardDraft(),
  ...given,
})

/** The value of a result that must be good. */
export function valueOf<T>(result: { ok: true; value: T } | { ok: false; problems: unknown } | undefined): T {
  if (result?.ok !== true) throw new Error(`refused: ${JSON.stringify(result)}`)
  return result.value
}
