import type { StandingBook } from '../pricing/standingBook.ts'
import { hasTimberPrice } from './lengthOffers.ts'
import type { CuttingSettings, TooLong, UnpricedTimber } from './orderModel.ts'
import type { Shelf, Wanted } from './shelves.ts'

type LeftOut = Pick<UnpricedTimber, 'why' | 'tooLong'>

/** Why timber can't be ordered, undefined where it can. */
export function hindranceOf(
  book: StandingBook,
  { item, blanks }: Wanted,
  shelf: Shelf | undefined,
): UnpricedTimber['why'] | undefined {
  if (!item || !shelf) return 'no item'
  if (!hasTimberPrice(book, item.id)) return 'no price'
  if (shelf.offers.length === 0) return 'no lengths kept'
  return blanks.some(({ length }) => length > shelf.longest + 1e-6) ? 'no length' : undefined
}

/** The longest of some blanks beside the longest that the shelf gives. */
export function tooLongOf(
  { job, blanks }: Wanted,
  shelf: Shelf,
  { endTrim }: CuttingSettings,
): TooLong | null {
  const [blank] = [...blanks].sort((a, b) => b.length - a.length)
  if (!blank) return null
  const bought = Math.max(0, ...shelf.offers.map(({ length }) => length))
  const isBought = bought - endTrim >= shelf.longest
  return {
    ...{ part: blank.part, number: job.number, length: blank.length, longest: shelf.longest },
    of: isBought ? bought : shelf.longest,
    from: isBought ? 'merchant' : 'rack',
    trim: isBought ? endTrim : 0,
  }
}

/** Puts timber down as left out, of one section and for one reason once. */
export function addUnpriced(list: UnpricedTimber[], { job, section }: Wanted, left: LeftOut): void {
  const { name, species } = section
  const { why, tooLong } = left
  const own = list.find((one) => one.section === name && one.species === species && one.why === why)
  if (!own) return void list.push({ section: name, species, numbers: [job.number], why, tooLong })
  if (!own.numbers.includes(job.number)) own.numbers.push(job.number)
  if ((tooLong?.length ?? 0) > (own.tooLong?.length ?? 0)) own.tooLong = tooLong
}
