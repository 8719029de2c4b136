import * as v from 'valibot'
import { parseBy } from '../../gate/parseSpec.ts'
import { count, keys, list, text } from '../../gate/specShape.ts'
import type { Problem, Result } from '../../problem.ts'

/** The longest length a request may hold, mm: past any merchant's timber. */
export const longestStock = 20_000
/** Pieces in one request, rows of stock and of rack: past any workshop's year. */
export const mostPieces = 20_000
const mostRows = 2_000
/** Most money one request may come to, pence: bounds are exact in 1/2²⁴ of a penny up to there. */
const mostMoney = 500_000_000

const isTenths = (mm: number): boolean => Number(mm.toFixed(1)) === mm

const lengthIn = (accepts: string, bounds: { over?: number; from?: number; upTo: number }) =>
  v.pipe(
    v.number(accepts),
    v.finite(accepts),
    v.check((mm) => mm > (bounds.over ?? -1) && mm >= (bounds.from ?? 0) && mm <= bounds.upTo, accepts),
    v.check(isTenths, accepts),
    v.description(accepts),
  )

const length = () =>
  lengthIn(`a length in mm over 0 and up to ${longestStock}, in whole tenths`, {
    over: 0,
    upTo: longestStock,
  })

const allowance = (upTo: number) =>
  lengthIn(`a length in mm from 0 to ${upTo}, in whole tenths`, { from: 0, upTo })

const pence = () => {
  const accepts = 'whole pence from 0 to 1000000'
  return v.pipe(
    v.number(accepts),
    v.integer(accepts),
    v.minValue(0, accepts),
    v.maxValue(1_000_000, accepts),
    v.description(accepts),
  )
}

export const buyRequestShape = keys({
  version: v.literal(1, 'the number 1'),
  kerf: allowance(20),
  endTrim: allowance(1000),
  leastOffcut: allowance(longestStock),
  timeLimitMs: v.optional(count(1, 3_600_000)),
  parts: list(
    keys({ section: text(), length: length(), quantity: count(1, mostPieces), mark: v.optional(text()) }),
    mostRows,
    'parts',
  ),
  stock: list(
    keys({
      section: text(),
      length: length(),
      pence: pence(),
      available: v.optional(count(0, 1_000_000)),
    }),
    mostRows,
    'lengths a merchant keeps',
  ),
  rack: v.optional(
    list(
      keys({ section: text(), length: length(), pence: v.optional(pence()) }),
      mostRows,
      'offcuts in the rack',
    ),
  ),
})

/**
 * What is to be cut and what it may be cut from. Lengths in mm to 0.1, money in whole pence. kerf: lost at each cut; endTrim: lost in all on
 * squaring one merchant's length (a rack piece loses none); leastOffcut: a remnant this long or longer goes back to the rack; available: how
 * many the merchant has, any number where it isn't said. A rack piece without a price is free.
 */
export type BuyRequest = v.InferOutput<typeof buyRequestShape>

/** What needs the whole request: how many pieces, and how much money, it can come to. */
function requestProblems({ parts, stock, rack = [] }: BuyRequest): Problem[] {
  const pieces = parts.reduce((total, { quantity }) => total + quantity, 0)
  const dearest = Math.max(0, ...stock.map((one) => one.pence), ...rack.map((one) => one.pence ?? 0))
  if (pieces > mostPieces)
    return [
      {
        code: 'too-many',
        field: 'parts',
        message: `${pieces} pieces in all, up to ${mostPieces} are accepted`,
      },
    ]
  if (pieces * dearest > mostMoney)
    return [
      {
        code: 'too-dear',
        field: 'stock',
        message: `${pieces} pieces from lengths of ${dearest} pence each can come to ${pieces * dearest} pence, up to ${mostMoney} is accepted`,
      },
    ]
  return []
}

/** Reads a request from outside: every problem with its field, what came and what is accepted. */
export const parseBuyRequest = (input: unknown): Result<BuyRequest> =>
  parseBy(buyRequestShape, requestProblems, input)
