import { mkdirSync, renameSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import Sqlite from 'better-sqlite3'
import type { Database } from 'better-sqlite3'
import { asBookProblem, BookProblem } from '../bookProblem.ts'
import { freeName, forceFolderToDisk, forceToDisk, rowCounts } from '../verifiedCopy.ts'
import { unwatched } from './workStand.ts'

/** What a copy is made of and where it goes. namePath makes the path from a suffix, as a name may be taken. */
export type CopyTask = { bookPath: string; folder: string; fileName: string }

/** Where a copy lies until it is whole: it grows there while it is made. */
export const unfinishedCopy = (path: string): string => `${path}.unfinished`

type Counts = Record<string, number>

/** Rows may come while the copy is made: each table of the copy lies between what stood before and after. */
const between = (copy: Counts, before: Counts, after: Counts): boolean =>
  Object.keys(after).every((table) => {
    const [one = 0, other = 0, rows = -1] = [before[table], after[table], copy[table]]
    return rows >= Math.min(one, other) && rows <= Math.max(one, other)
  })

/** How large a copy of it will be, bytes: the pages that hold anything. */
function usedBytes(db: Database): number {
  const [pages = 0, free = 0, size = 0] = ['page_count', 'freelist_count', 'page_size'].map((name) =>
    Number(db.pragma(name, { simple: true })),
  )
  return (pages - free) * size
}

function refuseUnsound(db: Database): void {
  const found = db.pragma('integrity_check(1)', { simple: true })
  if (found !== 'ok')
    throw new BookProblem(
      'damaged',
      'Part of the job book is damaged, so no copy of it was made and the earlier copies were kept.',
      found,
    )
}

function check(path: string, book: Database, before: Counts): void {
  const copy = new Sqlite(path, { readonly: true, fileMustExist: true })
  try {
    const sound = copy.pragma('quick_check(1)', { simple: true }) === 'ok'
    const alike = ['application_id', 'user_version'].every(
      (name) => copy.pragma(name, { simple: true }) === book.pragma(name, { simple: true }),
    )
    if (!sound || !alike || !between(rowCounts(copy), before, rowCounts(book)))
      throw new BookProblem(
        'unsafe',
        'A copy was made but didn’t come out as the book is, so it was thrown away. Try again.',
      )
  } finally {
    copy.close()
  }
}

/**
 * Makes a copy of a book that may be in use, by a connection of its own that only reads: the book is looked through first (a damaged one must
 * not push its good copies out), the copy written under a temporary name, opened, compared in mark, layout and row counts, forced to disk and only
 * then named. Gives the copy's path. Throws BookProblem; then nothing is left behind.
 */
export function makeCopy({ bookPath, folder, fileName }: CopyTask, stand = unwatched): string {
  return asBookProblem(() => {
    if (mkdirSync(folder, { recursive: true }) !== undefined) forceFolderToDisk(folder)
    const path = freeName((suffix) => join(folder, fileName.replace(/\.book$/, `${suffix}.book`)))
    const unfinished = unfinishedCopy(path)
    const book = new Sqlite(bookPath, { readonly: true, fileMustExist: true })
    try {
      stand.begin('looking through')
      refuseUnsound(book)
      const before = rowCounts(book)
      rmSync(unfinished, { force: true })
      stand.begin('copying', usedBytes(book))
      book.prepare('VACUUM INTO ?').run(unfinished)
      stand.begin('reading back')
      check(unfinished, book, before)
      forceToDisk(unfinished)
      stand.reach(0)
      renameSync(unfinished, path)
      forceFolderToDisk(path)
    } finally {
      book.close()
      for (const rest of ['', '-journal']) rmSync(`${unfinished}${rest}`, { force: true })
    }
    return path
  }, folder)
}
