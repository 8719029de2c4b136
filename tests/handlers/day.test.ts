import { spawnSync } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { bookPath } from '../db/temporaryBook.ts'

const writer = fileURLToPath(new URL('./dayWriter.ts', import.meta.url))

/** The days that a quotation gets which is issued at a moment, in a time zone, every price having risen from a day. */
function daysIn(zone: string, at: string, risenFrom: string): unknown {
  const { stdout, stderr, status } = spawnSync(process.execPath, [writer, bookPath(), at, risenFrom], {
    env: { ...process.env, TZ: zone },
    encoding: 'utf8',
  })
  if (status !== 0) throw new Error(stderr)
  return JSON.parse(stdout)
}

describe('the day of a quotation', () => {
  // The prices rise on 1 July. Thirty days on from 30 June is 30 July, from 1 July 31 July.
  const before = { on: '2026-06-30', issuedOn: '2026-06-30', validUntil: '2026-07-30', risen: false }
  const after = { on: '2026-07-01', issuedOn: '2026-07-01', validUntil: '2026-07-31', risen: true }
  it.each([
    ['Europe/London', '2026-06-30T22:30:00.000Z', before],
    ['Europe/London', '2026-06-30T23:30:00.000Z', after],
    ['America/New_York', '2026-07-01T03:30:00.000Z', before],
    ['America/New_York', '2026-07-01T04:30:00.000Z', after],
    ['Pacific/Auckland', '2026-06-30T11:30:00.000Z', before],
    ['Pacific/Auckland', '2026-06-30T12:30:00.000Z', after],
  ])(
    'in %s at %s is the one that the calendar on the wall shows, and so are its prices',
    (zone, at, days) => {
      expect(daysIn(zone, at, '2026-07-01')).toEqual(days)
    },
  )
})
