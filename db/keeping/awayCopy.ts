import { readdirSync, renameSync, rmSync, statSync } from 'node:fs'
import { basename, isAbsolute, join } from 'node:path'
import type { BackedUp } from '../../shared/keeping/keepingModel.ts'
import { asBookProblem, BookProblem } from '../bookProblem.ts'
import { driveName, driveWords, roomLeft, sameDisk } from '../drive.ts'
import { forceFolderToDisk, forceToDisk, freeName } from '../verifiedCopy.ts'
import { copyFile, hashOfFile } from './byPieces.ts'
import { copiesFolder } from './copyNames.ts'
import { makeCopy } from './makeCopy.ts'
import { unwatched, type WorkStand } from './workStand.ts'

/** source: a checked copy, null to make one straight there; bookPath: the book it is of; awayName: what it is called there. */
export type AwayTask = { source: string | null; bookPath: string; folder: string; awayName: string }

const refused = (message: string): BookProblem => new BookProblem('refused', message)

/** Refuses a folder that no copy can go into, in a sentence about that folder. */
export function refuseFolder(folder: string, bookPath: string): void {
  if (!isAbsolute(folder))
    throw refused('Give the whole way to the folder, from its beginning, as the file manager shows it.')
  const found = statSync(folder, { throwIfNoEntry: false })
  if (!found) throw refused(`There is no folder ${folder}. Is the stick plugged in?`)
  if (!found.isDirectory()) throw refused(`${folder} is not a folder. Choose the folder to put the copy in.`)
  const own = statSync(copiesFolder(bookPath), { throwIfNoEntry: false })
  if (own && own.ino === found.ino && own.dev === found.dev)
    throw refused(
      'That is the program’s own folder for copies. Choose a folder on another drive, a memory stick say.',
    )
}

/** Some drives can't be asked to put a folder's own entry down; the copy is read back all the same. */
function folderToDisk(path: string): void {
  try {
    forceFolderToDisk(path)
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : ''
    if (code !== 'EINVAL' && code !== 'ENOTSUP' && code !== 'EPERM' && code !== 'EBADF') throw error
  }
}

function refuseNoRoom(source: string, folder: string): void {
  const { size } = statSync(source)
  if (roomLeft(folder) < size)
    throw new BookProblem(
      'full',
      `There isn’t room for the copy on ${driveWords(folder)}: it takes ${Math.ceil(size / 1e6)} MB. Make room there, or choose another.`,
    )
}

/** What an earlier copy that was cut off has left there would take up the room of the next. */
function clearCutOff(folder: string): void {
  for (const file of readdirSync(folder))
    if (/^Bracework \d{4}-\d{2}-\d{2} .*\.book\.unfinished(-journal)?$/.test(file))
      rmSync(join(folder, file), { force: true })
}

/** A file written under a temporary name, forced to disk, read back and compared; only then named. Never writes over one that is there. */
function carry(source: string, wanted: (suffix: string) => string, stand: WorkStand): string {
  const path = freeName(wanted)
  const unfinished = `${path}.unfinished`
  try {
    copyFile({ from: source, to: unfinished, stage: 'carrying' }, stand)
    forceToDisk(unfinished)
    const hash = hashOfFile(source, stand)
    if (hashOfFile(unfinished, stand) !== hash) throw refused(notTheSame)
    renameSync(unfinished, path)
    folderToDisk(path)
    if (hashOfFile(path, unwatched) !== hash) {
      rmSync(path, { force: true })
      throw refused(notTheSame)
    }
  } finally {
    rmSync(unfinished, { force: true })
  }
  return path
}

const notTheSame =
  'What was read back from there isn’t what was written. Don’t rely on that drive: try again, or use another.'

/**
 * Puts a checked copy into a folder of the person's choice: written under a temporary name, forced to disk, read back and compared by hash, named,
 * read back once more. When it answers, the stick may be pulled. Throws BookProblem with a sentence naming the drive.
 */
export function carryAway({ source, bookPath, folder, awayName }: AwayTask, stand = unwatched): BackedUp {
  return asBookProblem(() => {
    refuseFolder(folder, bookPath)
    clearCutOff(folder)
    refuseNoRoom(source ?? bookPath, folder)
    const path =
      source === null
        ? makeCopy({ bookPath, folder, fileName: awayName }, stand)
        : carry(source, (suffix) => join(folder, awayName.replace(/\.book$/, `${suffix}.book`)), stand)
    const drive = driveName(folder)
    return {
      name: basename(path),
      folder,
      drive,
      bytes: statSync(path).size,
      away: !sameDisk(folder, bookPath),
    }
  }, folder)
}
