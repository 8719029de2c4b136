import type { Problem } from '../../problem.ts'
import { layOut, type Line } from './layOut.ts'
import { normalise } from './normalise.ts'
import type { BuyRequest } from './request.ts'
import { search, type Limits } from './search.ts'
import { tenths, type Kind, type SectionWork } from './sectionWork.ts'

const mm = (inTenths: number): string => String(inTenths / 10)

const pounds = (pence: number): string => `£${(pence / 100).toFixed(2)}`

const named = (mark: string | undefined): string => (mark === undefined ? '' : ` ('${mark}')`)

/** The longest part that a length of the kind can hold, tenths: one cut may meet the end, so only the end trim is lost. */
const longestIn = ({ kerf }: SectionWork, { room }: Kind): number => room - kerf

function usable(work: SectionWork): string {
  const best = work.kinds.reduce<Kind | undefined>(
    (longest, kind) => (longest && longest.room >= kind.room ? longest : kind),
    undefined,
  )
  if (!best) return 'no length of that section is offered'
  const whose = best.from === 'rack' ? 'in the rack' : "of the merchant's"
  const lost = best.from === 'rack' ? 'nothing lost to end trim' : `${mm(work.endTrim)} lost to end trim`
  return `the longest usable is ${mm(longestIn(work, best))} (a length of ${mm(best.stock)} ${whose}, ${lost}, none to the kerf since its cut meets the end)`
}

/** Every part that is longer than all that may be cut, each with the longest usable length and by how much it is too long. */
export function tooLong(work: SectionWork, request: BuyRequest): Problem[] {
  const longest = Math.max(0, ...work.kinds.map((kind) => longestIn(work, kind)))
  return request.parts.flatMap(({ section, length, mark }, index) => {
    if (section !== work.section || tenths(length) <= longest) return []
    const over = work.kinds.length > 0 ? `, ${mm(tenths(length) - longest)} too long` : ''
    return [
      {
        code: 'too-long',
        field: `parts[${index}].length`,
        message: `a part of ${length}${named(mark)} can't be cut from '${section}': ${usable(work)}${over}`,
      },
    ]
  })
}

/** What a section needs beyond what is to be had: the least money more, and whole when that is shown to be the least. */
export type Repair = { lines: Line[]; pence: number; more: { kind: Kind; count: number }[]; whole: boolean }

/** All that is to be had given away free, any number more at its price: what the cheapest plan then pays is the cheapest repair. */
export function cheapestRepair(work: SectionWork, limits: Limits): Repair | undefined {
  const more = work.kinds.filter(({ from }) => from === 'merchant')
  const extended = {
    ...work,
    kinds: [
      ...work.kinds.map((kind) => ({ ...kind, pence: 0 })),
      ...more.map((kind) => ({ ...kind, pence: Math.max(1, kind.pence), most: Infinity })),
    ],
  }
  const normalised = normalise(rawOf(extended))
  const { plan, pence, bound } = search(normalised.problem, limits)
  if (!plan) return undefined
  const counts = more.map((kind) => ({ kind, count: 0 }))
  const lines = layOut(extended, normalised, plan)
  for (const { kind, times } of lines) {
    const one = counts[kind - work.kinds.length]
    if (one) one.count += times
  }
  const needed = counts.filter(({ count }) => count > 0)
  return { lines, pence, more: needed, whole: bound >= pence }
}

/** A section as sizes and rooms with their kerf, for normalising. */
export const rawOf = ({ parts, kinds, kerf }: SectionWork) => ({
  parts: parts.map(({ length, demand }) => ({ size: length + kerf, demand })),
  stocks: kinds.map(({ room, pence, most }) => ({ room, pence, most })),
})

/** Says that limited stock doesn't suffice: what stays uncut, and what more would do. */
export function notEnough(work: SectionWork, uncut: Int32Array, repair: Repair | undefined): Problem {
  const beyond = repair?.lines.filter(({ kind }) => kind >= work.kinds.length)
  const left = work.parts.flatMap(({ length }, part) => {
    const count =
      beyond?.reduce((sum, { counts, times }) => sum + times * (counts[part] ?? 0), 0) ?? uncut[part] ?? 0
    return count > 0 ? [`${count} of ${mm(length)}`] : []
  })
  const stays = left.length > 0 ? `; uncut stay ${left.join(', ')}` : ''
  const asks = repair?.more.map(({ kind, count }) => `${count} more of ${mm(kind.stock)}`).join(' and ')
  const least = repair?.whole ? 'the cheapest way out is' : 'enough would be'
  const cost = repair?.more.reduce((sum, { kind, count }) => sum + kind.pence * count, 0) ?? 0
  const remedy = asks
    ? `; ${least} ${asks} (${pounds(cost)})`
    : '; no merchant offers a length of it, add one'
  return {
    code: 'not-enough',
    field: 'stock',
    message: `what is to be had of '${work.section}' can't hold every part${stays}${remedy}`,
  }
}
