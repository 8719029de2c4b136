import { basename, join } from 'node:path'
import { BookProblem } from '../../db/bookProblem.ts'
import { beside } from '../../db/keeping/beside.ts'
import { clearHalfMade, listCopies, thinOut } from '../../db/keeping/copies.ts'
import { copiesFolder, copyFileName } from '../../db/keeping/copyNames.ts'
import { makeCopy, unfinishedCopy, type CopyTask } from '../../db/keeping/makeCopy.ts'
import { ownJobsIn } from '../../db/keeping/soundCopy.ts'
import { pathOfCopy } from '../../db/keeping/copies.ts'
import type { BookCopy, CopyReason } from '../../shared/keeping/keepingModel.ts'
import { dayOf, wallTimeOf } from '../calendar.ts'
import { latestOf, type Ground } from './ground.ts'
import { watched } from './watched.ts'

const taskFor = ({ desk, now }: Ground, why: CopyReason): CopyTask => ({
  bookPath: desk.path,
  folder: copiesFolder(desk.path),
  fileName: copyFileName(wallTimeOf(now()), why),
})

const listed = ({ desk }: Ground, path: string): BookCopy => {
  const copy = listCopies(desk.path).find(({ name }) => name === basename(path))
  if (!copy) throw new BookProblem('unsafe', 'The copy was made but isn’t there any more. Try again.')
  return copy
}

/** Makes a checked copy beside the window's work, then throws away those no longer needed. */
export async function copyBook(ground: Ground, why: CopyReason): Promise<BookCopy> {
  const { desk, now, mind } = ground
  const writings = desk.book().keeping.writings()
  const task = taskFor(ground, why)
  const grows = unfinishedCopy(join(task.folder, task.fileName))
  // The copy of the day is made by itself, and nobody could have meant it by stopping what they asked for.
  const path =
    why === 'daily'
      ? await beside({ do: 'copy', task }, ground.worker)
      : await watched(ground, { do: 'copy', task }, grows)
  mind.copiedAt = writings
  mind.fault = null
  thinOut(desk.path, dayOf(now()))
  return listed(ground, path)
}

const sentenceOf = (problem: unknown): string =>
  problem instanceof BookProblem
    ? problem.message
    : 'Today’s copy of the book could not be made. The book itself is as it was.'

const said = (problem: unknown): string =>
  problem instanceof Error ? `${problem.stack}\n${String(problem.cause ?? '')}` : String(problem)

const madeToday = ({ desk, now }: Ground): boolean =>
  listCopies(desk.path).some(
    ({ at, why }) => why !== 'replaced' && why !== 'damaged' && at.slice(0, 10) === dayOf(now()),
  )

/** A large book is opened before it was looked through: that is done beside the window's work. What is found shuts it. */
export async function lookBookThrough(ground: Ground): Promise<void> {
  const { desk, worker, log } = ground
  if (desk.trouble() || desk.book().lookedThrough) return
  try {
    await beside({ do: 'lookThrough', task: { bookPath: desk.path } }, worker)
  } catch (problem) {
    if (problem instanceof BookProblem && problem.code === 'damaged') desk.condemn(problem)
    else log(`looking the book through: ${said(problem)}`)
  }
}

/** The copy of the day, on its first use. What goes wrong is told on the screens; work goes on. */
export async function copyOfTheDay(ground: Ground): Promise<void> {
  if (ground.desk.trouble() || madeToday(ground)) return
  try {
    await copyBook(ground, 'daily')
  } catch (problem) {
    ground.mind.fault = sentenceOf(problem)
    ground.log(`the copy of the day: ${said(problem)}`)
  }
}

/** The copy at closing, made here and now as nobody waits any more: only when something was written since the last one. */
export function copyAtClosing(ground: Ground): void {
  const { desk, now, mind, log } = ground
  if (desk.trouble()) return
  try {
    if (desk.book().keeping.writings() === mind.copiedAt) return
    makeCopy(taskFor(ground, 'closing'))
    thinOut(desk.path, dayOf(now()))
  } catch (problem) {
    log(`the copy at closing: ${said(problem)}`)
  }
}

/** An open book without a job, where its newest copy has some, is told: it may be the wrong book. */
function tellEmpty(ground: Ground): void {
  const { desk, mind } = ground
  const newest = listCopies(desk.path)[0]
  if (!newest || desk.book().keeping.ownJobs() > 0) return
  const jobs = ownJobsIn(pathOfCopy(desk.path, newest.name), latestOf(ground))
  if (jobs > 0)
    mind.fault = `This book has no job of your own in it, though the last copy has ${jobs}. If that isn’t right, open the copy under Safe keeping.`
}

/** After each opening: clears what was cut off, notes where the book stands, looks whether it is the book it should be. */
export function settleIn(ground: Ground): void {
  const { desk, mind, log } = ground
  mind.fault = null
  try {
    clearHalfMade(desk.path)
    if (desk.trouble()) return
    mind.copiedAt = desk.book().keeping.writings()
    tellEmpty(ground)
  } catch (problem) {
    log(`looking at the copies: ${said(problem)}`)
  }
}
