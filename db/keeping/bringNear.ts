import { existsSync, rmSync, statSync } from 'node:fs'
import Sqlite from 'better-sqlite3'
import { asBookProblem, BookProblem } from '../bookProblem.ts'
import { forceToDisk } from '../verifiedCopy.ts'
import { copyFile, hashOfFile } from './byPieces.ts'
import { unwatched, type WorkStand } from './workStand.ts'

/** A book put aside may have its last pages in a file of their own: they are taken in. */
function wholeInto(comes: string, coming: string): void {
  const db = new Sqlite(comes, { readonly: true, fileMustExist: true })
  try {
    db.prepare('VACUUM INTO ?').run(coming)
  } finally {
    db.close()
  }
}

/** comes: a checked file that is to become the book. */
export type NearTask = { comes: string; bookPath: string }

function twinOf({ comes, bookPath }: NearTask, stand: WorkStand): string {
  const coming = `${bookPath}.coming`
  rmSync(coming, { force: true })
  const alone = !existsSync(`${comes}-wal`)
  if (alone) copyFile({ from: comes, to: coming, stage: 'copying' }, stand)
  else wholeInto(comes, coming)
  forceToDisk(coming)
  if (statSync(coming).size === 0 || (alone && hashOfFile(coming, stand) !== hashOfFile(comes, stand)))
    throw new BookProblem(
      'unsafe',
      'The copy could not be read in whole, so nothing was changed. Try another.',
    )
  return coming
}

/**
 * A file's twin under a temporary name beside the book, forced to disk and compared: all that takes long before one book takes the other's place. Gives
 * where it lies. Throws BookProblem; then nothing is left of it.
 */
export function bringNear(task: NearTask, stand = unwatched): string {
  return asBookProblem(() => {
    try {
      return twinOf(task, stand)
    } catch (error) {
      rmSync(`${task.bookPath}.coming`, { force: true })
      throw error
    }
  }, task.bookPath)
}
