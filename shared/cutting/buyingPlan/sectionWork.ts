import type { Source } from './planModel.ts'
import type { BuyRequest } from './request.ts'

/** Lengths of one source, length and price; stock in tenths of a millimetre, room what parts with their kerf may fill, most without limit: Infinity. */
export type Kind = { from: Source; stock: number; room: number; pence: number; most: number }

/** Parts of one length, tenths, with their marks in order; mark undefined comes last. */
export type Part = { length: number; demand: number; marks: { mark: string | undefined; quantity: number }[] }

/** What one section asks for and may be cut from, longest first whatever the order it came in. Lengths in tenths of a millimetre. */
export type SectionWork = {
  section: string
  kerf: number
  endTrim: number
  leastOffcut: number
  parts: Part[]
  kinds: Kind[]
}

export const tenths = (mm: number): number => Math.round(mm * 10)

/** By code units, which no machine's language changes; undefined last. */
export function compareTexts(a: string | undefined, b: string | undefined): number {
  if (a === b) return 0
  if (a === undefined) return 1
  if (b === undefined) return -1
  return a < b ? -1 : 1
}

function partsOf(section: string, { parts }: BuyRequest): Part[] {
  const byLength = new Map<number, Map<string | undefined, number>>()
  for (const part of parts) {
    if (part.section !== section) continue
    const length = tenths(part.length)
    const marks = byLength.get(length) ?? new Map<string | undefined, number>()
    marks.set(part.mark, (marks.get(part.mark) ?? 0) + part.quantity)
    byLength.set(length, marks)
  }
  return [...byLength]
    .map(([length, quantities]) => {
      const marks = [...quantities].map(([mark, quantity]) => ({ mark, quantity }))
      marks.sort((a, b) => compareTexts(a.mark, b.mark))
      return { length, demand: marks.reduce((total, { quantity }) => total + quantity, 0), marks }
    })
    .sort((a, b) => b.length - a.length)
}

function kindsOf(section: string, { stock, rack = [], kerf, endTrim }: BuyRequest): Kind[] {
  const lost = tenths(endTrim) - tenths(kerf)
  const offered = [
    ...stock
      .filter((one) => one.section === section)
      .map(({ length, pence, available = Infinity }) => ({
        from: 'merchant' as const,
        stock: tenths(length),
        room: tenths(length) - lost,
        pence,
        most: available,
      })),
    ...rack
      .filter((one) => one.section === section)
      .map(({ length, pence = 0 }) => ({
        from: 'rack' as const,
        stock: tenths(length),
        room: tenths(length) + tenths(kerf),
        pence,
        most: 1,
      })),
  ]
  const known = new Map<string, Kind>()
  for (const one of offered) {
    const key = `${one.from} ${one.stock} ${one.pence}`
    const same = known.get(key)
    if (same) same.most += one.most
    else known.set(key, one)
  }
  return [...known.values()].sort(
    (a, b) => compareTexts(b.from, a.from) || b.stock - a.stock || a.pence - b.pence,
  )
}

/** A request as one task for each section that has parts, in the order of their names. */
export function sectionWorks(request: BuyRequest): SectionWork[] {
  const sections = [...new Set(request.parts.map(({ section }) => section))].sort(compareTexts)
  return sections.map((section) => ({
    section,
    kerf: tenths(request.kerf),
    endTrim: tenths(request.endTrim),
    leastOffcut: tenths(request.leastOffcut),
    parts: partsOf(section, request),
    kinds: kindsOf(section, request),
  }))
}
