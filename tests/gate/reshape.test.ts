import { describe, expect, it } from 'vitest'
import { design } from '../../shared/gate/design.ts'
import { parseSpec, specOf } from '../../shared/gate/parseSpec.ts'
import {
  boardGap,
  braceEnds,
  build,
  hang,
  meet,
  sizeFrom,
  topOf,
  weather,
} from '../../shared/gate/reshape.ts'
import type { Reshaping } from '../../shared/gate/reshape.ts'
import type { DraftSpec } from '../../shared/gate/spec.ts'
import { standardDraft } from '../../shared/gate/standardSpec.ts'
import { applyChanges } from '../../shared/job/applyChange.ts'
import { job } from '../renderer/standIn.ts'

const leaf = (): DraftSpec => ({ ...standardDraft(), size: { from: 'leaf', width: 985, height: 1830 } })

/** The draft once the list is made on a job by the book's own rules; throws where the book refuses it. */
function made(draft: DraftSpec, changes: Reshaping[]): DraftSpec {
  const applied = applyChanges(job({ entry: { spec: draft, typed: {} } }), changes)
  if (!applied.ok) throw new Error(applied.problems.map(({ field, message }) => `${field} ${message}`).join())
  return applied.value.job.entry.spec
}

/** Ids of whatever stops a draft from being a gate. */
function stops(draft: DraftSpec): string[] {
  const spec = specOf(draft)
  const read = parseSpec(spec)
  if (!read.ok) return read.problems.map(({ field }) => field)
  const outcome = design(read.value)
  return outcome.made
    ? []
    : outcome.stopped.checks.filter(({ level }) => level === 'stop').map(({ id }) => id)
}

const surveyed = (): DraftSpec => {
  const opening = made(leaf(), sizeFrom(leaf(), 'opening'))
  return made(opening, [
    { path: 'spec.size.widths', value: [1004, 1001, 1007] },
    { path: 'spec.size.heights', value: [1880, 1884] },
  ])
}

