import type { PriceBook } from '../../shared/pricing/book.ts'
import { itemsUsed } from '../../shared/pricing/itemsUsed.ts'
import { matching } from '../../shared/pricing/matching.ts'
import type { NewPrice, Price } from '../../shared/pricing/price.ts'
import type { RiseEffect, RiseLine, RisePreview } from '../../shared/pricing/quotation.ts'
import { effectsOf, type StandingJob } from '../../shared/pricing/riseEffects.ts'
import { asAdded, dayOfAll, riseLines } from '../../shared/pricing/risePreview.ts'
import { bookChange } from '../../shared/pricing/standingBook.ts'

type Asked = { book: PriceBook; newPrices: NewPrice[]; quoted: StandingJob[]; day: string }

/** Prices gone through, lines told and quotations worked out in one go: each some ms on a slow laptop. */
const pricesAtOnce = 20_000
const linesAtOnce = 1000
const quotationsAtOnce = 10

/** The prices of some items only, by item. */
function* ofItems({ prices }: PriceBook, wanted: ReadonlySet<number>): Generator<void, Map<number, Price[]>> {
  const found = new Map<number, Price[]>()
  for (let from = 0; from < prices.length; from += pricesAtOnce) {
    for (const price of prices.slice(from, from + pricesAtOnce)) {
      if (!wanted.has(price.itemId)) continue
      const own = found.get(price.itemId)
      if (own) own.push(price)
      else found.set(price.itemId, [price])
    }
    yield
  }
  return found
}

/** Each new price beside the one that holds on its day, some at a time, each time from the part of the book they are about. */
function* lineSteps({ book, newPrices }: Asked): Generator<void, RiseLine[]> {
  const wanted = new Set(newPrices.map(({ itemId }) => itemId))
  const items = new Map(book.items.map((item) => [item.id, item]))
  yield
  const prices = yield* ofItems(book, wanted)
  const lines: RiseLine[] = []
  for (let from = 0; from < newPrices.length; from += linesAtOnce) {
    const part = newPrices.slice(from, from + linesAtOnce)
    const ids = [...new Set(part.map(({ itemId }) => itemId))]
    const about: PriceBook = {
      ...book,
      items: ids.flatMap((id) => items.get(id) ?? []),
      prices: ids.flatMap((id) => prices.get(id) ?? []),
    }
    for (const line of riseLines(about, part)) lines.push(line)
    yield
  }
  return lines
}

/** What the new prices do to quotations that stand, worked out over those prices alone that any of them rests on. */
function* effectSteps({ book, newPrices, quoted, day }: Asked): Generator<void, RiseEffect[]> {
  if (quoted.length === 0) return []
  const items = matching(book)
  yield
  const used = new Set(
    quoted.flatMap(({ money }) => money.options.flatMap((option) => itemsUsed({ items }, option))),
  )
  yield
  const before = { ...book, prices: [...(yield* ofItems(book, used)).values()].flat() }
  const added = asAdded(
    before,
    newPrices.filter(({ itemId }) => used.has(itemId)),
  )
  const after = { ...before, prices: [...before.prices, ...added] }
  const change = bookChange(before, after, dayOfAll(newPrices, day))
  const effects: RiseEffect[] = []
  for (let from = 0; from < quoted.length; from += quotationsAtOnce) {
    yield
    effects.push(...effectsOf(quoted.slice(from, from + quotationsAtOnce), change))
  }
  return effects
}

/** What a rise would do, a step at a time: what `risePreview` gives, but for the stamp, which is the book's own. */
export function* previewSteps(asked: Asked): Generator<void, Omit<RisePreview, 'stamp'>> {
  const all = yield* lineSteps(asked)
  const effects = yield* effectSteps(asked)
  const lines = all.filter((line) => line.old !== line.new)
  return { lines, effects, unchanged: all.length - lines.length }
}
