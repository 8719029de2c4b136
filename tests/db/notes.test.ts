import Sqlite from 'better-sqlite3'
import { describe, expect, it } from 'vitest'
import type { Book } from '../../db/open.ts'
import { mostPhotographs } from '../../shared/notes/photograph.ts'
import { smallPhotograph } from '../fixtures/photograph.ts'
import { newJob, openedBook } from './temporaryBook.ts'

const entry = { words: 'Ring before coming.', on: '2026-03-02', at: '14:05' }
const found = (book: Book, search: string): number => book.jobs.list(search, null).rows.length
const pictures = {
  bytes: Buffer.from(smallPhotograph.base64, 'base64'),
  thumbnail: Buffer.from(smallPhotograph.thumbnail, 'base64'),
}
const photographOf = (jobId: number, words = '') => ({ jobId, words, width: 8, height: 6, ...pictures })

describe('a job’s dated notes', () => {
  it('stand newest day first, whenever they were written down, and are found by their words', () => {
    const book = openedBook()
    const { id } = book.jobs.create(newJob())
    for (const [on, at, words] of [
      ['2026-03-02', '14:05', 'second'],
      ['2026-02-27', '16:00', 'first'],
      ['2026-03-02', '14:30', 'third'],
    ] as const)
      book.notes.add(id, { words, on, at })
    expect(book.notes.list(id, false)).toMatchObject({
      notes: [{ words: 'third', place: 3 }, { words: 'second' }, { words: 'first', place: 2 }],
      more: 0,
    })
    expect([found(book, 'secon'), found(book, 'fourth')]).toEqual([1, 0])
    book.jobs.change(id, [{ path: 'title', value: 'Yard door' }])
    expect(found(book, 'yard third')).toBe(1)
  })

  it('are given a hundred at a time unless all are asked for', () => {
    const book = openedBook()
    const { id } = book.jobs.create(newJob())
    for (let n = 0; n < 103; n += 1) book.notes.add(id, { ...entry, words: `note ${n}` })
    const { notes, more } = book.notes.list(id, false)
    expect([notes.length, more, notes[0]?.words]).toEqual([100, 3, 'note 102'])
    expect(book.notes.list(id, true)).toMatchObject({ more: 0 })
  })

  it('are mended with their earlier words kept in the log; the same again writes nothing', () => {
    const book = openedBook()
    const { id } = book.jobs.create(newJob())
    const note = book.notes.add(id, { ...entry, words: 'Ring frist.' })
    const mended = book.notes.mend(note?.id ?? 0, { words: 'Ring first.', on: '2026-03-01', at: '14:05' })
    expect(mended).toMatchObject({ words: 'Ring first.', on: '2026-03-01', place: 1 })
    expect(mended?.mendedAt).not.toBeNull()
    expect(book.notes.mend(note?.id ?? 0, { words: 'Ring first.', on: '2026-03-01', at: '14:05' })).toEqual(
      mended,
    )
    expect(book.jobs.changes(id).map(({ path, before, after }) => [path, before, after])).toEqual([
      ['note.1.words', 'Ring frist.', 'Ring first.'],
      ['note.1.when', '2026-03-02 14:05', '2026-03-01 14:05'],
    ])
    expect([found(book, 'frist'), found(book, 'first')]).toEqual([0, 1])
  })

  it('are taken away and put back, and never leave the book', () => {
    const book = openedBook()
    const { id } = book.jobs.create(newJob())
    const note = book.notes.add(id, entry)
    book.notes.putAway(note?.id ?? 0, true)
    expect([book.notes.list(id, true).notes, found(book, 'ring')]).toEqual([[], 0])
    book.notes.putAway(note?.id ?? 0, false)
    expect([book.notes.list(id, true).notes.length, found(book, 'ring')]).toEqual([1, 1])
    const db = new Sqlite(book.path)
    expect(() => db.exec('DELETE FROM job_notes')).toThrow('a note never leaves the book')
    expect(() => db.exec('UPDATE job_notes SET place = 7')).toThrow('in its place')
    db.close()
  })

  it('of a job or of a number that isn’t there are none', () => {
    const book = openedBook()
    expect([book.notes.add(7, entry), book.notes.mend(7, entry), book.notes.putAway(7, true)]).toEqual([
      ...[undefined, undefined, undefined],
    ])
  })
})

