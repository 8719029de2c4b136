import { existsSync } from 'node:fs'
import { basename, dirname, resolve } from 'node:path'
import { BookProblem } from '../db/bookProblem.ts'
import { fillSampleBook } from '../db/demo/fillSampleBook.ts'
import { openBook, type OpenOptions } from '../db/open.ts'
import type { FolderKind } from '../shared/folderWarning.ts'
import { problemLine, type Result } from '../shared/problem.ts'
import { kindOfBookFolder } from './bookFolder.ts'
import { holdBook } from './bookLock.ts'
import { dayOf } from './calendar.ts'
import { answer } from './handlers/answer.ts'
import type { Context } from './handlers/context.ts'
import { issueSampleCard } from './handlers/sampleCards.ts'
import { quoteSamples } from './handlers/sampleQuotations.ts'
import { makeShelf, shelving, type Shelf } from './printing/shelf.ts'

/**
 * What opening takes: the book's file, the clock, the papers' painters, how the window prints (null where a browser does) and the shelf it
 * prints from, the log. A book that is new is filled with the
 * sample jobs unless `empty` asks for none.
 */
export type Opening = OpenOptions & {
  path: string
  makeCard: Context['makeCard']
  makeQuotation: Context['makeQuotation']
  makeBenchPaper: Context['makeBenchPaper']
  print: Context['print']
  shelf?: Shelf
  warm?: () => void
  log: (line: string) => void
  empty?: boolean
  handedJob?: Context['handedJob']
  chooseFolder?: Context['chooseFolder']
}

/** The book as both carriers use it. close lets another window open it. */
export type OpenedBook = {
  answer: (name: string, payload: unknown) => Promise<Result<unknown>>
  /** Where the book's folder lies: one that isn't this machine's own is warned of. */
  folder: FolderKind
  close: () => Promise<void>
}

/** Names the book, since a person may keep several: 'the job book “workshop” in /home/ann/Documents'. */
const alreadyOpen = (path: string): string =>
  `Bracework is already open with the job book “${basename(path, '.book')}” in ${dirname(resolve(path))}. Go on in that window, or close it first.`

/** The sample jobs and prices, and the cards and quotations of those that have one; a paper that can't be made is left out and logged. */
const fill = async (context: Context): Promise<void> => {
  const { book, now, log } = context
  const today = context.dayOf(now())
  const { cards, quotations } = fillSampleBook(book, { today })
  const format = book.settings.read().paper
  for (const jobId of cards) {
    const issued = await issueSampleCard(context, jobId, format)
    if (!issued.ok) log(`a sample card was left out: ${issued.problems.map(problemLine).join('; ')}`)
  }
  for (const words of await quoteSamples(context, quotations, format))
    log(`a sample quotation was left out: ${words}`)
}

/** What the handlers work with, papers shown lately within reach of the printer. Opens the book. */
function contextOf(
  path: string,
  { handedJob, chooseFolder, ...rest }: Omit<Opening, 'path' | 'empty'>,
): Context {
  const { makeCard, makeQuotation, makeBenchPaper, print, shelf = makeShelf(), warm, log, ...options } = rest
  return {
    book: openBook(path, options),
    now: options.now,
    dayOf,
    makeCard: shelving(shelf, makeCard),
    makeQuotation: shelving(shelf, makeQuotation),
    makeBenchPaper: shelving(shelf, makeBenchPaper),
    shelf,
    print,
    log,
    bookFolder: kindOfBookFolder(resolve(path)),
    ...(warm && { warm }),
    ...(handedJob && { handedJob }),
    ...(chooseFolder && { chooseFolder }),
  }
}

/**
 * Takes the book for this process and opens it; where there is none yet, the sample book is made. Throws BookProblem,
 * whose message is for the person: 'locked' when another Bracework has it open, else what the disk or the book has.
 */
export const openedBook = async ({ path, empty, ...rest }: Opening): Promise<OpenedBook> => {
  const lock = await holdBook(path)
  if (!lock) throw new BookProblem('locked', alreadyOpen(path))
  try {
    const isNew = !existsSync(path)
    const context = contextOf(path, rest)
    if (isNew && !empty) await fill(context)
    return {
      answer: (name, payload) => answer(context, name, payload),
      folder: context.bookFolder ?? 'own',
      close: async () => {
        context.book.close()
        await lock.release()
      },
    }
  } catch (problem) {
    await lock.release()
    throw problem
  }
}
