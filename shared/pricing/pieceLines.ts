import { writeShortMm } from '../units/writeLength.ts'
import {
  boughtLine,
  cheapest,
  missingLine,
  type Asked,
  type Buying,
  type Costed,
  type Desk,
  type LineStart,
} from './costedLine.ts'
import type { PriceItem } from './item.ts'
import type { FixingNeed, IronmongeryNeed } from './needs.ts'
import type { Price } from './price.ts'
import type { StandingBook } from './standingBook.ts'

/** How many of a priced unit a number of pieces takes; undefined for a unit that pieces aren't sold in. */
function takes(count: number, price: Price, share: boolean): Buying | undefined {
  if (price.unit === 'each') return { price, quantity: count, formula: 'pieces', inputs: { pieces: count } }
  if (price.unit === 'pair')
    return {
      price,
      quantity: Math.ceil(count / 2),
      formula: 'pieces / 2, whole pairs',
      inputs: { pieces: count },
    }
  if (price.unit !== 'box' || !price.size) return undefined
  const inputs = { pieces: count, 'in a box': price.size }
  return share
    ? { price, quantity: count / price.size, formula: 'pieces / pieces in a box', inputs }
    : {
        price,
        quantity: Math.ceil(count / price.size),
        formula: 'pieces / pieces in a box, whole boxes',
        inputs,
      }
}

type Wanted = {
  start: LineStart
  count: number
  item: PriceItem | undefined
  kind: PriceItem['kind']
  share: boolean
}

function pieceLine({ start, count, item, kind, share }: Wanted, { book, asked }: Desk): Costed {
  const { currency } = asked.settings
  const chosen = asked.entry.chosen[start.id]
  const found = chosen === undefined ? item : book.items.byId(chosen)
  const missing = (why: 'no item' | 'no price') =>
    missingLine(start, { quantity: count, unit: 'each', missing: why, currency })
  if (found?.kind !== kind) return missing('no item')
  const way = cheapest(book.offersOf(found.id).flatMap((price) => takes(count, price, share) ?? []))
  return way ? boughtLine(start, way, { book, asked }) : missing('no price')
}

const fixingName = ({ form, diameter, length }: FixingNeed): string =>
  `${form} ${writeShortMm(diameter, 2)} × ${writeShortMm(length, 2)}`

/**
 * Fixings, a line a size: by their share of a box or by whole boxes, as the workshop charges, or each. 68 from boxes of 200 at
 * £9.50 are £3.23 by share and £9.50 by the box.
 */
export const fixingLines = (book: StandingBook, asked: Asked): Costed[] =>
  asked.needs.fixings.map((need) => {
    const name = fixingName(need)
    const words = `${name[0]?.toUpperCase()}${name.slice(1)}, ${need.count}`
    return pieceLine(
      {
        start: { id: `fixings.${name}`, group: 'fixings', words },
        count: need.count,
        item: book.items.fixing(need),
        kind: 'fixing',
        share: asked.settings.fixingsBy === 'share',
      },
      { book, asked },
    )
  })

function ironmongeryId(need: IronmongeryNeed, earlier: readonly IronmongeryNeed[]): string {
  const same = earlier.filter(({ piece }) => piece === need.piece).length
  return `ironmongery.${need.piece}${same === 0 ? '' : ` (${same + 1})`}`
}

/** Ironmongery, a line a piece: each, by whole pairs or whole boxes, whichever comes cheapest. Three hinges take two pairs. */
export const ironmongeryLines = (book: StandingBook, asked: Asked): Costed[] =>
  asked.needs.ironmongery.map((need, index, all) =>
    pieceLine(
      {
        start: { id: ironmongeryId(need, all.slice(0, index)), group: 'ironmongery', words: need.name },
        count: need.count,
        item: book.items.ironmongery(need),
        kind: 'ironmongery',
        share: false,
      },
      { book, asked },
    ),
  )