describe('a job’s photographs', () => {
  it('are kept to the byte, in the order they came, and found by what is said of them', () => {
    const book = openedBook()
    const { id } = book.jobs.create(newJob())
    const first = book.photographs.add(photographOf(id, 'the leaning post'))
    book.photographs.add(photographOf(id))
    expect(book.photographs.list(id).map(({ photograph }) => [photograph.place, photograph.words])).toEqual([
      [1, 'the leaning post'],
      [2, ''],
    ])
    const kept = book.photographs.bytes(first?.photograph.id ?? 0)
    expect(Buffer.from(kept?.bytes ?? []).equals(pictures.bytes)).toBe(true)
    expect(found(book, 'leaning')).toBe(1)
    book.photographs.describe(first?.photograph.id ?? 0, 'the straight post')
    expect([found(book, 'leaning'), found(book, 'straight')]).toEqual([0, 1])
  })

  it('are taken away and put back; the book refuses to alter or drop one', () => {
    const book = openedBook()
    const { id } = book.jobs.create(newJob())
    const photograph = book.photographs.add(photographOf(id))?.photograph.id ?? 0
    book.photographs.putAway(photograph, true)
    expect(book.photographs.list(id)).toEqual([])
    book.photographs.putAway(photograph, false)
    expect(book.photographs.list(id)).toHaveLength(1)
    expect(book.jobs.changes(id).map(({ path, after }) => [path, after])).toEqual([
      ['photograph.1.putAway', true],
      ['photograph.1.putAway', false],
    ])
    const db = new Sqlite(book.path)
    expect(() => db.exec('DELETE FROM photographs')).toThrow('a photograph never leaves the book')
    expect(() => db.exec("UPDATE photographs SET bytes = x'ff'")).toThrow('never altered')
    db.close()
  })

  it('that are no longer what was put in are said to be damaged, and never shown', () => {
    const book = openedBook()
    const { id } = book.jobs.create(newJob())
    const photograph = book.photographs.add(photographOf(id))?.photograph.id ?? 0
    const db = new Sqlite(book.path)
    db.exec("DROP TRIGGER photographs_stand; UPDATE photographs SET bytes = x'ffd8ff', thumbnail = x'ffd8'")
    db.close()
    expect(book.photographs.list(id)).toMatchObject([{ thumbnail: null }])
    expect(() => book.photographs.bytes(photograph)).toThrow('Photograph 1 is damaged')
  })

  it('of one job are 200 at most', () => {
    const book = openedBook()
    const { id } = book.jobs.create(newJob())
    book.together(() => {
      for (let n = 0; n < mostPhotographs; n += 1) book.photographs.add(photographOf(id))
    })
    expect(() => book.photographs.add(photographOf(id))).toThrow('its 200 photographs')
  })

  it('and notes leave with a sample job', () => {
    const book = openedBook()
    const { id } = book.jobs.create(newJob({ sample: true }))
    book.photographs.add(photographOf(id))
    book.notes.add(id, entry)
    expect(book.sample.remove()).toBe(1)
    expect([book.notes.list(id, true).notes, book.photographs.list(id)]).toEqual([[], []])
  })
})

describe('what happened on a job', () => {
  it('is read from all that is kept of it', () => {
    const book = openedBook()
    const job = book.jobs.create(newJob())
    book.jobs.change(job.id, [{ path: 'spec.size.width', value: 885, typed: '885' }])
    book.notes.add(job.id, entry)
    book.photographs.add(photographOf(job.id))
    expect(book.happened.list(job.id)?.map(({ words }) => words)).toEqual([
      `Job ${job.number} started`,
      expect.stringMatching(/^Width: 885 mm/),
      'Note: “Ring before coming.”',
      'A photograph added',
    ])
    book.notes.putAway(1, true)
    expect(
      book.happened
        .list(job.id)
        ?.slice(-3)
        .map(({ words }) => words),
    ).toEqual(['Note: “Ring before coming.”', 'A photograph added', 'A note taken away'])
    const again = book.jobs.repeat(job.id)
    expect(book.happened.list(again?.id ?? 0)?.map(({ words }) => words)).toEqual([
      `Job ${again?.number} started`,
      `Made again from job ${job.number}`,
    ])
    expect(book.happened.list(99)).toBeUndefined()
  })
})
