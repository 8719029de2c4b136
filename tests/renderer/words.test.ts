import { describe, expect, it } from 'vitest'
import { readDay } from '../../renderer/day.ts'
import { boardsTogether } from '../../renderer/differences.ts'
import { promiseWords, stepped, writeAngle } from '../../renderer/format.ts'
import { readLengths } from '../../renderer/lengths.ts'
import { fieldOfPart, touches } from '../../renderer/lighting.ts'
import { addressOf, placeAt } from '../../renderer/stores/place.ts'
import { oneBatch, queued } from '../../renderer/stores/edits.ts'

/** A Wednesday. */
const today = new Date(2026, 2, 4, 15, 30)
const day = (text: string) => {
  const read = readDay(text, today)
  return read.kind === 'day' ? read.iso : read.kind
}

describe('a day as people say it', () => {
  it.each([
    ['3/6', '2026-06-03'],
    ['3/6/27', '2027-06-03'],
    ['3.6.2027', '2027-06-03'],
    ['3 June', '2026-06-03'],
    ['3rd jun 2026', '2026-06-03'],
    ['2026-06-03', '2026-06-03'],
    ['31/1', '2027-01-31'],
    ['28 Feb', '2026-02-28'],
    ['today', '2026-03-04'],
    ['Tomorrow', '2026-03-05'],
    ['friday', '2026-03-06'],
    ['Wed', '2026-03-11'],
    ['in 2 weeks', '2026-03-18'],
    ['10 days', '2026-03-14'],
    ['', 'empty'],
  ])('%s is %s', (text, iso) => expect(day(text)).toBe(iso))

  it.each(['31/6', '6/31', '30 Feb', 'soon', '32 May', '3/13', 'wedding day', '2026-02-30'])(
    '%s is no day',
    (text) => expect(day(text)).toBe('problem'),
  )
})

describe('how a promised day stands', () => {
  it.each([
    ['2026-03-01', 'late by 3 days'],
    ['2026-03-03', 'late by 1 day'],
    ['2026-03-04', 'today'],
    ['2026-03-05', 'tomorrow'],
    ['2026-03-08', 'this week'],
    ['2026-03-09', ''],
  ])('%s on 4 March: “%s”', (due, words) => expect(promiseWords(due, today)).toBe(words))
})

describe('steps of a length', () => {
  it('go to the next whole step and never below nothing', () => {
    expect(stepped(1803.4, { unit: 'mm', direction: 1, large: false })).toBe(1804)
    expect(stepped(1803.4, { unit: 'mm', direction: -1, large: false })).toBe(1803)
    expect(stepped(7, { unit: 'mm', direction: -1, large: true })).toBe(0)
    expect(stepped(25.4, { unit: 'in', direction: -1, large: true })).toBe(22.225)
    expect(stepped(0, { unit: 'mm', direction: -1, large: false })).toBe(0)
  })
})

describe('several lengths in a line', () => {
  const limits = { max: 400, most: 4 }
  it('are read with commas or spaces, in order, each once', () => {
    expect(readLengths('40, 30,40', 'mm', limits)).toEqual({ ok: true, value: [30, 40] })
    expect(readLengths('30 35 4.5', 'mm', limits)).toEqual({ ok: true, value: [4.5, 30, 35] })
    expect(readLengths('1 1/4", 2"', 'in', limits)).toEqual({ ok: true, value: [31.75, 50.8] })
  })
  it('are refused with a sentence when one can’t be read, is too long, or there are too many', () => {
    for (const text of ['', '40, long', '40, 500', '1 2 3 4 5']) {
      const read = readLengths(text, 'mm', limits)
      expect(read.ok ? '' : read.problems[0]?.message).toMatch(/[.?]$/)
    }
  })
})

