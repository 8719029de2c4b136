import {
  copyFileSync,
  existsSync,
  linkSync,
  lstatSync,
  mkdirSync,
  renameSync,
  rmSync,
  statSync,
} from 'node:fs'
import { join } from 'node:path'
import type { CopyReason } from '../../shared/keeping/keepingModel.ts'
import { asBookProblem } from '../bookProblem.ts'
import { forceFolderToDisk, forceToDisk, freeName } from '../verifiedCopy.ts'
import { copiesFolder, copyFileName } from './copyNames.ts'

/** coming: the checked twin of what becomes the book, made by `bringNear`; at: wall time, why: what the old book is put aside as; shut: closes the book, once all else is ready. */
export type Replacing = { bookPath: string; coming: string; at: string; why: CopyReason; shut: () => void }

/** Gives a file a second name; where the disk knows no second names, a copy, named only once it is whole. A folder lying there can only be moved. */
function secondName(from: string, to: string): void {
  if (!lstatSync(from).isFile()) return renameSync(from, to)
  try {
    linkSync(from, to)
  } catch {
    const unfinished = `${to}.unfinished`
    copyFileSync(from, unfinished)
    forceToDisk(unfinished)
    renameSync(unfinished, to)
  }
}

/**
 * Keeps the book that stands, whatever it is, under a dated name among the copies: with what was last written to it (-wal), which belongs to it and to no
 * other. The book's own name still leads to it. The last pages come first, so that what has a book's name among the copies is whole. Gives the name it has there, null when there was nothing.
 */
function putAside({ bookPath, at, why }: Pick<Replacing, 'bookPath' | 'at' | 'why'>): string | null {
  const folder = copiesFolder(bookPath)
  if (mkdirSync(folder, { recursive: true }) !== undefined) forceFolderToDisk(folder)
  const name = freeName(
    (suffix) => join(folder, copyFileName(at, why, suffix)),
    (path) => existsSync(path) || existsSync(`${path}-wal`),
  )
  const parts = ['-wal', ''].filter((part) =>
    part === ''
      ? existsSync(bookPath)
      : (statSync(`${bookPath}${part}`, { throwIfNoEntry: false })?.size ?? 0) > 0,
  )
  for (const part of parts) secondName(`${bookPath}${part}`, `${name}${part}`)
  forceFolderToDisk(name)
  return parts.includes('') ? name : null
}

/**
 * Puts a checked file in the book's place. Order matters: the new file is whole beside it first, so that a full disk is met while
 * the book is still open; it is shut; then the old one is kept
 * under another name; then what was last written to the old one goes (left lying, it would be laid over the new book and bring old pages back);
 * last, the new file takes the name in one step. Cut off anywhere, the name leads to the old book or to the new one.
 * Gives where the old book is kept, null when there was none.
 */
export function replaceBook({ bookPath, coming, at, why, shut }: Replacing): string | null {
  return asBookProblem(() => {
    try {
      shut()
      const kept = putAside({ bookPath, at, why })
      for (const part of ['-wal', '-shm']) rmSync(`${bookPath}${part}`, { force: true })
      renameSync(coming, bookPath)
      forceFolderToDisk(bookPath)
      return kept
    } finally {
      rmSync(coming, { force: true })
    }
  }, bookPath)
}
