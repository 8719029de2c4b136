import { BookProblem } from '../../db/bookProblem.ts'
import { refuseFolder } from '../../db/keeping/awayCopy.ts'
import { beside } from '../../db/keeping/beside.ts'
import { pathOfCopy } from '../../db/keeping/copies.ts'
import { awayFileName } from '../../db/keeping/copyNames.ts'
import type { BackedUp } from '../../shared/keeping/keepingModel.ts'
import { copyBook } from './copying.ts'
import type { Ground } from './ground.ts'

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

/** A fresh checked copy, put into a folder of the person's choice and read back there. The book remembers that one has left its disk. */
export async function takeAway(ground: Ground, folder: string): Promise<BackedUp> {
  const { desk, now, worker } = ground
  const book = desk.book()
  refuseUnchosen(ground, folder)
  refuseFolder(folder, desk.path)
  const copy = await copyBook(ground, 'asked')
  const task = {
    source: pathOfCopy(desk.path, copy.name),
    bookPath: desk.path,
    folder,
    awayName: awayFileName(copy.at),
  }
  const done = await beside({ do: 'carry', task }, worker)
  if (done.away) book.keeping.change({ away: { at: now(), drive: done.drive, folder }, putOffUntil: null })
  return done
}
