import type { Certificate, Offer } from './planModel.ts'
import type { BuyRequest } from './request.ts'

/** A section's task as the checker works it out by itself: whole sizes and rooms, offers counted together as the certificate says. */
export type Task = {
  sizes: number[]
  demand: number[]
  offers: { room: number; pence: number; most: number }[]
}

/** Work done a piece at a time, each some milliseconds at most, so that whoever asks can have a turn between. */
export type Steps<T> = Generator<void, T>

/** A whole number of these shares is a penny. */
export const share = 2 ** 24
export const at = (list: ArrayLike<number>, index: number): number => list[index] ?? NaN
export const tenths = (mm: number): number => Math.round(mm * 10)
export const divisor = (a: number, b: number): number => (b === 0 ? a : divisor(b, a % b))
const sum = (list: readonly number[]): number => list.reduce((total, one) => total + one, 0)

/** Whether all are whole, not below nothing, and exact. */
export const areWhole = (values: readonly number[]): boolean =>
  values.every((value) => value >= 0 && Number.isSafeInteger(value))

/** Counts added up by key. */
export function tally(entries: [string, number][]): Map<string, number> {
  const totals = new Map<string, number>()
  for (const [key, count] of entries) totals.set(key, (totals.get(key) ?? 0) + count)
  return totals
}

/** What tells offers apart. */
export const offerKey = (section: string, { from, stock, pence }: Offer): string =>
  JSON.stringify([section, from, stock, pence])

/** How many of each offer are to be had. */
export const offered = ({ stock, rack = [] }: BuyRequest): Map<string, number> =>
  tally([
    ...stock.map(({ section, length, pence, available = Infinity }): [string, number] => [
      offerKey(section, { from: 'merchant', stock: length, pence }),
      available,
    ]),
    ...rack.map(({ section, length, pence = 0 }): [string, number] => [
      offerKey(section, { from: 'rack', stock: length, pence }),
      1,
    ]),
  ])

/** Room for parts with a kerf on each: Σ(part + kerf) ≤ length − end trim + kerf, and a rack piece loses no end trim. */
export const roomOf = (
  { kerf, endTrim }: BuyRequest,
  { from, stock }: Pick<Offer, 'from' | 'stock'>,
): number => tenths(stock) + tenths(kerf) - (from === 'rack' ? 0 : tenths(endTrim))

/** Why a certificate doesn't speak of the request's own offers; undefined where it names each that is to be had once. */
function offerFault(have: Map<string, number>, { section, offers }: Certificate): string | undefined {
  const named = offers.flat().map((offer) => offerKey(section, offer))
  const all = [...have].flatMap(([key, count]) =>
    count > 0 && (JSON.parse(key) as string[])[0] === section ? [key] : [],
  )
  if (new Set(named).size !== named.length) return `${section}: its certificate names an offer twice`
  return all.every((key) => named.includes(key))
    ? undefined
    : `${section}: its certificate leaves out an offer`
}

/**
 * A section's task worked out anew from the request, for the parts and offers that its certificate names; or why that can't be. Offers counted
 * together are taken for the longest of them at the lowest price: no plan is dearer for that.
 */
export function taskOf(request: BuyRequest, certificate: Certificate): Task | string {
  const { section, parts, offers } = certificate
  const wanted = tally(
    request.parts.flatMap((part) => (part.section === section ? [[String(part.length), part.quantity]] : [])),
  )
  const demand = parts.map((length) => wanted.get(String(length)) ?? 0)
  if (wanted.size !== parts.length || new Set(parts).size !== parts.length || demand.includes(0))
    return `${section}: the parts in its certificate are not those asked for`
  const have = offered(request)
  const fault = offerFault(have, certificate)
  if (fault) return fault
  const full = parts.map((length) => tenths(length) + tenths(request.kerf))
  const step = full.reduce((common, size) => divisor(size, common), 0)
  const sizes = full.map((size) => size / step)
  const all = sum(sizes.map((size, part) => size * at(demand, part)))
  const room = (offer: Offer) => Math.max(0, Math.min(all, Math.floor(roomOf(request, offer) / step)))
  const grouped = offers.map((group) => ({
    room: Math.max(0, ...group.map(room)),
    pence: Math.min(...group.map(({ pence }) => pence)),
    most: Math.min(sum(demand), sum(group.map((offer) => have.get(offerKey(section, offer)) ?? 0))),
  }))
  return { sizes, demand, offers: grouped }
}
