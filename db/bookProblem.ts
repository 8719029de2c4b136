import { dirname } from 'node:path'
import { driveWords, roomLeft } from './drive.ts'

/** What can be wrong with the book on the disk, for programs and tests; the person reads the sentence. */
export type BookProblemCode =
  | 'newer'
  | 'not-a-book'
  | 'damaged'
  | 'missing'
  | 'locked'
  | 'full'
  | 'not-writable'
  | 'disk'
  | 'unsafe'
  | 'refused'
  | 'stopped'

/**
 * The book can't be opened, read or written. `message` is one plain sentence for the person at the bench, with the way out;
 * `cause` holds what the store itself said, for the log.
 */
export class BookProblem extends Error {
  readonly code: BookProblemCode
  constructor(code: BookProblemCode, message: string, cause?: unknown) {
    super(message, { cause })
    this.name = 'BookProblem'
    this.code = code
  }
}

/** What the store or the disk may say, what it is to us, and the sentence for it. where: the drive in words. */
const known: [RegExp, BookProblemCode, (where: string) => string][] = [
  [
    /^SQLITE_(BUSY|LOCKED)/,
    'locked',
    () => 'The job book is busy in another window or program. Wait a moment and try again.',
  ],
  [
    /^(SQLITE_FULL|ENOSPC|EDQUOT)/,
    'full',
    (where) =>
      `There is no room left on ${where}, so nothing more can be kept. Make room and try again; what was kept before is safe.`,
  ],
  [
    /^SQLITE_NOTADB/,
    'not-a-book',
    () => 'This is not a job book, or its beginning is damaged. Bring back a copy of the book.',
  ],
  [
    /^SQLITE_CORRUPT/,
    'damaged',
    () => 'The job book is damaged. Leave it as it is and bring back a copy of it.',
  ],
  [
    /^(SQLITE_(READONLY|PERM|CANTOPEN|AUTH)|EACCES|EROFS|EPERM)/,
    'not-writable',
    (where) => `Nothing can be written on ${where} here. Check that the folder may be written in.`,
  ],
  [
    /^(SQLITE_(IOERR|PROTOCOL|NOLFS)|EIO|EFBIG|ENODEV|ENXIO)/,
    'disk',
    (where) =>
      `${where.charAt(0).toUpperCase()}${where.slice(1)} did not answer as it should, so nothing was kept just now. Check it, then try again; what was kept before is safe.`,
  ],
]

/** Less room than the store needs to begin a writing, bytes. */
const leastRoom = 65_536

const codeOf = (error: unknown): string =>
  error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : ''

/**
 * The book's own problem for what the store or the disk threw; path says on which drive it happened. Anything that isn't about the book's file
 * comes back as it was: it is a fault of the program, and must not be dressed up as one of the disk's.
 */
export function bookProblemFrom(error: unknown, path?: string): unknown {
  const code = codeOf(error)
  const disk = known.find(([pattern]) => pattern.test(code))
  // Some of the store's own small files fail with an error where there is no room for them.
  const full = disk?.[1] === 'disk' && path !== undefined && roomLeft(path) < leastRoom
  const found = full ? known.find(([, one]) => one === 'full') : disk
  if (!found || error instanceof BookProblem) return error
  return new BookProblem(found[1], found[2](path === undefined ? 'the disk' : driveWords(path)), error)
}

/** Runs work on the book; what the store throws comes out as the book's own problem, with the drive that path lies on. */
export function asBookProblem<T>(work: () => T, path?: string): T {
  try {
    return work()
  } catch (error) {
    throw bookProblemFrom(error, path)
  }
}

/** Troubles of the disk that the book lies on, which the person mends there. */
const ofTheDisk = new Set<BookProblemCode>(['full', 'not-writable', 'disk'])

/** The same problem; where it is the disk's, with the folder that the book is in, so that the person knows which disk. */
export function withPlace(problem: BookProblem, path: string): BookProblem {
  if (!ofTheDisk.has(problem.code) || problem.message.includes(dirname(path))) return problem
  return new BookProblem(
    problem.code,
    `${problem.message} The job book is in ${dirname(path)}.`,
    problem.cause,
  )
}
