import { describe, expect, it } from 'vitest'
import { clockOf, readClock } from '../../renderer/notes/clock.ts'

describe('a time', () => {
  it.each([
    ['14:05', '14:05'],
    ['14.05', '14:05'],
    ['1405', '14:05'],
    ['9:30', '09:30'],
    ['2pm', '14:00'],
    ['2.30 PM', '14:30'],
    ['12 am', '00:00'],
    ['12pm', '12:00'],
    ['24:00', undefined],
    ['13 pm', undefined],
    ['9', undefined],
    ['9:60', undefined],
    ['half past', undefined],
    ['', undefined],
  ])('written %j is %j', (words, time) => {
    expect(readClock(words)).toBe(time)
  })

  it('of a moment is the one on the wall', () => {
    expect(clockOf(new Date(2026, 2, 2, 7, 4))).toBe('07:04')
  })
})
