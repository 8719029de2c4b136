import { existsSync, readdirSync } from 'node:fs'
import { dirname, join } from 'node:path'
import Sqlite from 'better-sqlite3'
import { describe, expect, it } from 'vitest'
import { bookMark, connect, makeSafe } from '../../db/connection.ts'
import { bookPath, newJob, openedBook, temporaryFolder, tickingClock, valueOf } from './temporaryBook.ts'
import { openBook } from '../../db/open.ts'

describe('opening the book', () => {
  it('makes a new book where there is none, in a folder that is made too, and leaves nothing else beside it', () => {
    const path = join(temporaryFolder(), 'deep', 'down', 'jobs.book')
    const book = openBook(path, { now: tickingClock() })
    book.close()
    expect(readdirSync(dirname(path))).toEqual(['jobs.book'])
    expect(book.copy).toBeNull()
  })

  it('keeps everything over a restart', () => {
    const path = bookPath()
    const first = openBook(path, { now: tickingClock() })
    const job = first.jobs.create(newJob({ due: '2026-05-31' }))
    valueOf(first.jobs.change(job.id, [{ path: 'spec.size.width', value: 930.275, typed: '36 5/8"' }]))
    first.settings.change({ name: 'Test bench', unit: 'in' })
    const before = {
      job: first.jobs.open(job.id),
      log: first.jobs.changes(job.id),
      settings: first.settings.read(),
    }
    first.close()
    const again = openedBook(path)
    expect({
      job: again.jobs.open(job.id),
      log: again.jobs.changes(job.id),
      settings: again.settings.read(),
    }).toEqual(before)
    expect(again.jobs.open(job.id)?.entry.typed).toEqual({ 'size.width': '36 5/8"' })
  })

  it('marks the file as a job book at byte 68', () => {
    const path = bookPath()
    openBook(path, { now: tickingClock() }).close()
    const db = new Sqlite(path, { readonly: true })
    expect(db.pragma('application_id', { simple: true })).toBe(bookMark)
    db.close()
  })

  it('sets every connection up so that a power cut takes nothing back, and reads it back', () => {
    const path = bookPath()
    openBook(path, { now: tickingClock() }).close()
    const { db, close } = connect(path, tickingClock())
    const stands = (name: string) => db.pragma(name, { simple: true })
    expect(
      ['journal_mode', 'synchronous', 'foreign_keys', 'trusted_schema', 'cell_size_check'].map(stands),
    ).toEqual(['wal', 2, 1, 0, 1])
    close()
  })

  it('refuses a disk on which the settings do not hold', () => {
    const db = new Sqlite(':memory:')
    expect(() => makeSafe(db)).toThrow(expect.objectContaining({ code: 'unsafe' }))
    db.close()
  })

  it('lets a second window make the same new book without harm', () => {
    const path = bookPath()
    const one = openedBook(path)
    const other = openedBook(path)
    one.jobs.create(newJob({ title: 'from one' }))
    expect(other.jobs.list('', null).rows.map((row) => row.title)).toEqual(['from one'])
    expect(existsSync(`${path}.new-${process.pid}`)).toBe(false)
  })
})
