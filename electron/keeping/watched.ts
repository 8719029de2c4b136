import { statSync } from 'node:fs'
import { beside } from '../../db/keeping/beside.ts'
import type { Work, WorkGives } from '../../db/keeping/work.ts'
import { askToStop, standMemory, standOf } from '../../db/keeping/workStand.ts'
import type { WorkStands } from '../../shared/keeping/workStands.ts'
import type { Ground, InHand } from './ground.ts'

/** Does a piece of work beside the window's own, so that the person sees how far it is and can stop it. Throws BookProblem 'stopped' then. */
export async function watched<D extends Work['do']>(
  { mind, worker }: Ground,
  work: Extract<Work, { do: D }>,
  grows: string | null = null,
): Promise<WorkGives[D]> {
  const mine: InHand = { memory: standMemory(), grows }
  mind.inHand = mine
  try {
    return await beside(work, worker, mine.memory)
  } finally {
    if (mind.inHand === mine) mind.inHand = null
  }
}

const sizeOf = (path: string): number => statSync(path, { throwIfNoEntry: false })?.size ?? 0

/** How far the work in hand is; null when none goes on. */
export function workInHand({ mind }: Ground): WorkStands | null {
  if (!mind.inHand) return null
  const { memory, grows } = mind.inHand
  const stands = standOf(memory)
  return stands?.what === 'copying' && grows !== null ? { ...stands, done: sizeOf(grows) } : stands
}

/** Asks the work in hand to stop; answers whether there was any. */
export function stopWork({ mind }: Ground): boolean {
  if (mind.inHand) askToStop(mind.inHand.memory)
  return mind.inHand !== null
}
