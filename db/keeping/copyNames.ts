import { basename, dirname, join } from 'node:path'
import { copyReasons, type BookCopy, type CopyReason } from '../../shared/keeping/keepingModel.ts'

const stemOf = (bookPath: string): string => basename(bookPath).replace(/\.book$/, '')

/** The folder the copies of a book lie in, beside it: 'jobs-copies' for 'jobs.book'. */
export const copiesFolder = (bookPath: string): string =>
  join(dirname(bookPath), `${stemOf(bookPath)}-copies`)

const pattern = /^(\d{4}-\d{2}-\d{2}) (\d{2})\.(\d{2})\.(\d{2}) ([a-z]+)(?:-\d+)?\.book$/

/** A copy's file name: '2026-03-02 08.00.00 daily.book' of a wall time '2026-03-02T08:00:00'. suffix tells two of one second apart. */
export const copyFileName = (at: string, why: CopyReason, suffix = ''): string =>
  `${at.slice(0, 10)} ${at.slice(11, 19).replaceAll(':', '.')} ${why}${suffix}.book`

/** What a copy's file name says; undefined of a file that isn't a copy of ours. */
export function readCopyName(name: string): Omit<BookCopy, 'bytes'> | undefined {
  const [, day, hours, minutes, seconds, reason] = pattern.exec(name) ?? []
  const why = copyReasons.find((known) => known === reason)
  return why && day ? { name, at: `${day}T${hours}:${minutes}:${seconds}`, why } : undefined
}

/** Whether a file beside the book is the copy made before its layout changed. */
export const isBeforeMigration = (bookPath: string, file: string): boolean =>
  file.startsWith(`${stemOf(bookPath)}-before-`) && /-before-\d{4}(-\d+)?\.book$/.test(file)

/** What a copy taken away is called, so that it tells itself apart on a stick full of others: 'Bracework 2026-03-02 08.00.book'. */
export const awayFileName = (at: string, suffix = ''): string =>
  `Bracework ${at.slice(0, 10)} ${at.slice(11, 16).replace(':', '.')}${suffix}.book`
