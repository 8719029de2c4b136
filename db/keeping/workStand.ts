import { workStages, type WorkStage, type WorkStands } from '../../shared/keeping/workStands.ts'
import { BookProblem } from '../bookProblem.ts'

/** Where each figure lies in the memory that a thread and the window share: the stage's place in the list from 1, how far, of how much, whether to stop. */
const at = { stage: 0, done: 1, of: 2, stop: 3 } as const

/** How work tells where it stands, a stage at a time. Both throw BookProblem 'stopped' once the person has asked for that: nothing has its name by then. */
export type WorkStand = {
  /** of: how much there is to do, in whatever the stage counts; 0 where it can't be told. */
  begin: (stage: WorkStage, of?: number) => void
  /** done: how much of it is done by now. */
  reach: (done: number) => void
}

/** A memory for one piece of work, seen from its thread and from the window's. */
export const standMemory = (): SharedArrayBuffer =>
  new SharedArrayBuffer(Object.keys(at).length * Float64Array.BYTES_PER_ELEMENT)

/** The work's own end of it. */
export function standIn(memory: SharedArrayBuffer): WorkStand {
  const held = new Float64Array(memory)
  const heed = () => {
    if (held[at.stop] === 1)
      throw new BookProblem('stopped', 'It was stopped. Nothing was changed, and nothing half done is left.')
  }
  return {
    begin: (stage, of = 0) => {
      heed()
      held.set([workStages.indexOf(stage) + 1, 0, of])
    },
    reach: (done) => {
      heed()
      held[at.done] = done
    },
  }
}

/** Work that nobody watches. */
export const unwatched: WorkStand = { begin: () => undefined, reach: () => undefined }

/** The window's end: where the work stands, null before it has begun. */
export function standOf(memory: SharedArrayBuffer): WorkStands | null {
  const [stage = 0, done = 0, of = 0] = new Float64Array(memory)
  const what = workStages[stage - 1]
  return what ? { what, done, of } : null
}

/** The person asks for it to stop: heeded at the work's next step. */
export function askToStop(memory: SharedArrayBuffer): void {
  new Float64Array(memory)[at.stop] = 1
}
