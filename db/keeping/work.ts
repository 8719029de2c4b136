import type { BackedUp, InsideCopy } from '../../shared/keeping/keepingModel.ts'
import { carryAway, type AwayTask } from './awayCopy.ts'
import { goOverPapers, type GoneOver, type GoOverTask } from './goOver.ts'
import type { TakeOverTask } from '../openBook/takeOver.ts'
import { makeCopy, type CopyTask } from './makeCopy.ts'
import type { SalvageFound, SalvageTask } from './salvage.ts'
import { lookInside } from './soundCopy.ts'

/** A piece of work on the book's files that may take longer than a window can wait: done beside it, by a connection of its own. */
export type Work =
  | { do: 'copy'; task: CopyTask }
  | { do: 'carry'; task: AwayTask }
  | { do: 'inside'; task: { path: string; latest: number } }
  | { do: 'goOver'; task: GoOverTask }
  | { do: 'salvage'; task: SalvageTask }
  | { do: 'takeOver'; task: TakeOverTask }

/** What each piece of work gives. */
export type WorkGives = {
  copy: string
  carry: BackedUp
  inside: InsideCopy
  goOver: GoneOver
  salvage: SalvageFound
  takeOver: void
}

/** Does a piece of work here and now. What a piece doesn't need isn't loaded: a thread is begun for each. */
export async function doWork(work: Work): Promise<WorkGives[Work['do']]> {
  if (work.do === 'copy') return makeCopy(work.task)
  if (work.do === 'carry') return carryAway(work.task)
  if (work.do === 'inside') return lookInside(work.task.path, work.task.latest)
  if (work.do === 'goOver') return goOverPapers(work.task)
  if (work.do === 'takeOver') return (await import('../openBook/takeOver.ts')).takeOver(work.task)
  return (await import('./salvage.ts')).salvage(work.task)
}

/** How work came out, as it crosses from one thread to another: a problem keeps its code and its sentence. */
export type WorkCameOut =
  { ok: true; value: unknown } | { ok: false; code: string | null; message: string; said: string }
