import { copyFileSync, mkdirSync, readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs'
import Sqlite from 'better-sqlite3'
import { describe, expect, it } from 'vitest'
import { BookProblem, bookProblemFrom } from '../../db/bookProblem.ts'
import { connect } from '../../db/connection.ts'
import { customersRoom } from '../../db/customers.ts'
import { jobsRoom } from '../../db/jobs.ts'
import { openBook } from '../../db/open.ts'
import { plainEntry } from '../../shared/pricing/terms.ts'
import { bookPath, newJob, openedBook, tickingClock, valueOf } from './temporaryBook.ts'

const open = (path: string) => openBook(path, { now: tickingClock() })

/** A closed book with enough in it to cover many pages. */
function fullBook(): string {
  const path = bookPath()
  const book = open(path)
  book.together(() => {
    for (let place = 1; place <= 60; place += 1)
      book.jobs.create(
        newJob({
          title: `gate ${place}`,
          customer: { name: `Peg ${place}`, address: '', town: '', phone: '', email: '' },
        }),
      )
  })
  book.close()
  return path
}

function problemOn(path: string): BookProblem {
  try {
    open(path).close()
  } catch (problem) {
    if (problem instanceof BookProblem) return problem
    throw problem
  }
  throw new Error('the book opened')
}

describe('a book that is not sound', () => {
  it('takes an empty file for damage, never for a fresh book, and leaves it alone', () => {
    const path = bookPath()
    writeFileSync(path, '')
    expect(problemOn(path)).toMatchObject({ code: 'damaged', message: expect.stringContaining('empty') })
    expect(readFileSync(path)).toHaveLength(0)
  })

  it('refuses a text, another program’s book, and a folder', () => {
    const text = bookPath()
    writeFileSync(text, 'Dear customer, '.repeat(300))
    const foreign = bookPath()
    const db = new Sqlite(foreign)
    db.exec('CREATE TABLE letters (id INTEGER PRIMARY KEY)')
    db.close()
    const folder = bookPath()
    mkdirSync(folder)
    expect([text, foreign, folder].map((path) => problemOn(path).code)).toEqual([
      'not-a-book',
      'not-a-book',
      'not-a-book',
    ])
  })

  it('refuses a book whose first bytes are garbage', () => {
    const path = fullBook()
    const bytes = readFileSync(path)
    bytes.fill(0x5a, 0, 64)
    writeFileSync(path, bytes)
    expect(problemOn(path).code).toBe('not-a-book')
  })

  it('reports a book cut short as damaged', () => {
    const path = fullBook()
    const whole = readFileSync(path).length
    for (const share of [0.9, 0.5, 0.1]) {
      const cut = `${path}-${share}`
      copyFileSync(path, cut)
      truncateSync(cut, Math.floor(whole * share))
      expect(problemOn(cut).code).toBe('damaged')
    }
  })

  it('reports a book with an overwritten page as damaged', () => {
    const path = fullBook()
    const bytes = readFileSync(path)
    bytes.fill(0xa5, 4096 * 3, 4096 * 4)
    writeFileSync(path, bytes)
    expect(problemOn(path).code).toBe('damaged')
  })

  it('refuses a book that a newer program has laid out, without touching it', () => {
    const path = fullBook()
    const db = new Sqlite(path)
    db.pragma('user_version = 999')
    db.close()
    const before = readFileSync(path)
    expect(problemOn(path)).toMatchObject({ code: 'newer', message: expect.stringContaining('newer') })
    expect(readFileSync(path).equals(before)).toBe(true)
  })

  it('says so of a book whose layout isn’t what its number says, and leaves it alone', () => {
    const path = bookPath()
    openedBook(path).close()
    const db = new Sqlite(path)
    db.exec('ALTER TABLE jobs RENAME COLUMN width_mm TO leaf_width_mm')
    db.close()
    expect(problemOn(path)).toMatchObject({ code: 'damaged', message: expect.stringContaining('laid out') })
  })

  it('makes no new book over the remains of one that was moved away, and leaves them alone', () => {
    const path = bookPath()
    const book = openedBook(path)
    book.jobs.create(newJob())
    const moved = bookPath()
    for (const part of ['', '-wal']) copyFileSync(`${path}${part}`, `${moved}${part}`)
    rmSync(moved)
    const remains = readFileSync(`${moved}-wal`)
    expect(problemOn(moved)).toMatchObject({ code: 'damaged', message: expect.stringContaining('missing') })
    expect(readFileSync(`${moved}-wal`).equals(remains)).toBe(true)
    copyFileSync(path, moved)
    expect(openedBook(moved).jobs.count().jobs).toBe(1)
  })

  it('reports a gate that can no longer be read, naming its job, and still lists and opens the others', () => {
    const path = bookPath()
    const book = openedBook(path)
    const spoilt = book.jobs.create(newJob())
    const sound = book.jobs.create(newJob({ title: 'sound' }))
    const db = new Sqlite(path)
    db.prepare(`UPDATE jobs SET entry = json_set(entry, '$.spec.boards', 7) WHERE id = ?`).run(spoilt.id)
    db.close()
    expect(() => book.jobs.open(spoilt.id)).toThrow(
      expect.objectContaining({ code: 'damaged', message: expect.stringContaining(spoilt.number) }),
    )
    expect(book.jobs.open(sound.id)?.title).toBe('sound')
    expect(book.jobs.list('', null).rows).toHaveLength(2)
  })
})

describe('a priced job that is damaged', () => {
  it('is reported by the option or the quotation that can’t be read, and the rest goes on', () => {
    const path = bookPath()
    const book = openedBook(path)
    const { id } = book.jobs.create(newJob())
    const option = book.options.add(id, { name: 'Oak', spec: null, entry: plainEntry })
    const db = new Sqlite(path)
    db.pragma('ignore_check_constraints = ON')
    db.exec(`UPDATE options SET entry = '{"extras":7}'`)
    const cells = 'job_id, kind, revision, format, issued_at, engine, spec, figures, parts, header'
    db.prepare(
      `INSERT INTO papers (${cells}, money, pages, bytes, sha256)
       VALUES (?, 'quotation', 3, 'a4', '', '1', '{}', '{}', '{}', '{}', '7', 1, x'25', ?)`,
    ).run(id, '0'.repeat(64))
    db.close()
    expect(() => book.options.list(id)).toThrow(
      expect.objectContaining({ code: 'damaged', message: expect.stringContaining('‘Oak’') }),
    )
    expect(() => book.quotations.money(1)).toThrow(
      expect.objectContaining({ code: 'damaged', message: expect.stringContaining('quotation 3') }),
    )
    expect([book.jobs.open(id)?.id, option?.name, book.papers.list(id).length]).toEqual([id, 'Oak', 1])
  })
})

describe('trouble with the disk', () => {
  it('turns what the store and the disk say into the book’s own problems', () => {
    const coded = (code: string) => Object.assign(new Error('raw'), { code })
    const codes = [
      'SQLITE_BUSY',
      'SQLITE_BUSY_SNAPSHOT',
      'SQLITE_FULL',
      'ENOSPC',
      'SQLITE_CORRUPT_VTAB',
      'SQLITE_NOTADB',
      'SQLITE_READONLY',
      'EACCES',
      'SQLITE_IOERR_WRITE',
    ].map((code) => bookProblemFrom(coded(code)))
    expect(codes.map((problem) => (problem instanceof BookProblem ? problem.code : 'not ours'))).toEqual([
      'locked',
      'locked',
      'full',
      'full',
      'damaged',
      'not-a-book',
      'not-writable',
      'not-writable',
      'disk',
    ])
  })

  it('leaves faults of the program as they are', () => {
    const fault = Object.assign(new Error('no such column'), { code: 'SQLITE_ERROR' })
    expect(bookProblemFrom(fault)).toBe(fault)
  })

  it('reports a full disk on writing, and what was kept before is still there', () => {
    const path = fullBook()
    const connection = connect(path, tickingClock())
    const jobs = jobsRoom(connection, customersRoom(connection))
    const job = jobs.create(newJob())
    const pages = Number(connection.db.pragma('page_count', { simple: true }))
    connection.db.pragma(`max_page_count = ${pages + 4}`)
    const notes = 'x'.repeat(19000)
    expect(() => {
      for (let turn = 0; turn < 60; turn += 1)
        valueOf(jobs.change(job.id, [{ path: 'notes', value: notes + turn }]))
    }).toThrow(expect.objectContaining({ code: 'full' }))
    expect(jobs.open(job.id)?.number).toBe(job.number)
    connection.close()
  })

  it('says that the book is busy when another window won’t let go', () => {
    const path = bookPath()
    const book = openedBook(path)
    const other = new Sqlite(path)
    other.exec('BEGIN IMMEDIATE')
    expect(() => book.jobs.create(newJob())).toThrow(expect.objectContaining({ code: 'locked' }))
    other.exec('ROLLBACK')
    other.close()
    expect(book.jobs.create(newJob()).number).toBe('2026-001')
  })
})
