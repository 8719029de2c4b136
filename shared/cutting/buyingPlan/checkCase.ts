import { bestWithin } from './checkBound.ts'
import type { BoundCase } from './checkPacking.ts'
import type { Certificate, Offer } from './planModel.ts'
import type { BuyRequest } from './request.ts'

export const tenths = (mm: number): number => Math.round(mm * 10)
const divisor = (a: number, b: number): number => (b === 0 ? a : divisor(b, a % b))

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

type Room = { room: number; pence: number; most: number }

/** Whether an offer may be left out: it holds no part, or as many as are needed of another hold as much for no more money. */
const needless = (
  offer: Room,
  groups: Room[][],
  { fill, pieces }: { fill: Float64Array; pieces: number },
): boolean => {
  const held = fill[offer.room] as number
  const beats = (group: Room[]) =>
    group.reduce((sum, { most }) => sum + most, 0) >= pieces &&
    group.every(({ room, pence }) => (fill[room] as number) >= held && pence <= offer.pence)
  return held === 0 || groups.some(beats)
}

type Needed = Pick<BoundCase, 'sizes' | 'demand'> & { step: number; pieces: number; all: number }

/** The parts asked for, in the certificate's order, in whole steps of what their sizes have in common; undefined where they aren't the same. */
function neededOf(request: BuyRequest, { section, parts }: Certificate): Needed | undefined {
  const wanted = tally(
    request.parts.flatMap((part) => (part.section === section ? [[String(part.length), part.quantity]] : [])),
  )
  const demand = parts.map((length) => wanted.get(String(length)) ?? 0)
  if (wanted.size !== parts.length || new Set(parts).size !== parts.length || demand.includes(0))
    return undefined
  const full = parts.map((length) => tenths(length) + tenths(request.kerf))
  const step = full.reduce((common, size) => divisor(size, common), 0)
  const sizes = full.map((size) => size / step)
  const all = sizes.reduce((total, size, part) => total + size * (demand[part] as number), 0)
  return { sizes, demand, step, all, pieces: demand.reduce((total, count) => total + count, 0) }
}

/** A section's task worked out anew from the request, for the parts and offers that its certificate names; or why that can't be. */
export function caseOf(request: BuyRequest, certificate: Certificate): BoundCase | string {
  const { section, offers } = certificate
  const needed = neededOf(request, certificate)
  if (!needed) return `${section}: the parts in its certificate are not those asked for`
  const { sizes, demand, step, all, pieces } = needed
  const have = offered(request)
  const seen = (offer: Offer): Room => ({
    room: Math.max(0, Math.min(all, Math.floor(roomOf(request, offer) / step))),
    pence: offer.pence,
    most: have.get(offerKey(section, offer)) ?? 0,
  })
  const groups = offers.map((group) => group.map(seen))
  const named = new Set(offers.flat().map((offer) => offerKey(section, offer)))
  const unnamed = [...have.keys()].flatMap((key) => {
    const [of, from, stock, pence] = JSON.parse(key) as [string, Offer['from'], number, number]
    return of === section && !named.has(key) ? [seen({ from, stock, pence })] : []
  })
  const fill = bestWithin({ sizes, demand, offers: [...groups.flat(), ...unnamed] }, sizes)
  if (!unnamed.every((offer) => offer.most === 0 || needless(offer, groups, { fill, pieces })))
    return `${section}: its certificate leaves out an offer that may be cheaper`
  const most = (group: Room[]) =>
    Math.min(
      pieces,
      group.reduce((total, one) => total + one.most, 0),
    )
  const grouped = groups.map((group) => ({
    room: Math.max(...group.map(({ room }) => room)),
    pence: Math.min(...group.map(({ pence }) => pence)),
    most: most(group),
  }))
  return { sizes, demand, offers: grouped }
}
