import { join } from 'node:path'
import { BookProblem } from '../../db/bookProblem.ts'
import { refuseFolder } from '../../db/keeping/awayCopy.ts'
import { pathOfCopy } from '../../db/keeping/copies.ts'
import { awayFileName } from '../../db/keeping/copyNames.ts'
import { unfinishedCopy } from '../../db/keeping/makeCopy.ts'
import type { BackedUp } from '../../shared/keeping/keepingModel.ts'
import { wallTimeOf } from '../calendar.ts'
import { copyBook } from './copying.ts'
import type { Ground } from './ground.ts'
import { watched } from './watched.ts'

/** Where folders are chosen in the system's own window, only one that was chosen there is written to. */
function refuseUnchosen({ chooseFolder, mind }: Ground, folder: string): void {
  if (chooseFolder && !mind.chosen.has(folder))
    throw new BookProblem('refused', 'Choose the folder to put the copy in first.')
}

/** Asks for a folder in the system's own window; null when none was chosen, or where there is no such window. */
export async function chooseFolder({ chooseFolder: choose, mind }: Ground): Promise<string | null> {
  const folder = (await choose?.()) ?? null
  if (folder !== null) mind.chosen.add(folder)
  return folder
}

/** A checked copy on this disk; null where there is no room for one, so that a copy can still be taken away to make some. */
async function copyHere(ground: Ground): Promise<string | null> {
  try {
    const { name } = await copyBook(ground, 'asked')
    return pathOfCopy(ground.desk.path, name)
  } catch (problem) {
    if (problem instanceof BookProblem && problem.code === 'full') return null
    throw problem
  }
}

/** A fresh checked copy, put into a folder of the person's choice and read back there. The book remembers that one has left its disk. */
export async function takeAway(ground: Ground, folder: string): Promise<BackedUp> {
  const { desk, now } = ground
  const book = desk.book()
  refuseUnchosen(ground, folder)
  refuseFolder(folder, desk.path)
  const source = await copyHere(ground)
  const awayName = awayFileName(wallTimeOf(now()))
  const task = { source, bookPath: desk.path, folder, awayName }
  const grows = unfinishedCopy(join(folder, awayName))
  const done = await watched(ground, { do: 'carry', task }, grows)
  if (done.away) book.keeping.change({ away: { at: now(), drive: done.drive, folder }, putOffUntil: null })
  return done
}
