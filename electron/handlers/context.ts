import type { Book } from '../../db/open.ts'
import type { RequestName, Takes, Gives } from '../../shared/contract.ts'
import type { JobCardInput } from '../../shared/papers/jobCardInput.ts'
import type { Result } from '../../shared/problem.ts'
import type { Keeping } from '../keeping/keeping.ts'
import type { MakeBenchPaper } from '../makeBenchPaper.ts'
import type { MakeQuotation } from '../makeQuotation.ts'

/** A paper of a job's gate: its card, or one of the sheets that may be printed beside it. */
export type Sheet = 'job card' | Takes<'papers.sheet'>['sheet']

/** Lays the card, or another sheet of the same gate, out and paints it. The same input gives the same bytes. */
export type MakeCard = (input: JobCardInput, sheet?: Sheet) => Promise<{ bytes: Uint8Array; pages: number }>

/** What the handlers work with: the open book, the clock, the calendar (the day of a moment where the workshop is), the painters of papers, and where faults of the program are written down. */
export type Context = {
  book: Book
  now: () => string
  dayOf: (at: string) => string
  makeCard: MakeCard
  makeQuotation: MakeQuotation
  makeBenchPaper: MakeBenchPaper
  log: (text: string) => void
  /** How the book is kept; a program that only reads in one has none. */
  keeping?: Keeping
}

/** One request's handler: a plain function of what is open and what came. Bad input comes back as problems; faults throw. */
export type Handler<N extends RequestName> = (
  context: Context,
  payload: Takes<N>,
) => Result<Gives<N>> | Promise<Result<Gives<N>>>
