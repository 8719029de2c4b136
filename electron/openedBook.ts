import { basename, dirname, resolve } from 'node:path'
import { BookProblem } from '../db/bookProblem.ts'
import { fillSampleBook } from '../db/demo/fillSampleBook.ts'
import { pathOfCopy } from '../db/keeping/copies.ts'
import { readMigrations } from '../db/migrate.ts'
import type { OpenOptions } from '../db/open.ts'
import type { FolderKind } from '../shared/folderWarning.ts'
import { problemLine, type Result } from '../shared/problem.ts'
import { kindOfBookFolder } from './bookFolder.ts'
import { holdBook } from './bookLock.ts'
import { dayOf } from './calendar.ts'
import { answer } from './handlers/answer.ts'
import type { Context } from './handlers/context.ts'
import { issueSampleCard } from './handlers/sampleCards.ts'
import { quoteSamples } from './handlers/sampleQuotations.ts'
import { bookDesk, type BookDesk } from './keeping/bookDesk.ts'
import { copyAtClosing, copyOfTheDay, settleIn } from './keeping/copying.ts'
import { goOverYearly } from './keeping/goOver.ts'
import type { Ground } from './keeping/ground.ts'
import { keepBook } from './keeping/keepBook.ts'
import type { Keeping } from './keeping/keeping.ts'
import { oneAtATime } from './keeping/oneAtATime.ts'
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
  /** The job's file that was handed to the program last, once. */
  handedJob?: Context['handedJob']
  /** The file of the thread that copies are made in, where the program is bundled. */
  keepingWorker?: string
  /** Asks for a folder in a window of the system's own; left out where there is none. */
  chooseFolder?: () => Promise<string | null>
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

const hour = 3_600_000

/** The copy of each day and the yearly look at the papers: now, and each hour while the program runs. Gives how to stop. */
function keepWatch(ground: Ground, queue: ReturnType<typeof oneAtATime>, justMade: boolean): () => void {
  const look = (): void => {
    void queue(() => copyOfTheDay(ground)).then(() => queue(() => goOverYearly(ground)))
  }
  // A book made this minute holds nothing that could be lost.
  if (!justMade) look()
  const timer = setInterval(look, hour).unref()
  return () => clearInterval(timer)
}

/** The sample jobs of a new book. A disk that fills up meanwhile leaves a book without some of them. */
async function fillNew(context: Context): Promise<void> {
  try {
    await fill(context)
  } catch (problem) {
    if (!(problem instanceof BookProblem)) throw problem
    context.log(`the sample was not all made: ${problem.message}`)
  }
}

/** What the handlers work with, papers shown lately within reach of the printer. The book is whichever lies open; where none does, asking for it throws why. */
function contextOf(opening: Opening, desk: BookDesk, keeping: Keeping): Context {
  const { now, print, shelf = makeShelf(), warm, log, handedJob, chooseFolder } = opening
  return {
    get book() {
      return desk.book()
    },
    ...{ now, dayOf, shelf, print, log, keeping },
    makeCard: shelving(shelf, opening.makeCard),
    makeQuotation: shelving(shelf, opening.makeQuotation),
    makeBenchPaper: shelving(shelf, opening.makeBenchPaper),
    bookFolder: kindOfBookFolder(resolve(desk.path)),
    copyBefore: async (why) => pathOfCopy(desk.path, (await keeping.copy(why)).name),
    keepingWorker: opening.keepingWorker,
    ...(warm && { warm }),
    ...(handedJob && { handedJob }),
    ...(chooseFolder && { chooseFolder }),
  }
}

/**
 * Takes the book for this process and opens it; where there is none yet, the sample book is made. A book that can't be opened is no reason not to open the
 * window: requests then answer why, and those about its keeping what can be done. Throws BookProblem 'locked', whose message is for the person,
 * when another Bracework has the book open.
 */
export const openedBook = async (opening: Opening): Promise<OpenedBook> => {
  const { path, empty, now, log, keepingWorker: worker, chooseFolder } = opening
  const lock = await holdBook(path)
  if (!lock) throw new BookProblem('locked', alreadyOpen(path))
  try {
    const migrations = opening.migrations ?? readMigrations()
    const desk = bookDesk(path, { now, migrations }, log)
    const mind = { fault: null, copiedAt: 0, chosen: new Set<string>() }
    const ground: Ground = { desk, now, log, migrations, worker, chooseFolder, mind }
    const queue = oneAtATime()
    const context = contextOf(opening, desk, keepBook(ground, queue))
    const { isNew } = desk.open()
    if (isNew && !empty) await fillNew(context)
    settleIn(ground)
    const stopWatch = keepWatch(ground, queue, isNew)
    return {
      answer: (name, payload) => answer(context, name, payload),
      folder: context.bookFolder ?? 'own',
      close: async () => {
        stopWatch()
        // After the copy that is just being made: two at once would make one of them not needed.
        await queue(async () => {
          copyAtClosing(ground)
          desk.shut()
        })
        await lock.release()
      },
    }
  } catch (problem) {
    await lock.release()
    throw problem
  }
}
