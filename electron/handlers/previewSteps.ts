import type { PriceBook } from '../../shared/pricing/book.ts'
import { itemsUsed } from '../../shared/pricing/itemsUsed.ts'
import { matching } from '../../shared/pricing/matching.ts'
import type { NewPrice, Price } from '../../shared/pricing/price.ts'
import type { RiseEffect, RiseLine, RisePreview } from '../../shared/pricing/quotation.ts'
import { effectsOf, type StandingJob } from '../../shared/pricing/riseEffects.ts'
import { asAdded, dayOfAll, riseLines } from '../../shared/pricing/risePreview.ts'
import { bookChange } from '../../shared/pricing/standingBook.ts'

type Asked = { book: PriceBook; newPrices: NewPrice[]; quoted: StandingJob[]; day: string }
type ByItem = ReadonlyMap<number, Price[]>

/** Prices gone through, lines told and quotations worked out in one go: each some ms on a slow laptop. */
const pricesAtOnce = 10_000
const linesAtOnce = 1000
const quotationsAtOnce = 10

/** The items that any quotation which stands may rest on. */
function* usedSteps({ book, quoted }: Asked): Generator<void, Set<number>> {
  if (quoted.length === 0) return new Set()
  const items = matching(book)
  yield
  const options = quoted.flatMap(({ money }) => money.options)
  return new Set(options.flatMap((option) => itemsUsed({ items }, option)))
}

/** The prices of some items only, by item. */
function* pricesOf({ prices }: PriceBook, wanted: ReadonlySet<number>): Generator<void, ByItem> {
  const found = new Map<number, Price[]>()
  for (const [place, price] of prices.entries()) {
    const own = found.get(price.itemId)
    if (own) own.push(price)
    else if (wanted.has(price.itemId)) found.set(price.itemId, [price])
    if (place % pricesAtOnce === pricesAtOnce - 1) yield
  }
  return found
}

/** Each new price beside the one that holds on its day, some at a time, each time with the part of the book they are about. */
function* lineSteps({ book, newPrices }: Asked, prices: ByItem): Generator<void, RiseLine[]> {
  const items = new Map(book.items.map((item) => [item.id, item]))
  const lines: RiseLine[] = []
  for (let from = 0; from < newPrices.length; from += linesAtOnce) {
    yield
    const part = newPrices.slice(from, from + linesAtOnce)
    const about = part.flatMap(({ itemId }) => items.get(itemId) ?? [])
    for (const line of riseLines({ ...book, items: about }, part, prices)) lines.push(line)
  }
  return lines
}

/** What the new prices do to quotations that stand, worked out over those prices alone that any of them rests on. */
function* effectSteps(
  { book, newPrices, quoted, day }: Asked,
  { used, prices }: { used: ReadonlySet<number>; prices: ByItem },
): Generator<void, RiseEffect[]> {
  if (quoted.length === 0) return []
  const before = { ...book, prices: [...used].flatMap((itemId) => prices.get(itemId) ?? []) }
  const risen = newPrices.filter(({ itemId }) => used.has(itemId))
  const after = { ...before, prices: [...before.prices, ...asAdded(before, risen)] }
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
  const used = yield* usedSteps(asked)
  yield
  const wanted = new Set([...used, ...asked.newPrices.map(({ itemId }) => itemId)])
  const prices = yield* pricesOf(asked.book, wanted)
  const all = yield* lineSteps(asked, prices)
  yield
  const effects = yield* effectSteps(asked, { used, prices })
  const lines = all.filter((line) => line.old !== line.new)
  return { lines, effects, unchanged: all.length - lines.length }
}
