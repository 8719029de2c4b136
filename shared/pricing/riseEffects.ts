import type { PriceBook } from './book.ts'
import { charge } from './charge.ts'
import type { Asked } from './costedLine.ts'
import { costedLines } from './costedLines.ts'
import { restsOn } from './itemsUsed.ts'
import { sumPence, type Pence } from './pence.ts'
import { wholeBp } from './percent.ts'
import type { Acceptance, QuotedMoney, QuotedOption, RiseEffect } from './quotation.ts'
import { quotedAgain } from './quotedAgain.ts'
import { bookChange, type BookChange, type StandingBook } from './standingBook.ts'

/** A quotation that still stands: open, or accepted and its timber not yet ordered. */
export type StandingJob = Pick<RiseEffect, 'jobId' | 'number' | 'customer' | 'title' | 'paperId'> & {
  money: QuotedMoney
  acceptance: Pick<Acceptance, 'option'> | null
}

/** What an option costs the workshop at a book's prices, overhead in it; nothing is explained, so that hundreds are quick. */
function costNow(book: StandingBook, asked: Asked): Pence {
  const cost = sumPence(costedLines(book, asked).map((line) => line.pence))
  const { overhead } = charge(cost, asked.entry, asked.settings)
  return sumPence([cost, overhead])
}

/** What is left of a standing offer after its cost, basis points of the offer: £552.00 that costs £460.00 leaves 1667. */
export const marginOnOffer = (quoted: Pence, cost: Pence): number =>
  quoted === 0 ? 0 : Math.round(((quoted - cost) * wholeBp) / quoted)

/** The options of a quotation that can still be made: the accepted one, else all. */
const openOptions = ({ money, acceptance }: StandingJob): QuotedOption[] =>
  acceptance === null ? money.options : money.options.filter((_, index) => index === acceptance.option)

function effectsOn(job: StandingJob, { before, after, touched }: BookChange): RiseEffect[] {
  const { jobId, number, customer, title, paperId } = job
  return openOptions(job).flatMap((option): RiseEffect[] => {
    const asked = quotedAgain(job.money, option)
    if (!restsOn(before, asked, touched)) return []
    const [costBefore, costAfter] = [costNow(before, asked), costNow(after, asked)]
    if (costBefore === costAfter) return []
    const quoted = option.estimate.net
    return [
      {
        jobId,
        number,
        customer,
        title,
        paperId,
        stands: job.acceptance === null ? 'quoted' : 'accepted',
        option: option.name,
        quoted,
        costBefore,
        costAfter,
        marginBeforeBp: marginOnOffer(quoted, costBefore),
        marginAfterBp: marginOnOffer(quoted, costAfter),
      },
    ]
  })
}

/** What a change between two open states of a book does to quotations that stand. */
export const effectsOf = (quoted: readonly StandingJob[], change: BookChange): RiseEffect[] =>
  quoted.flatMap((job) => effectsOn(job, change))

/**
 * What a change of prices does to each quotation that stands, a row an option, only where its cost to the workshop (overhead in it) changes
 * on the day. The offer itself never moves: what moves is the margin left on it. Quotations that use nothing with a
 * changed price aren't worked out again. Two hundred over a book of 5,000 lines take some thousandths of a second.
 */
export const riseEffects = ({
  quoted,
  before,
  after,
  day,
}: {
  quoted: readonly StandingJob[]
  before: PriceBook
  after: PriceBook
  day: string
}): RiseEffect[] => effectsOf(quoted, bookChange(before, after, day))