describe('lighting', () => {
  it('joins a part with what is said of it, never two boards of like number', () => {
    expect(touches('ledge', 'bottom ledge')).toBe(true)
    expect(touches('board 3', 'dimension board 3')).toBe(true)
    expect(touches('board 3', 'board 13')).toBe(false)
    expect(touches('brace', 'ledge')).toBe(false)
  })
  it('tells the leaves of a pair apart, and lights a row of several pieces piece by piece', () => {
    const row = 'first leaf top rail, second leaf top rail'
    expect(touches(row, 'second leaf top rail')).toBe(true)
    expect(touches('second leaf board 3', 'first leaf board 3')).toBe(false)
    expect(touches('second leaf board 3', 'board 3')).toBe(true)
    expect(touches('first leaf board 1, first leaf board 12', 'first leaf board 2')).toBe(false)
    expect(touches('upper half brace', 'brace')).toBe(true)
  })
  it('goes from a pressed part to the entry that speaks of it most closely', () => {
    expect(fieldOfPart('dimension width')).toBe('size.width')
    expect(fieldOfPart('dimension hanging inset')).toBe('ledges.hangingInset')
    expect(fieldOfPart('top ledge')).toBe('ledges.section')
    expect(fieldOfPart('lower brace')).toBe('braces.section')
    expect(fieldOfPart('board 4')).toBe('boards.section')
    expect(fieldOfPart('second leaf board 4')).toBe('boards.section')
    expect(fieldOfPart('second leaf hanging stile')).toBe('frame.stile.width')
    expect(fieldOfPart('first leaf top rail')).toBe('frame.topRail.width')
    expect(fieldOfPart('dimension meeting gap')).toBe('size.meetingGap')
    expect(fieldOfPart('first leaf hinge')).toBe('ironmongery.0')
  })
})

describe('places', () => {
  it('have addresses that lead back to them', () => {
    for (const place of [
      { name: 'jobs' as const },
      { name: 'workshop' as const },
      { name: 'prices' as const },
      { name: 'prices' as const, part: 'rises' as const },
      { name: 'job' as const, id: 12, part: 'papers' as const },
    ])
      expect(placeAt(addressOf(place))).toEqual(place)
  })
  it('fall back to the job book for an address that leads nowhere', () => {
    for (const hash of ['', '#/', '#/job/', '#/job/0/gate', '#/job/x', '#/nowhere'])
      expect(placeAt(hash)).toEqual({ name: 'jobs' })
    expect(placeAt('#/job/12/nothing')).toEqual({ name: 'job', id: 12, part: 'gate' })
  })
})

describe('waiting edits', () => {
  const edit = (path: string, value: unknown, was: unknown) => [{ path, value, was }]
  it('of one field after another in that field become one', () => {
    const first = queued([], edit('title', 'Y', 'X'))
    expect(queued(first, edit('title', 'Yard', 'Y'))).toEqual([edit('title', 'Yard', 'X')])
    expect(queued(first, edit('notes', 'Dog', ''))).toHaveLength(2)
  })
  it('go 100 changes at a time', () => {
    const many = Array.from({ length: 130 }, (_, index) => edit(`spec.a${index}`, index, null))
    expect(oneBatch(many)).toHaveLength(100)
    expect(oneBatch(many.slice(0, 3))).toHaveLength(3)
  })
})

describe('differences', () => {
  it('of neighbouring boards that changed alike are told once', () => {
    const board = (number: number, after: string) => ({
      what: `board ${number} length`,
      before: '1830 mm',
      after,
    })
    const width = { what: 'leaf width', before: '985 mm', after: '1005 mm' }
    expect(
      boardsTogether([
        width,
        board(1, '1880 mm'),
        board(2, '1880 mm'),
        board(3, '1880 mm'),
        board(5, '1880 mm'),
      ]),
    ).toEqual([
      width,
      { what: 'boards 1 to 3 length', before: '1830 mm', after: '1880 mm' },
      board(5, '1880 mm'),
    ])
  })
})

describe('an angle', () => {
  it('is read off a saw to a tenth', () => {
    expect(writeAngle(63.00525)).toBe('63.0°')
    expect(writeAngle(56.74755)).toBe('56.7°')
  })
})
