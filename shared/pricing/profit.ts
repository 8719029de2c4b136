import { toPence, type Pence } from './pence.ts'
import { wholeBp } from './percent.ts'
import type { Profit } from './terms.ts'

/** The highest margin taken, basis points: at 100 % no price would be high enough. */
export const mostMarginBp = 9500

function checkMargin(bp: number): void {
  if (!(bp < wholeBp)) throw new RangeError(`a margin below ${wholeBp} basis points is accepted, got ${bp}`)
}

/** The margin (share of the price) that a markup (share of the cost) comes to, basis points: 2000 is 1667. */
export const marginOfMarkup = (markupBp: number): number =>
  Math.round((markupBp * wholeBp) / (wholeBp + markupBp))

/** The markup that a margin comes to, basis points: 2500 is 3333, 1667 is 2000. Throws RangeError from 100 %. */
export function markupOfMargin(marginBp: number): number {
  checkMargin(marginBp)
  return Math.round((marginBp * wholeBp) / (wholeBp - marginBp))
}

/** Both ways of saying one profit, basis points, whichever was asked for. */
export const bothWays = ({ by, bp }: Profit): { markupBp: number; marginBp: number } =>
  by === 'markup'
    ? { markupBp: bp, marginBp: marginOfMarkup(bp) }
    : { markupBp: markupOfMargin(bp), marginBp: bp }

/**
 * The profit put on a cost, to the nearest penny. On £500.00 a markup of 20 % is £100.00; a margin of 20 % is £125.00, a fifth of
 * the £625.00 that it makes. Throws RangeError for a margin of 100 % or more.
 */
export function profitOn(cost: Pence, { by, bp }: Profit): Pence {
  if (by === 'markup') return toPence((cost * bp) / wholeBp)
  checkMargin(bp)
  return toPence((cost * bp) / (wholeBp - bp))
}
