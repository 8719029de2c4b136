import { pluggedDrives } from '../../db/drive.ts'
import { listCopies } from '../../db/keeping/copies.ts'
import { copiesFolder } from '../../db/keeping/copyNames.ts'
import type { KeepingState } from '../../shared/keeping/keepingModel.ts'
import { daysToRemindOf, putOffDays } from '../../shared/keeping/reminder.ts'
import { freshBook, lookInside, restore, salvageBook } from './bringBack.ts'
import { copyBook, settleIn } from './copying.ts'
import { goOver, putBack } from './goOver.ts'
import type { Ground } from './ground.ts'
import type { Keeping } from './keeping.ts'
import { chooseFolder, takeAway } from './takeAway.ts'

/** Until when a reminder put off now stays away. */
const putOffFrom = (now: string): string => new Date(Date.parse(now) + putOffDays * 86_400_000).toISOString()

type Queue = <T>(work: () => Promise<T>) => Promise<T>

/** What only an open book can say. */
function ofOpenBook({ desk, now }: Ground): Pick<KeepingState, 'away' | 'remindDays' | 'papers' | 'outcome'> {
  if (desk.trouble()) return { away: null, remindDays: null, papers: null, outcome: null }
  const { keeping } = desk.book()
  const { away, since, putOffUntil, papers, outcome } = keeping.read()
  const facts = { now: now(), since, awayAt: away?.at ?? null, putOffUntil, ownJobs: keeping.ownJobs() }
  return { away, papers, outcome, remindDays: daysToRemindOf(facts) }
}

const stateOf = (ground: Ground): KeepingState => ({
  trouble: ground.desk.trouble(),
  fault: ground.mind.fault,
  copies: listCopies(ground.desk.path),
  copiesFolder: copiesFolder(ground.desk.path),
  chooser: ground.chooseFolder !== undefined,
  drives: ground.chooseFolder ? [] : pluggedDrives(),
  ...ofOpenBook(ground),
})

/** The keeping of the book on a desk. Whatever changes files waits its turn in the queue. */
export function keepBook(ground: Ground, queue: Queue): Keeping {
  const state = (): KeepingState => stateOf(ground)
  const then = (work: () => Promise<void> | void) => (): Promise<KeepingState> =>
    queue(async () => {
      await work()
      return state()
    })
  return {
    state,
    inside: (name) => lookInside(ground, name),
    copy: (why) => queue(() => copyBook(ground, why)),
    inTurn: (work) =>
      queue(async () => {
        // Written by another connection, which this one's count of writings doesn't tell.
        ground.mind.copiedAt = -1
        return work()
      }),
    restore: (name) => then(() => restore(ground, name))(),
    salvage: () => queue(() => salvageBook(ground)),
    fresh: then(() => freshBook(ground)),
    again: then(() => {
      if (!ground.desk.trouble()) return
      ground.desk.open()
      settleIn(ground)
    }),
    chooseFolder: () => chooseFolder(ground),
    backUp: (folder) => queue(() => takeAway(ground, folder)),
    putOff: () => {
      ground.desk.book().keeping.change({ putOffUntil: putOffFrom(ground.now()) })
      return state()
    },
    putAway: () => {
      ground.desk.book().keeping.change({ outcome: null })
      return state()
    },
    goOver: () => queue(() => goOver(ground)),
    putBack: (paperId) => queue(() => putBack(ground, paperId)),
  }
}
