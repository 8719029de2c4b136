import type { Section } from '../gate/spec.ts'
import type { ItemOf } from '../pricing/item.ts'
import type { StandingBook } from '../pricing/standingBook.ts'
import type { Blank, JobToOrder } from './jobTimber.ts'
import { lengthOffers } from './lengthOffers.ts'
import type { CuttingSettings, RackPiece, TaskOffer } from './orderModel.ts'
import { downToTenth } from './wholeTenths.ts'

type ShelvesAsked = { book: StandingBook; rack: readonly RackPiece[]; cutting: CuttingSettings }

type Item = ItemOf<'timber'>

/** Blanks of one section of one job, with the item that they are bought as. */
export type Wanted = { job: JobToOrder; section: Section; item: Item | undefined; blanks: Blank[] }

/** An item as it can be bought: the lengths on offer, and the longest blank that any of them or of the rack gives, mm. */
export type Shelf = { item: Item; key: string; offers: TaskOffer[]; rack: RackPiece[]; longest: number }

function shelfOf({ book, rack, cutting }: ShelvesAsked, item: Item, taken: ReadonlySet<string>): Shelf {
  const name = `${item.name}, ${item.facts.species}`.slice(0, 180)
  const key = taken.has(name) ? `${name} (${item.id})` : name
  const offers = lengthOffers(book, item.id).map((offer): TaskOffer => ({ key, ...offer }))
  const own = rack.filter(({ itemId }) => itemId === item.id)
  const longest = Math.max(
    0,
    ...offers.map(({ length }) => length - cutting.endTrim),
    ...own.map(({ length }) => downToTenth(length)),
  )
  return { item, key, offers, rack: own, longest }
}

/** A shelf for each item that is wanted, none named like another. */
export function shelvesOf(asked: ShelvesAsked, wanted: readonly Wanted[]): Map<number, Shelf> {
  const shelves = new Map<number, Shelf>()
  const taken = new Set<string>()
  for (const { item } of wanted) {
    if (!item || shelves.has(item.id)) continue
    const shelf = shelfOf(asked, item, taken)
    taken.add(shelf.key)
    shelves.set(item.id, shelf)
  }
  return shelves
}
