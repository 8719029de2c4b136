import { whyFixed } from '../../shared/undo/fixed.ts'
import { nameDeed, type Came } from '../../shared/undo/nameDeed.ts'
import { placeOf } from '../../shared/undo/place.ts'
import { sameEntry, typedTogether, type Step } from '../../shared/undo/step.ts'
import type { Connection } from '../connection.ts'
import { capture, type Capture } from './capture.ts'
import { stepsFrom, type DeedStatements, type StoredDeed } from './deedRows.ts'
import { describing } from './describe.ts'
import type { Watched } from './watched.ts'

/** What is known of a deed beyond what it wrote: the window it was done in, the job it is about, how a job came in. */
export type Hint = { hand?: string | undefined; jobId?: number; came?: Came }

/** Typing in one entry that rests no longer than this is one deed, ms. */
const oneTyping = 4000

/**
 * by: does something under a hint. apart: does something whose rows aren't kept, and that can't be taken back, under its own name and with the
 * reason. without: does something that is no deed. forget: lets go of all deeds.
 */
export type Deeds = {
  by: <T>(hint: Hint, work: () => T) => T
  apart: <T>(named: { name: string; why: string }, work: () => T) => T
  without: <T>(work: () => T) => T
  forget: () => void
}

const bookOnly = /^(orders|order_|rises|settings|sections|usual_gates|items|suppliers|supplies|rack_)/

/** The job a deed belongs to: the one it is about, or the only one it touched. */
function jobOf(steps: readonly Step[], hint: Hint): number | null {
  if (hint.jobId !== undefined) return hint.jobId
  if (steps.some(({ table }) => bookOnly.test(table))) return null
  const jobs = [...new Set(steps.flatMap(({ jobId }) => jobId ?? []))]
  return jobs.length === 1 ? (jobs[0] ?? null) : null
}

const touchesSame = (a: readonly Step[], b: readonly Step[]): boolean =>
  a.some((one) =>
    b.some((other) => one.table === other.table && JSON.stringify(one.key) === JSON.stringify(other.key)),
  )

type New = { at: string; steps: Step[]; jobId: number | null; number: string; hint: Hint }

/** Whether what was done goes on typing where the hand's last deed was, with nobody else there in between. */
function goesOn(run: DeedStatements, last: StoredDeed, { at, steps }: New): boolean {
  if (last.fixed !== null || run.isBack.get(last.id) === 1) return false
  if (Date.parse(at) - Date.parse(last.at) > oneTyping || at < last.at) return false
  if (!sameEntry(stepsFrom(last), steps)) return false
  return !run.since.all(last.id).some((later) => touchesSame(stepsFrom(later), steps))
}

function put(run: DeedStatements, made: New): void {
  const { at, steps, jobId, hint, number } = made
  const hand = hint.hand ?? ''
  run.sweep.run(jobId, hand)
  const last = run.lastOf.get(hand)
  if (last && goesOn(run, last, made)) {
    const typed = typedTogether(stepsFrom(last), steps)
    if (typed.length === 0) run.drop.run(last.id)
    else run.retype.run(at, nameDeed(typed, number, hint.came), JSON.stringify(typed), last.id)
    return
  }
  const { address, field } = placeOf(steps, jobId)
  const name = nameDeed(steps, number, hint.came)
  run.add.run(at, name, jobId, hand, address, field, JSON.stringify(steps), whyFixed(steps))
  run.prune.run()
}

/** Where deeds aren't kept: everything is done as it is. */
export const noDeeds = (run: DeedStatements, connection: Connection): Deeds => ({
  by: (_hint, work) => work(),
  apart: (_named, work) => work(),
  without: (work) => work(),
  forget: () => void connection.write(() => run.clear.run()),
})

/** Puts what one writing did down as a deed, under the hint that stands. */
function finishing({ db, now }: Connection, run: DeedStatements, seen: Capture): (hint: Hint) => void {
  const describe = describing(db)
  const numberOf = db.prepare<[number | null], string>('SELECT number FROM jobs WHERE id = ?').pluck()
  return (hint) => {
    const steps = describe(seen.taken())
    if (steps.length === 0) return
    const jobId = jobOf(steps, hint)
    put(run, { at: now(), steps, jobId, hint, number: numberOf.get(jobId) ?? '' })
  }
}

/** The same way to the book, with something done at the end of each whole writing, as part of it. */
const ending = (connection: Connection, finish: () => void): Connection => ({
  ...connection,
  write: (work) => {
    if (connection.db.inTransaction) return connection.write(work)
    return connection.write(() => {
      const done = work()
      finish()
      return done
    })
  },
})

/**
 * Keeps what is done in the book as deeds, each in the very writing that it is. Gives the way to the book that sees them; every room must be given that one.
 */
export function keepDeeds(
  connection: Connection,
  run: DeedStatements,
  tables: readonly Watched[],
): { watched: Connection; deeds: Deeds } {
  const { db, now, write } = connection
  const seen: Capture = capture(db, tables)
  const finish = finishing(connection, run, seen)
  const current: { hint: Hint } = { hint: {} }

  const by: Deeds['by'] = (hint, work) => {
    const before = current.hint
    current.hint = hint
    try {
      return work()
    } finally {
      current.hint = before
    }
  }

  const apart: Deeds['apart'] = ({ name, why }, work) => {
    const done = seen.without(work)
    write(() => {
      run.sweep.run(null, '')
      run.add.run(now(), name, null, '', '#/jobs', '', '[]', why)
    })
    return done
  }

  const forget = (): void => void write(() => run.clear.run())
  const deeds = { by, apart, without: seen.without, forget }
  return { watched: ending(connection, () => finish(current.hint)), deeds }
}
