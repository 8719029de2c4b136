import type { Book } from '../../db/open.ts'
import type { PriceBook } from '../../shared/pricing/book.ts'
import type { NewPrice } from '../../shared/pricing/price.ts'
import type { PriceItem } from '../../shared/pricing/item.ts'
import { sameLine } from '../../shared/pricing/standing.ts'
import { unitsFor } from '../../shared/pricing/unitsOfKind.ts'
import { bad, good, type Problem } from '../../shared/problem.ts'
import { previewSteps } from './previewSteps.ts'
import type { Handler } from './context.ts'
import { inSlices } from './inSlices.ts'
import { missing } from './missing.ts'

/** As many problems as anybody reads. */
const mostProblems = 100
const checkedAtOnce = 5000

const twice = (field: string): Problem => ({
  code: 'twice',
  field,
  message: 'this price comes twice for the same day; leave one out',
})

/** A unit that its item isn't sold by: an estimate could never buy it so. */
function unitProblems(item: PriceItem, { unit }: NewPrice, field: string): Problem[] {
  const accepted = unitsFor(item)
  if (accepted.includes(unit)) return []
  const message = `got '${unit}' for ‘${item.name}’ (${item.kind}); ${accepted.join(' or ')} is accepted`
  return [{ code: 'refused', field: `${field}.unit`, message }]
}

const sameDay = (a: NewPrice, b: NewPrice): boolean => sameLine(a, b) && a.startsOn === b.startsOn

/** What is wrong with new prices, as far as the book knows: items or suppliers that it hasn't, a unit that its item isn't sold by, a price given twice for one day. */
function* problemSteps(
  { items, suppliers }: Pick<PriceBook, 'items' | 'suppliers'>,
  prices: NewPrice[],
): Generator<void, Problem[]> {
  const known = new Map(items.map((item) => [item.id, item]))
  const sellers = new Set<number | null>([null, ...suppliers.map(({ id }) => id)])
  const seen = new Map<number, NewPrice[]>()
  const problems: Problem[] = []
  for (const [place, price] of prices.entries()) {
    const { itemId, supplierId } = price
    const item = known.get(itemId)
    if (item) problems.push(...unitProblems(item, price, `prices[${place}]`))
    else problems.push(missing(`prices[${place}].itemId`, 'line of the price book'))
    if (!sellers.has(supplierId)) problems.push(missing(`prices[${place}].supplierId`, 'supplier'))
    const before = seen.get(itemId)
    if (before?.some((one) => sameDay(one, price))) problems.push(twice(`prices[${place}]`))
    if (before) before.push(price)
    else seen.set(itemId, [price])
    if (problems.length >= mostProblems) break
    if (place % checkedAtOnce === checkedAtOnce - 1) yield
  }
  return problems
}

/** The book as it stands with its stamp; read again in the rare case that prices came in while it was being read. */
async function readBook(book: Book): Promise<{ prices: PriceBook; stamp: string }> {
  for (;;) {
    const stamp = book.rises.stamp()
    const prices = await inSlices(book.prices.bookSteps())
    if (book.rises.stamp() === stamp) return { prices, stamp }
  }
}

/** What new prices would do, to each line and to every quotation that stands. Nothing is written. */
export const previewRise: Handler<'prices.preview'> = async ({ book, now, dayOf }, { prices: newPrices }) => {
  const day = dayOf(now())
  const { prices, stamp } = await readBook(book)
  const problems = await inSlices(problemSteps(prices, newPrices))
  if (problems.length > 0) return bad(...problems)
  const quoted = await inSlices(book.quotations.standingSteps(day))
  return good({ ...(await inSlices(previewSteps({ book: prices, newPrices, quoted, day }))), stamp })
}

/** Adds all of the prices or none. Refused when the book's prices aren't those of the preview any more. */
export const applyRise: Handler<'prices.apply'> = async ({ book }, { prices, origin, stamp }) => {
  const problems = await inSlices(problemSteps(await inSlices(book.prices.lineSteps()), prices))
  if (problems.length > 0) return bad(...problems)
  const rise = await inSlices(book.rises.addSteps({ prices, origin: origin.trim(), stamp }))
  if (rise) return good(rise)
  return bad({
    code: 'changed-meanwhile',
    field: 'stamp',
    message: 'prices were changed meanwhile in another window; look at the effect once more, then apply it',
  })
}

export const listRises: Handler<'prices.rises'> = ({ book }) => good(book.rises.list())

/**
 * Takes the latest rise that stands back. An earlier one can't be: the prices after it were made on top of it (5 % on what stood then), and
 * would be left standing on prices that never held. Undo the later ones first.
 */
export const undoRise: Handler<'prices.undo'> = ({ book }, { riseId }) => {
  const before = book.rises.list().find(({ id }) => id === riseId)
  if (!before) return bad(missing('riseId', 'change of prices'))
  if (before.undoneAt !== null)
    return bad({ code: 'refused', field: 'riseId', message: 'this change of prices has been undone already' })
  if (!book.rises.undo(riseId))
    return bad({
      code: 'refused',
      field: 'riseId',
      message: `later prices were made on top of these; undo ‘${book.rises.latest()?.origin ?? ''}’ first`,
    })
  return good(book.rises.list().find(({ id }) => id === riseId) ?? before)
}
