import { BookProblem } from '../../db/bookProblem.ts'
import { good } from '../../shared/problem.ts'
import type { Keeping } from '../keeping/keeping.ts'
import type { Context, Handler } from './context.ts'

/** The keeping of the book; a program that only reads in one has none. */
function keepingOf({ keeping }: Context): Keeping {
  if (!keeping) throw new BookProblem('refused', 'Copies of the book are not kept here.')
  return keeping
}

export const stateOfKeeping: Handler<'keeping.state'> = (context) => good(keepingOf(context).state())

export const insideCopy: Handler<'keeping.inside'> = async (context, { name }) =>
  good(await keepingOf(context).inside(name))

export const copyNow: Handler<'keeping.copy'> = async (context) =>
  good(await keepingOf(context).copy('asked'))

export const restoreCopy: Handler<'keeping.restore'> = async (context, { name }) =>
  good(await keepingOf(context).restore(name))

export const salvageBook: Handler<'keeping.salvage'> = async (context) =>
  good(await keepingOf(context).salvage())

export const freshBook: Handler<'keeping.fresh'> = async (context) => good(await keepingOf(context).fresh())

export const openAgain: Handler<'keeping.again'> = async (context) => good(await keepingOf(context).again())

export const chooseFolder: Handler<'keeping.chooseFolder'> = async (context) =>
  good({ folder: await keepingOf(context).chooseFolder() })

export const backUp: Handler<'keeping.backUp'> = async (context, { folder }) =>
  good(await keepingOf(context).backUp(folder))

export const putOffReminder: Handler<'keeping.putOff'> = (context) => good(keepingOf(context).putOff())

export const putOutcomeAway: Handler<'keeping.putAway'> = (context) => good(keepingOf(context).putAway())

export const goOverPapers: Handler<'keeping.goOver'> = async (context) =>
  good(await keepingOf(context).goOver())

export const keepingInHand: Handler<'keeping.inHand'> = (context) => good(keepingOf(context).inHand())

export const stopKeeping: Handler<'keeping.stopWork'> = (context) =>
  good({ stopped: keepingOf(context).stop() })

export const putPaperBack: Handler<'keeping.putBack'> = async (context, { paperId }) =>
  good(await keepingOf(context).putBack(paperId))
