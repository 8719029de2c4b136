import { basename } from 'node:path'
import { BookProblem, bookProblemFrom } from '../../db/bookProblem.ts'
import { driveWords } from '../../db/drive.ts'
import { beside } from '../../db/keeping/beside.ts'
import type { Book } from '../../db/open.ts'
import type { BookCounts } from '../../shared/openBook/requests.ts'
import type { TableName } from '../../shared/openBook/tables.ts'
import { bad, good, type Problem, type Result } from '../../shared/problem.ts'
import { bookFiles, filesExpected } from '../openBook/bookFiles.ts'
import { beginPace, Stopped, type Pace } from '../openBook/pace.ts'
import { stageFolder, type Staged } from '../openBook/stageFolder.ts'
import { folderThere, writeFolder } from '../openBook/writeFolder.ts'
import type { Context, Handler } from './context.ts'
import { whileStill } from './stillBook.ts'

/** What goes on with a book's open files: the work in hand, and the folder looked into last. */
type InHand = { pace: Pace | null; looked: string | null }

const inHandOf = new WeakMap<Book, InHand>()

const inHand = ({ book }: Context): InHand => {
  const known = inHandOf.get(book) ?? { pace: null, looked: null }
  inHandOf.set(book, known)
  return known
}

const busy: Problem = {
  code: 'busy',
  field: '',
  message: 'The book is being taken out or brought in just now. Wait until that is done, or stop it.',
}
const stopped: Problem = { code: 'stopped', field: '', message: 'It was stopped, and nothing was changed.' }

/** What the person wanted of a folder, in a sentence about its drive. */
const wanted: Record<Pace['work']['what'], { failed: string; then: string }> = {
  'taking out': {
    failed: 'so the book wasn’t taken out',
    then: 'Nothing was left there; choose another folder, or see to it and try again.',
  },
  looking: { failed: 'so the folder couldn’t be read', then: 'Nothing was changed.' },
  'bringing in': { failed: 'so nothing was brought in', then: 'The book is as it was.' },
}

/** A name too long for the drive, too many files open at once, a folder that has gone: its drive doesn't take it. */
const notTaken = new Set(['ENAMETOOLONG', 'EMFILE', 'ENOENT', 'ENOTDIR'])

/** A folder that can't be written in or read is the person's to settle, in words that name its drive. */
function folderProblem(error: unknown, { what, folder }: LongWork): Problem | undefined {
  const code = error instanceof Error && 'code' in error ? String(error.code) : ''
  const known = bookProblemFrom(error, folder)
  if (error instanceof BookProblem || !(known instanceof BookProblem || notTaken.has(code))) return undefined
  // What the book's own store throws is about the book's disk, which is named where it is answered.
  if (code.startsWith('SQLITE_')) return undefined
  const full = known instanceof BookProblem && known.code === 'full'
  const drive = driveWords(folder)
  const why = full
    ? `There is no room left on ${drive}`
    : `‘${basename(folder)}’ on ${drive} can’t be reached or written in`
  const { failed, then } = wanted[what]
  return { code: 'not-written', field: 'folder', message: `${why}, ${failed}. ${then}` }
}

type LongWork = { what: Pace['work']['what']; folder: string }

/** Does one long work at a time. */
async function withPace<T>(
  context: Context,
  { what, folder }: LongWork,
  work: (pace: Pace) => Promise<Result<T>>,
): Promise<Result<T>> {
  const state = inHand(context)
  if (state.pace) return bad(busy)
  const pace = beginPace(what)
  state.pace = pace
  try {
    return await work(pace)
  } catch (error) {
    if (error instanceof Stopped) return bad(stopped)
    const problem = folderProblem(error, { what, folder })
    if (!problem) throw error
    return bad(problem)
  } finally {
    state.pace = null
  }
}

/** The folder meant: typed on this machine, or chosen in a window of its own where there is one. null: put away. */
async function folderMeant(context: Context, folder: string | null): Promise<Result<string | null>> {
  const { chooseFolder } = context
  if (chooseFolder && folder === null) return good(await chooseFolder())
  if (chooseFolder || folder === null)
    return bad({ code: 'refused', field: 'folder', message: 'Bracework refused this' })
  return folderThere(folder.trim())
}

const countsBy = (count: (table: TableName) => number): BookCounts => ({
  jobs: count('jobs'),
  customers: count('customers'),
  papers: count('papers'),
  prices: count('prices'),
  orders: count('orders'),
  rackPieces: count('rackPieces'),
})

