import { describe, expect, it } from 'vitest'
import { dueSpan, endOfNextWeek } from '../../shared/job/dueSpan.ts'

describe('where a promised day lies', () => {
  it.each([
    ['2026-03-03', 'late'],
    ['2025-12-31', 'late'],
    ['2026-03-04', 'this week'],
    ['2026-03-08', 'this week'],
    ['2026-03-09', 'next week'],
    ['2026-03-15', 'next week'],
    ['2026-03-16', undefined],
  ])('%s, seen from Wednesday 4 March 2026', (due, span) => expect(dueSpan(due, '2026-03-04')).toBe(span))

  it('on a Sunday this week is today alone', () => {
    expect(dueSpan('2026-03-08', '2026-03-08')).toBe('this week')
    expect(dueSpan('2026-03-09', '2026-03-08')).toBe('next week')
    expect(endOfNextWeek('2026-03-08')).toBe('2026-03-15')
  })

  it('next week ends on the Sunday after this one, over months, years and a leap day, for twenty years of days', () => {
    for (let at = 0; at < 7305; at += 1) {
      const today = new Date(Date.UTC(2020, 0, 1) + at * 864e5)
      const end = new Date(today.getTime() + (((7 - today.getUTCDay()) % 7) + 7) * 864e5)
      expect(endOfNextWeek(today.toISOString().slice(0, 10))).toBe(end.toISOString().slice(0, 10))
    }
  })

  it('what is no day throws', () => expect(() => dueSpan('soon', '2026-03-04')).toThrow(RangeError))
})
