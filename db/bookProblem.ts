import { dirname } from 'node:path'

/** What can be wrong with the book on the disk, for programs and tests; the person reads the sentence. */
export type BookProblemCode =
  'newer' | 'not-a-book' | 'damaged' | 'locked' | 'full' | 'not-writable' | 'disk' | 'unsafe'

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

const sentences: [RegExp, BookProblemCode, string][] = [
  [
    /^SQLITE_(BUSY|LOCKED)/,
    'locked',
    'The job book is busy in another window or program. Wait a moment and try again.',
  ],
  [
    /^SQLITE_FULL/,
    'full',
    'The disk is full, so nothing more can be kept. Make room and try again; what was kept before is safe.',
  ],
  [
    /^SQLITE_NOTADB/,
    'not-a-book',
    'This is not a job book, or its beginning is damaged. Bring back a copy of the book.',
  ],
  [/^SQLITE_CORRUPT/, 'damaged', 'The job book is damaged. Leave it as it is and bring back a copy of it.'],
  [
    /^SQLITE_(READONLY|PERM|CANTOPEN|AUTH)/,
    'not-writable',
    'The job book can’t be opened for writing here. Check that its folder may be written in.',
  ],
  [
    /^SQLITE_(IOERR|PROTOCOL|NOLFS)/,
    'disk',
    'The disk did not answer as it should while the job book was in use. Check the disk, then open the book again.',
  ],
]

const codeOf = (error: unknown): string =>
  error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : ''

/**
 * The book's own problem for what the store or the disk threw. Anything that isn't about the book's file comes back as it was:
 * it is a fault of the program, and must not be dressed up as one of the disk's.
 */
export function bookProblemFrom(error: unknown): unknown {
  const code = codeOf(error)
  const known = sentences.find(([pattern]) => pattern.test(code))
  if (known) return new BookProblem(known[1], known[2], error)
  if (code === 'ENOSPC') return new BookProblem('full', sentences[1]![2], error)
  if (code === 'EACCES' || code === 'EROFS' || code === 'EPERM')
    return new BookProblem('not-writable', sentences[4]![2], error)
  if (code === 'EIO') return new BookProblem('disk', sentences[5]![2], error)
  return error
}

/** Runs work on the book; what the store throws comes out as the book's own problem. */
export function asBookProblem<T>(work: () => T): T {
  try {
    return work()
  } catch (error) {
    throw bookProblemFrom(error)
  }
}

/** Troubles of the disk that the book lies on, which the person mends there. */
const ofTheDisk = new Set<BookProblemCode>(['full', 'not-writable', 'disk'])

/** The same problem; where it is the disk's, with the folder that the book is in, so that the person knows which disk. */
export function withPlace(problem: BookProblem, path: string): BookProblem {
  if (!ofTheDisk.has(problem.code)) return problem
  return new BookProblem(
    problem.code,
    `${problem.message} The job book is in ${dirname(path)}.`,
    problem.cause,
  )
}
