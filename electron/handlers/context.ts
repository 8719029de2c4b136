import type { Book } from '../../db/open.ts'
import type { RequestName, Takes, Gives } from '../../shared/contract.ts'
import type { FolderKind } from '../../shared/folderWarning.ts'
import type { JobCardInput } from '../../shared/papers/jobCardInput.ts'
import type { Result } from '../../shared/problem.ts'
import type { HandedFile } from '../handedFile.ts'
import type { Keeping } from '../keeping/keeping.ts'
import type { MakeBenchPaper } from '../makeBenchPaper.ts'
import type { MakeQuotation } from '../makeQuotation.ts'
import type { PrintPaper } from '../printing/printPaper.ts'
import type { Shelf } from '../printing/shelf.ts'

/** A paper of a job's gate: its card, or one of the sheets that may be printed beside it. */
export type Sheet = 'job card' | Takes<'papers.sheet'>['sheet']

/** Lays the card, or another sheet of the same gate, out and paints it. The same input gives the same bytes. */
export type MakeCard = (input: JobCardInput, sheet?: Sheet) => Promise<{ bytes: Uint8Array; pages: number }>

/**
 * What the handlers work with: the open book, the clock, the calendar (the day of a moment where the workshop is), the painters of papers, the
 * papers shown lately, how the program's window prints (null where a browser does), where faults of the program are written down, and where the
 * book's folder lies (an ordinary one unless said).
 */
export type Context = {
  book: Book
  now: () => string
  dayOf: (at: string) => string
  makeCard: MakeCard
  makeQuotation: MakeQuotation
  makeBenchPaper: MakeBenchPaper
  shelf: Shelf
  print: PrintPaper | null
  /** Has the painters of papers loaded: somebody is about to want one. */
  warm?: () => void
  log: (text: string) => void
  bookFolder?: FolderKind
  /** The job's file that was handed to the program last, once. Missing where there is no window of its own. */
  handedJob?: () => HandedFile | null
  /** Asks the person for a folder in a window of its own; null: put away. Missing where there is no such window: the folder is typed then. */
  chooseFolder?: () => Promise<string | null>
  /** Makes a copy of the book before something takes its place, and gives where it lies. Missing: a checked copy beside the book. */
  copyBefore?: (what: 'import') => string | Promise<string>
  /** The file of the thread that long work on the book's files is done in, where the program is bundled. */
  keepingWorker?: string | undefined
  /** How the book is kept; a program that only reads in one has none. */
  keeping?: Keeping
}

/** One request's handler: a plain function of what is open and what came. Bad input comes back as problems; faults throw. */
export type Handler<N extends RequestName> = (
  context: Context,
  payload: Takes<N>,
) => Result<Gives<N>> | Promise<Result<Gives<N>>>
