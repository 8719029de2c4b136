import { existsSync, readdirSync, rmSync, statSync } from 'node:fs'
import { dirname, join } from 'node:path'
import type { BookCopy } from '../../shared/keeping/keepingModel.ts'
import { copiesToDrop } from '../../shared/keeping/thinning.ts'
import { BookProblem } from '../bookProblem.ts'
import { copiesFolder, isBeforeMigration, readCopyName } from './copyNames.ts'

const filesIn = (folder: string): string[] => (existsSync(folder) ? readdirSync(folder) : [])

const two = (number: number): string => String(number).padStart(2, '0')
const wallTimeOf = (moment: Date): string =>
  `${moment.getFullYear()}-${two(moment.getMonth() + 1)}-${two(moment.getDate())}T${two(moment.getHours())}:${two(moment.getMinutes())}:${two(moment.getSeconds())}`

const beforeMigration = (bookPath: string, file: string): BookCopy => {
  const { size, mtime } = statSync(join(dirname(bookPath), file))
  return { name: file, at: wallTimeOf(mtime), why: 'migration', bytes: size }
}

/** The copies of a book, and the books put aside, the newest first. */
export function listCopies(bookPath: string): BookCopy[] {
  const folder = copiesFolder(bookPath)
  const made = filesIn(folder).flatMap((file) => {
    const read = readCopyName(file)
    return read ? [{ ...read, bytes: statSync(join(folder, file)).size }] : []
  })
  const beside = filesIn(dirname(bookPath)).filter((file) => isBeforeMigration(bookPath, file))
  return [...made, ...beside.map((file) => beforeMigration(bookPath, file))].sort((a, b) =>
    a.at === b.at ? (a.name < b.name ? 1 : -1) : a.at < b.at ? 1 : -1,
  )
}

/** Those from before the layout changed lie beside the book, the others in their folder. */
const placeOf = (bookPath: string, name: string): string =>
  join(isBeforeMigration(bookPath, name) ? dirname(bookPath) : copiesFolder(bookPath), name)

/** Where a copy lies. Only a name that is listed has a place, so that none can lead out of the folder. */
export function pathOfCopy(bookPath: string, name: string): string {
  if (!listCopies(bookPath).some((copy) => copy.name === name))
    throw new BookProblem('refused', 'That copy is no longer there. Choose another.')
  return placeOf(bookPath, name)
}

/** Throws away the copies that are no longer needed. Gives how many went. */
export function thinOut(bookPath: string, today: string): number {
  const dropped = copiesToDrop(listCopies(bookPath), today)
  for (const { name } of dropped) rmSync(placeOf(bookPath, name), { force: true })
  return dropped.length
}

/** Takes away what a copy or a restore that was cut off has left: never under a final name, so never anything of worth. */
export function clearHalfMade(bookPath: string): void {
  const folder = copiesFolder(bookPath)
  for (const file of filesIn(folder))
    if (/\.unfinished(-journal|-wal|-shm)?$/.test(file)) rmSync(join(folder, file), { force: true })
  rmSync(`${bookPath}.coming`, { force: true })
}

/** Whether there is anything that says a book was here before: then a missing one is never silently begun anew. */
export const wasHere = (bookPath: string): boolean => listCopies(bookPath).length > 0
