import type { Book } from '../../db/open.ts'
import type { RequestName, Takes, Gives } from '../../shared/contract.ts'
import type { Design } from '../../shared/gate/designModel.ts'
import type { GateSpec } from '../../shared/gate/spec.ts'
import type { PaperHeader } from '../../shared/job/issuedPaper.ts'
import type { LengthUnit } from '../../shared/job/job.ts'
import type { PaperFormat } from '../../shared/papers/page.ts'
import type { Result } from '../../shared/problem.ts'

/** All a job card is made from. A draft says on every page that it isn't issued. */
export type CardInput = {
  header: PaperHeader
  spec: GateSpec
  design: Design
  unit: LengthUnit
  format: PaperFormat
  draft: boolean
}

/** Lays the card out and paints it. The same input gives the same bytes. */
export type MakeCard = (input: CardInput) => Promise<{ bytes: Uint8Array; pages: number }>

/** What the handlers work with: the open book, the clock, the card's painter, and where faults of the program are written down. */
export type Context = {
  book: Book
  now: () => string
  makeCard: MakeCard
  log: (text: string) => void
}

/** One request's handler: a plain function of what is open and what came. Bad input comes back as problems; faults throw. */
export type Handler<N extends RequestName> = (
  context: Context,
  payload: Takes<N>,
) => Result<Gives<N>> | Promise<Result<Gives<N>>>