describe('reshaping a draft', () => {
  it('asks for an opening’s sizes anew and comes back to the leaf they made', () => {
    const opening = made(leaf(), sizeFrom(leaf(), 'opening'))
    expect(opening.size).toMatchObject({ from: 'opening', widths: [null, null, null], groundGap: 50 })
    // 1001 − 6 − 10 and 1880 − 50.
    expect(made(surveyed(), sizeFrom(surveyed(), 'leaf')).size).toEqual({
      from: 'leaf',
      width: 985,
      height: 1830,
    })
    expect(made(opening, sizeFrom(opening, 'leaf')).size).toMatchObject({ width: null, height: null })
  })

  it('takes the diagonals of an opening out with it', () => {
    const crossed = made(surveyed(), [{ path: 'spec.survey', value: { diagonals: [2130, 2136] } }])
    expect(made(crossed, sizeFrom(crossed, 'leaf')).survey).toBeUndefined()
  })

  it('makes a pair with its gap and edge, and one leaf of it again', () => {
    for (const draft of [leaf(), surveyed()]) {
      const pair = made(draft, hang(draft, 'pair'))
      expect(pair).toMatchObject({ leaves: 2, size: { meetingGap: 6 }, meeting: { edge: 'square' } })
      expect(stops(pair)).toEqual([])
      expect(made(pair, hang(pair, 'one'))).toEqual(draft)
    }
  })

  it('keeps a pair’s meeting gap from leaf to opening', () => {
    const pair = made(leaf(), [...hang(leaf(), 'pair'), { path: 'spec.size.meetingGap', value: 8 }])
    expect(made(pair, sizeFrom(pair, 'opening')).size.meetingGap).toBe(8)
  })

  it('laps a rebated and a covered meeting edge but no square one', () => {
    const pair = made(leaf(), hang(leaf(), 'pair'))
    const strip = made(pair, meet(pair, 'strip'))
    expect(strip.meeting).toEqual({ edge: 'strip', lap: 20 })
    expect(made(strip, meet(strip, 'rebated')).meeting).toEqual({ edge: 'rebated', lap: 12 })
    expect(made(strip, meet(strip, 'square')).meeting).toEqual({ edge: 'square' })
  })

  it('makes a stable door out of a leaf and out of a pair', () => {
    // 0.55 of 1830 is 1006.5, to a whole 10 mm.
    const stable = made(leaf(), hang(leaf(), 'stable'))
    expect(stable.stable).toEqual({ lowerHeight: 1010, gap: 6 })
    expect(stops(stable)).toEqual([])
    const pair = made(leaf(), hang(leaf(), 'pair'))
    expect(made(pair, hang(pair, 'stable'))).toEqual(stable)
  })

  it('frames a gate with square ledges from stile to stile, flush at face and back, and unframes it', () => {
    const framed = made(leaf(), build(leaf(), 'framed-ledged-braced'))
    expect(framed.frame?.stile.thickness).toBe(48)
    expect(framed.ledges).toMatchObject({ hangingInset: 0, closingInset: 0, end: { cut: 'square' } })
    expect(stops(framed)).toEqual([])
    expect(made(framed, build(framed, 'ledged-braced'))).toEqual(leaf())
    const ledged = made(framed, build(framed, 'ledged'))
    expect([ledged.frame, ledged.braces, stops(ledged)]).toEqual([undefined, undefined, []])
    expect(made(ledged, build(ledged, 'framed-ledged-braced')).braces).toEqual(leaf().braces)
  })

  it('takes the workshop’s own brace', () => {
    const own = { name: 'ex 38 × 125', species: 'European oak', thickness: 33, width: 119 }
    const ledged = made(leaf(), build(leaf(), 'ledged'))
    expect(made(ledged, build(ledged, 'ledged-braced', own)).braces?.section).toEqual(own)
  })

  it('lets go of ledge heights that belong to another way of building', () => {
    const own = made(leaf(), [{ path: 'spec.ledges.heights', value: [210, 1640] }])
    expect(made(own, build(own, 'framed-ledged-braced')).ledges.heights).toBe('auto')
    expect(made(own, hang(own, 'stable')).ledges.heights).toBe('auto')
    expect(made(own, build(own, 'ledged')).ledges.heights).toEqual([210, 1640])
  })

  it('keeps the rise from one shaped top to another', () => {
    const bowed = made(leaf(), [{ path: 'spec.top', value: { shape: 'bowed', rise: 137 } }])
    expect(made(bowed, topOf(bowed, 'raked')).top).toEqual({ shape: 'raked', rise: 137, high: 'hanging' })
    expect(made(bowed, topOf(bowed, 'level')).top).toEqual({ shape: 'level' })
    expect(made(leaf(), topOf(leaf(), 'dipped')).top).toEqual({ shape: 'dipped', rise: 100 })
  })

  it('gives a notch its depth and takes it away', () => {
    const notched = made(leaf(), braceEnds('notched'))
    expect(notched.braces).toMatchObject({ ends: 'notched', notchDepth: 12 })
    expect(stops(notched)).toEqual([])
    expect(made(notched, braceEnds('flush'))).toEqual(leaf())
  })

  it('asks for the climate when the joint gap is left to it, and gives the gap a length when the climate goes', () => {
    const left = made(leaf(), boardGap(leaf(), 'climate'))
    expect(left.climate?.months).toHaveLength(12)
    expect(stops(left)).toEqual([])
    const without = made(left, weather(left, false))
    expect([without.boards.gap, without.climate]).toEqual([2, undefined])
  })

  it('changes nothing where the choice already stands', () => {
    const draft = leaf()
    expect(sizeFrom(draft, 'leaf')).toEqual([])
    expect(hang(draft, 'one')).toEqual([])
    expect(build(draft, 'ledged-braced')).toEqual([])
    expect(topOf(draft, 'level')).toEqual([])
  })
})
