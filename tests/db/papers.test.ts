import { createHash } from 'node:crypto'
import Sqlite from 'better-sqlite3'
import { describe, expect, it } from 'vitest'
import type { NewPaper } from '../../db/papers.ts'
import { design } from '../../shared/gate/design.ts'
import { parseSpec } from '../../shared/gate/parseSpec.ts'
import { standardDraft } from '../../shared/gate/standardSpec.ts'
import type { Job } from '../../shared/job/job.ts'
import { bookPath, newJob, openedBook, valueOf } from './temporaryBook.ts'

const bytes = new TextEncoder().encode('%PDF-1.7 the very card')

/** A card of a real gate, 915 by 1800. */
function cardOf(job: Job, given: Partial<NewPaper> = {}): NewPaper {
  const draft = standardDraft()
  const spec = valueOf(
    parseSpec({
      ...draft,
      size: { from: 'leaf', width: 915, height: 1800 },
      boards: { ...draft.boards, rip: 'both' },
    }),
  )
  const outcome = design(spec)
  if (!outcome.made) throw new Error(JSON.stringify(outcome.stopped.checks))
  const { engine, figures, leaves, cuts, holes, checks } = outcome.design
  const { number, title, customer, due, notes } = job
  return {
    jobId: job.id,
    version: job.version,
    kind: 'job-card',
    revision: 1,
    format: 'a4',
    issuedAt: '2026-03-02T11:00:00.000Z',
    engine,
    spec,
    figures,
    parts: { leaves, cuts, holes, checks },
    header: {
      workshop: 'Test bench',
      number,
      title,
      customer,
      due,
      notes,
      revision: 1,
      issuedAt: '2026-03-02T11:00:00.000Z',
    },
    pages: 2,
    bytes,
    ...given,
  }
}

describe('issued papers', () => {
  it('keep spec, figures, parts, head, engine and bytes with their SHA-256, over a restart and any later change', () => {
    const path = bookPath()
    const book = openedBook(path)
    const job = book.jobs.create(newJob())
    const card = cardOf(job)
    const paper = book.papers.issue(card)
    expect(paper).toEqual({
      id: paper?.id,
      jobId: job.id,
      kind: 'job-card',
      revision: 1,
      format: 'a4',
      issuedAt: '2026-03-02T11:00:00.000Z',
      engine: card.engine,
      sha256: createHash('sha256').update(bytes).digest('hex'),
      pages: 2,
      size: bytes.length,
    })
    valueOf(
      book.jobs.change(job.id, [
        { path: 'spec.size.width', value: 700 },
        { path: 'customer.name', value: 'Another' },
      ]),
    )
    const again = openedBook(path)
    const id = paper?.id ?? 0
    expect(Buffer.from(again.papers.bytes(id)?.bytes ?? []).equals(bytes)).toBe(true)
    const { spec, figures, parts, header } = card
    expect(again.papers.frozen(id)).toEqual({
      paper,
      spec,
      figures,
      parts,
      header: JSON.parse(JSON.stringify(header)),
    })
  })

  it('count their revisions for each job', () => {
    const book = openedBook()
    const [one, other] = [book.jobs.create(newJob()), book.jobs.create(newJob())]
    book.papers.issue(cardOf(one))
    book.papers.issue(cardOf(one, { revision: 2 }))
    book.papers.issue(cardOf(other))
    expect([one, other].map(({ id }) => book.papers.list(id).map((paper) => paper.revision))).toEqual([
      [2, 1],
      [1],
    ])
    expect(book.papers.nextRevision(one.id, 'job-card')).toBe(3)
  })

  it('are refused when the job was changed, or the card issued, while they were made', () => {
    const book = openedBook()
    const job = book.jobs.create(newJob())
    valueOf(book.jobs.change(job.id, [{ path: 'title', value: 'Another' }]))
    expect(book.papers.issue(cardOf(job))).toBeUndefined()
    const now = { version: 2 }
    expect(book.papers.issue(cardOf(job, now))?.revision).toBe(1)
    expect(book.papers.issue(cardOf(job, now))).toBeUndefined()
    expect(book.papers.list(job.id)).toHaveLength(1)
  })

  it.each([0, 11, bytes.length - 1])(
    'with byte %i flipped on the disk are reported, never shown',
    (place) => {
      const path = bookPath()
      const book = openedBook(path)
      const id = book.papers.issue(cardOf(book.jobs.create(newJob())))?.id ?? 0
      expect(book.papers.bytes(id)?.bytes).toHaveLength(bytes.length)
      const spoilt = Buffer.from(bytes)
      spoilt[place] = (spoilt[place] ?? 0) ^ 1
      const db = new Sqlite(path)
      db.exec('DROP TRIGGER papers_stand')
      db.prepare('UPDATE papers SET bytes = ? WHERE id = ?').run(spoilt, id)
      db.close()
      expect(() => book.papers.bytes(id)).toThrow(
        expect.objectContaining({ code: 'damaged', message: expect.stringContaining('revision 1') }),
      )
    },
  )

  it('can’t be altered, replaced or taken out, whoever writes', () => {
    const path = bookPath()
    const book = openedBook(path)
    const id = book.papers.issue(cardOf(book.jobs.create(newJob())))?.id ?? 0
    const db = new Sqlite(path)
    db.pragma('recursive_triggers = ON')
    expect(() => db.exec('UPDATE papers SET pages = 9')).toThrow('never altered')
    expect(() => db.exec('DELETE FROM papers')).toThrow('never leaves the book')
    const cells =
      'id, job_id, kind, revision, format, issued_at, engine, pages, sha256, header, money, spec, figures, parts, bytes'
    expect(() => db.exec(`INSERT OR REPLACE INTO papers (${cells}) SELECT ${cells} FROM papers`)).toThrow(
      'never leaves the book',
    )
    db.close()
    expect(book.papers.bytes(id)?.paper.pages).toBe(2)
  })

  it('of a job without any are an empty list, and an unknown paper is nothing', () => {
    const book = openedBook()
    expect([book.papers.list(5), book.papers.bytes(5), book.papers.frozen(5)]).toEqual([
      [],
      undefined,
      undefined,
    ])
  })
})