/** The whole book as a folder of readable files, inside the folder that was chosen. */
export const takeBookOut: Handler<'book.takeOut'> = async (context, payload) => {
  const { book, now, dayOf } = context
  const meant = await folderMeant(context, payload.folder)
  if (!meant.ok) return meant
  const parent = meant.value
  if (parent === null) return good(null)
  return withPace(context, { what: 'taking out', folder: parent }, async (pace) => {
    const snapshot = book.whole.snapshot()
    try {
      pace.work.of = filesExpected(snapshot)
      const name = `Bracework book ${dayOf(now())}`
      const counts = countsBy(snapshot.count)
      return good({ ...(await writeFolder({ parent, name }, bookFiles(snapshot), pace)), counts })
    } finally {
      snapshot.close()
    }
  })
}

const countsIn = ({ counts }: Staged): BookCounts => countsBy((table) => counts.get(table) ?? 0)

/** What a folder holds and what is wrong with it. Nothing in the book is changed. */
export const lookIntoFolder: Handler<'book.lookInto'> = async (context, payload) => {
  const { whole } = context.book
  const meant = await folderMeant(context, payload.folder)
  if (!meant.ok) return meant
  const folder = meant.value
  if (folder === null) return good(null)
  return withPace(context, { what: 'looking', folder }, async (pace) => {
    const staged = await stageFolder(whole, folder, pace)
    inHand(context).looked = folder
    if (!staged.ok)
      return good({
        folder,
        workshop: '',
        counts: countsBy(() => 0),
        own: whole.own(),
        problems: staged.problems,
      })
    staged.value.staging.discard()
    const { workshop, problems } = staged.value
    return good({ folder, workshop, counts: countsIn(staged.value), own: whole.own(), problems })
  })
}

/** A copy of the book before anything takes its place, by the keeper of copies where there is one. */
const copyFirst = async ({ book, copyBefore }: Context): Promise<string> =>
  copyBefore ? copyBefore('import') : book.whole.copy('import')

/** The waiting book takes this one's place, in a thread, with nobody else at the book; false where it isn't as it stood any more. */
function takeOver(
  { book, keeping, keepingWorker }: Context,
  staged: Staged,
  stands: string,
): Promise<boolean> {
  const task = { bookPath: book.path, staged: staged.staging.path }
  const work = async (): Promise<boolean> => {
    if (book.whole.stamp() !== stands) return false
    await beside({ do: 'takeOver', task }, keepingWorker)
    book.whole.cameIn()
    return true
  }
  return whileStill(book, () => (keeping ? keeping.inTurn(work) : work()))
}

async function putInPlace(context: Context, staged: Staged, pace: Pace) {
  for (;;) {
    const stands = context.book.whole.stamp()
    const copy = await copyFirst(context)
    await pace.breathe()
    // What was changed while the copy was made isn't in it: make another.
    if (await takeOver(context, staged, stands)) return good({ counts: countsIn(staged), copy })
  }
}

/** The book a folder holds takes the place of this one, all or nothing; a copy of this one is kept. */
export const bringBookIn: Handler<'book.bringIn'> = async (context, { folder, replace }) => {
  const { whole } = context.book
  if (inHand(context).looked !== folder)
    return bad({ code: 'refused', field: 'folder', message: 'Look into the folder first, then bring it in.' })
  if (whole.own() > 0 && !replace)
    return bad({
      code: 'own-jobs',
      field: 'replace',
      message:
        'This book holds the workshop’s own jobs or prices. Say that they may give place, or start with a fresh book.',
    })
  return withPace(context, { what: 'bringing in', folder }, async (pace) => {
    const staged = await stageFolder(whole, folder, pace)
    if (!staged.ok) return staged
    try {
      if (staged.value.problems.length > 0) return { ok: false, problems: staged.value.problems }
      return await putInPlace(context, staged.value, pace)
    } finally {
      staged.value.staging.discard()
    }
  })
}

/** How far the work in hand is; null when there is none. */
export const bookWorkInHand: Handler<'book.inHand'> = (context) => good(inHand(context).pace?.work ?? null)

/** Stops the work in hand; what it had begun is cleared away. */
export const stopBookWork: Handler<'book.stopWork'> = (context) => {
  const { pace } = inHand(context)
  pace?.stop()
  return good({ stopped: pace !== null })
}
