import { readdirSync, utimesSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { thinOut } from '../../db/keeping/copies.ts'
import type { BookCopy, CopyReason } from '../../shared/keeping/keepingModel.ts'
import { daysToRemindOf } from '../../shared/keeping/reminder.ts'
import { copiesToDrop } from '../../shared/keeping/thinning.ts'
import { temporaryFolder } from '../db/temporaryBook.ts'

const dayLength = 86_400_000
const dayAt = (number: number): string =>
  new Date(Date.parse('2026-01-05T00:00:00Z') + number * dayLength).toISOString().slice(0, 10)

const copy = (day: string, why: CopyReason = 'daily', time = '08:00:00'): BookCopy => ({
  name: `${day} ${time} ${why}`,
  at: `${day}T${time}`,
  why,
  bytes: 1,
})

/** Lives through days: on each that is worked, a copy in the morning and one at closing, then thinned out. */
function afterDays(days: number, works: (number: number) => boolean): BookCopy[] {
  let copies: BookCopy[] = []
  for (let number = 0; number < days; number += 1) {
    if (!works(number)) continue
    const day = dayAt(number)
    for (const made of [copy(day), copy(day, 'closing', '17:30:00')]) {
      copies = [...copies, made]
      const gone = new Set(copiesToDrop(copies, day))
      copies = copies.filter((one) => !gone.has(one))
    }
  }
  return copies
}

const days = (copies: BookCopy[]) => copies.map(({ at }) => at.slice(0, 10))

describe('thinning the copies out', () => {
  it('keeps, after a year of days, 7 days, 4 weeks and 12 months, each by its last copy', () => {
    // From Monday 5 January 2026; day 364 is Monday 4 January 2027. Worked by hand on a calendar: Sundays end weeks.
    const kept = days(afterDays(365, () => true))
    expect(kept).toEqual([
      ...['2026-02-28', '2026-03-31', '2026-04-30', '2026-05-31', '2026-06-30', '2026-07-31'],
      ...['2026-08-31', '2026-09-30', '2026-10-31', '2026-11-30', '2026-12-20', '2026-12-27'],
      ...['2026-12-29', '2026-12-30', '2026-12-31', '2027-01-01', '2027-01-02', '2027-01-03', '2027-01-04'],
    ])
  })

  it('never lets go of the newest copy, nor of the last of any of the 7 latest days, through a year of any working pattern', () => {
    for (const works of [(n: number) => n % 7 < 5, (n: number) => n % 2 === 0, (n: number) => n % 31 < 3]) {
      const worked = Array.from({ length: 365 }, (_, n) => n).filter(works)
      for (let until = 20; until < 365; until += 45) {
        const kept = afterDays(until, works)
        const lately = worked
          .filter((n) => n < until)
          .slice(-7)
          .map(dayAt)
        expect(days(kept)).toEqual(expect.arrayContaining(lately))
        expect(kept.length).toBeLessThanOrEqual(7 + 4 + 12)
        expect(kept.every(({ why }) => why === 'closing')).toBe(true)
      }
    }
  })

  it('takes nothing away because of a long holiday', () => {
    const before = afterDays(30, () => true)
    expect(copiesToDrop(before, '2026-06-30')).toEqual([])
  })

  it('keeps copies from before an import or a restore 30 days beside the day’s own, and what was put aside always', () => {
    const special = [copy('2026-03-02', 'import', '09:00:00'), copy('2026-03-02', 'restore', '10:00:00')]
    const aside = [copy('2026-03-02', 'replaced', '10:00:01'), copy('2026-03-02', 'damaged', '11:00:00')]
    const later = Array.from({ length: 40 }, (_, n) => copy(dayAt(57 + n), 'closing', '17:00:00'))
    const all = [...special, ...aside, copy('2026-03-02', 'closing', '17:30:00'), ...later]
    const early = copiesToDrop(all, '2026-04-01').filter((one) => one.at < '2026-03-03')
    expect(early.map(({ why }) => why)).toEqual(['closing'])
    const gone = copiesToDrop(all, '2026-04-02')
    expect(gone).toEqual(expect.arrayContaining(special))
    expect(gone.filter((one) => aside.includes(one))).toEqual([])
  })
})

describe('copies from before the layout changed', () => {
  const old = [
    copy('2026-01-10', 'migration'),
    copy('2026-02-20', 'migration'),
    copy('2026-02-20', 'migration', '08:00:01'),
  ]

  it('stay 30 days, and the last of them for good', () => {
    expect(copiesToDrop(old, '2026-02-09')).toEqual([])
    expect(days(copiesToDrop(old, '2026-02-10'))).toEqual(['2026-01-10'])
    expect(copiesToDrop(old.slice(1), '2026-03-22')).toEqual([])
    expect(copiesToDrop(old, '2026-03-23').map(({ at }) => at)).toEqual([
      '2026-02-20T08:00:00',
      '2026-01-10T08:00:00',
    ])
    expect(copiesToDrop(old.slice(0, 1), '2027-06-01')).toEqual([])
  })

  it('push no copy of a day out', () => {
    const dayCopy = copy('2026-02-20', 'closing', '07:00:00')
    expect(copiesToDrop([dayCopy, ...old], '2026-02-20')).not.toContain(dayCopy)
  })

  it('are taken away where they lie, beside the book', () => {
    const folder = temporaryFolder()
    const names = ['jobs-before-0003.book', 'jobs-before-0004.book', 'jobs-before-0004-2.book']
    for (const [place, name] of names.entries()) {
      writeFileSync(join(folder, name), name)
      const at = new Date(2026, 1, 1 + place, 12)
      utimesSync(join(folder, name), at, at)
    }
    writeFileSync(join(folder, 'jobs.book'), 'the book')
    expect(thinOut(join(folder, 'jobs.book'), '2026-03-04')).toBe(1)
    expect(readdirSync(folder).sort()).toEqual([
      'jobs-before-0004-2.book',
      'jobs-before-0004.book',
      'jobs.book',
    ])
    expect(thinOut(join(folder, 'jobs.book'), '2027-03-04')).toBe(1)
    expect(readdirSync(folder).sort()).toEqual(['jobs-before-0004-2.book', 'jobs.book'])
  })
})

describe('the reminder that no copy has left the disk', () => {
  const facts = {
    now: '2026-03-20T12:00:00Z',
    since: '2026-03-01T12:00:00Z',
    awayAt: null,
    putOffUntil: null,
    ownJobs: 3,
  }
  it.each([
    ['19 days after the book was begun', {}, 19],
    ['14 days after the last one', { awayAt: '2026-03-06T12:00:00Z' }, 14],
    ['not yet after 13 days and 23 hours', { awayAt: '2026-03-06T12:30:00Z' }, null],
    ['not while put off', { putOffUntil: '2026-03-20T13:00:00Z' }, null],
    ['again once that is over', { putOffUntil: '2026-03-20T11:00:00Z' }, 19],
    ['though a clock that ran ahead put it off for a year', { putOffUntil: '2027-03-20T11:00:00Z' }, 19],
    ['not in a book of samples alone', { ownJobs: 0 }, null],
    ['not when the clock was set back', { since: '2026-04-01T12:00:00Z' }, null],
  ])('comes %s', (_, some, days) => expect(daysToRemindOf({ ...facts, ...some })).toBe(days))
})
