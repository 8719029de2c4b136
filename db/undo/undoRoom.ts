import { sameValue } from '../../shared/job/specPath.ts'
import type { Deed, Deeds, Settling, Taken } from '../../shared/undo/deed.ts'
import type { Step } from '../../shared/undo/step.ts'
import { BookProblem } from '../bookProblem.ts'
import type { Connection } from '../connection.ts'
import type { Apply } from './apply.ts'
import type { Settled } from './cells.ts'
import { deedFrom, stepsFrom, type DeedStatements, type StoredDeed } from './deedRows.ts'
import { AskFirst, Refused } from './refused.ts'

/** Which deeds are meant: from the next one down to `upTo`, of one job or (null) of the whole book; and what to do about what was changed since. */
export type Meant = { upTo: number; jobId: number | null; settle: Settling }

export type UndoRoom = {
  /** The latest deeds that stand, and those that can be done again. jobId: one job's only. */
  list: (jobId: number | null) => Deeds
  /** Takes deeds back, all or none; undefined when there is no such deed that stands. Throws BookProblem 'refused' with the reason in its message. */
  back: (meant: Meant) => Taken | undefined
  /** Does deeds again that were taken back, all or none. */
  again: (meant: Meant) => Taken | undefined
  /** Another word whenever anything was written, here or by another way to the book. */
  pulse: () => string
}

/** As many deeds as a list shows. */
const mostListed = 250

/** Prices brought in again stand under another key: every deed that means them must say so. */
function renameRises(run: DeedStatements, before: readonly Step[], after: readonly Step[]): void {
  const moved = before.flatMap((step, place) => {
    const key = after[place]?.key
    return key && !sameValue(step.key, key) ? [{ from: step.key['id'], to: key['id'] }] : []
  })
  for (const { from, to } of moved)
    for (const deed of run.ofRises.all()) {
      const steps = stepsFrom(deed)
      const renamed = steps.map((step) =>
        step.table === 'rises' && step.key['id'] === from ? { ...step, key: { id: to } } : step,
      )
      if (!sameValue(steps, renamed)) run.rewrite.run(JSON.stringify(renamed), deed.id)
    }
}

type Desk = { connection: Connection; run: DeedStatements; apply: Apply; without: <T>(work: () => T) => T }

/** The deeds meant, in the order they are to be taken, those that can't be apart. */
function meantOf(
  candidates: StoredDeed[],
  upTo: number,
): { take: StoredDeed[]; passed: StoredDeed[] } | undefined {
  const last = candidates.findIndex(({ id }) => id === upTo)
  if (last === -1) return undefined
  const all = candidates.slice(0, last + 1)
  return {
    take: all.filter(({ fixed }) => fixed === null),
    passed: all.filter(({ fixed }) => fixed !== null),
  }
}

function taking({ run, apply }: Desk, way: 'back' | 'again', meant: Meant): Taken | undefined {
  const candidates = (way === 'back' ? run.standing : run.takenBack).all(meant.jobId, meant.jobId, -1)
  const found = meantOf(candidates, meant.upTo)
  if (!found) return undefined
  const { take, passed } = found
  const fixed = passed.find(({ id }) => id === meant.upTo)
  if (fixed) throw new Refused(fixed.fixed ?? '')
  let kept = 0
  for (const deed of take) {
    const settled: Settled = { settle: meant.settle, deed: deed.name, asks: [], kept: 0 }
    const steps = stepsFrom(run.one.get(deed.id) ?? deed)
    const after = apply(steps, way, settled)
    if (settled.asks.length > 0) throw new AskFirst(JSON.stringify(settled.asks))
    renameRises(run, steps, after)
    kept += settled.kept
    if (way === 'back') run.markBack.run(deed.id)
    else run.markDone.run(deed.id)
  }
  return { done: true, deeds: take.map(deedFrom), passed: passed.map(deedFrom), kept }
}

/** All or nothing, and no deed of its own. What must be asked first, or can't be, breaks it off. */
function take(desk: Desk, way: 'back' | 'again', meant: Meant): Taken | undefined {
  try {
    return desk.connection.write(() => desk.without(() => taking(desk, way, meant)))
  } catch (stopped) {
    if (stopped instanceof AskFirst) return { done: false, asks: JSON.parse(stopped.message) as [] }
    if (stopped instanceof Refused) throw new BookProblem('refused', stopped.message)
    throw stopped
  }
}

/** The room of what can be taken back. forget is told that lines or prices changed. */
export function undoRoom(desk: Desk & { forget: () => void }): UndoRoom {
  const { connection, run, forget } = desk
  const { db, read, now } = connection
  const opened = now()
  const changes = db.prepare<[], number>('SELECT total_changes()').pluck()
  const listed = (stored: StoredDeed[]): Deed[] => stored.map(deedFrom)
  const noted = (way: 'back' | 'again') => (meant: Meant) => {
    const taken = take(desk, way, meant)
    forget()
    return taken
  }
  return {
    list: (jobId) =>
      read(() => ({
        back: listed(run.standing.all(jobId, jobId, mostListed)),
        again: listed(run.takenBack.all(jobId, jobId, mostListed)),
      })),
    back: noted('back'),
    again: noted('again'),
    pulse: () =>
      read(() => `${opened}/${String(db.pragma('data_version', { simple: true }))}/${changes.get()}`),
  }
}
