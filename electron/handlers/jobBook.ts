import { spanDays } from '../../shared/job/dueSpan.ts'
import type { JobFilter } from '../../db/jobFilter.ts'
import type { JobQuestion } from '../../shared/job/found.ts'
import { good } from '../../shared/problem.ts'
import { monthStarts } from '../calendar.ts'
import type { Context, Handler } from './context.ts'
import { inSlices } from './inSlices.ts'

/** The days and moments that a question stands for today. */
function filterOf(context: Context, { stage, customerId, papers, sample, ...asked }: JobQuestion): JobFilter {
  const [from, until] =
    asked.year === undefined ? [] : [monthStarts(asked.year)[0], monthStarts(asked.year)[12]]
  return {
    ...{ stage, customerId, papers, sample },
    begun: from !== undefined && until !== undefined ? { from, until } : undefined,
    ...(asked.promised && {
      inHand: true,
      due: spanDays(asked.promised, context.dayOf(context.now())),
    }),
  }
}

export const listJobs: Handler<'jobs.list'> = (context, question) =>
  good(context.book.jobs.find(question.search, filterOf(context, question)))

export const findPieces: Handler<'jobs.pieces'> = ({ book }, { rows }) => good(book.pieces.find(rows))

export const readBoard: Handler<'jobs.board'> = ({ book, now, dayOf }, { by }) =>
  good(book.board.read(by, dayOf(now())))

/** A day in a year that nobody meant must not make a list of a hundred empty years. */
const mostYearsAhead = 2

/** Every year that the book knows something of, and this one, the latest first. */
function yearsKnown({ book, dayOf }: Context, thisYear: number): number[] {
  const reach = book.year.reach()
  const yearOf = (day: string): number => Number(day.slice(0, 4))
  const first = Math.min(thisYear, reach ? yearOf(dayOf(reach.first)) : thisYear)
  const last = Math.max(
    thisYear,
    reach ? yearOf(dayOf(reach.last)) : thisYear,
    Math.min(thisYear + mostYearsAhead, reach?.promised ? yearOf(reach.promised) : thisYear),
  )
  return Array.from({ length: last - first + 1 }, (_, place) => last - place)
}

const thisYearOf = ({ now, dayOf }: Context): number => Number(dayOf(now()).slice(0, 4))

export const listYears: Handler<'jobs.years'> = (context) => good(yearsKnown(context, thisYearOf(context)))

export const readYear: Handler<'jobs.year'> = async (context, asked) => {
  const thisYear = thisYearOf(context)
  const year = asked.year ?? thisYear
  const summed = await inSlices(context.book.year.steps({ year, starts: monthStarts(year) }))
  return good({ year, years: yearsKnown(context, thisYear), ...summed })
}
