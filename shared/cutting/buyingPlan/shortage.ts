import type { Problem } from '../../problem.ts'
import { layOut, type Line } from './layOut.ts'
import { normalise } from './normalise.ts'
import type { BuyRequest } from './request.ts'
import type { Limits } from './cases.ts'
import { search } from './search.ts'
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
  const whose = best.from === 'rack' ? 'in the rack' : 'of the merchant’s'
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
        message: `a part of ${length}${named(mark)} can’t be cut from '${section}': ${usable(work)}${over}`,
      },
    ]
  })
}

/** A section as sizes and rooms with their kerf, for normalising. */
export const rawOf = ({ parts, kinds, kerf }: SectionWork) => ({
  parts: parts.map(({ length, demand }) => ({ size: length + kerf, demand })),
  stocks: kinds.map(({ room, pence, most }) => ({ room, pence, most })),
})

/**
 * What a section needs beyond what is to be had. lines: a plan with it; more: lengths to be had besides; uncut: how many of each part are cut
 * from those, or from nothing on offer; pence: what it costs beyond; certain: there is no way without; least: nor a cheaper one with.
 */
export type Repair = {
  lines: Line[]
  more: { kind: Kind; count: number }[]
  beyondAll: boolean
  uncut: number[]
  pence: number
  certain: boolean
  least: boolean
}

/** A length that nobody offers, dear enough to be the last resort, so that parts too long for the merchant don't stop the search. */
function lastResort({ parts, kinds, kerf }: SectionWork): Kind {
  const pieces = parts.reduce((sum, { demand }) => sum + demand, 0)
  const dearest = Math.max(1, ...kinds.map(({ pence }) => pence))
  const pence = Math.min(dearest * pieces + 1, Math.ceil(400_000_000 / pieces))
  const longest = parts[0]?.length ?? 0
  return { from: 'merchant', stock: longest, room: longest + kerf, pence, most: Infinity }
}

/** All that is to be had given away free, any number more at its price: what the cheapest plan then pays is the cheapest repair. */
export function cheapestRepair(work: SectionWork, limits: Limits): Repair {
  const ours = work.kinds.length
  const more = work.kinds.filter(({ from }) => from === 'merchant')
  const priced = more.map((kind) => ({ ...kind, pence: Math.max(1, kind.pence), most: Infinity }))
  const kinds = [...work.kinds.map((kind) => ({ ...kind, pence: 0 })), ...priced, lastResort(work)]
  const normalised = normalise(rawOf({ ...work, kinds }))
  const { plan, pence, bound } = search(normalised.problem, limits)
  if (!plan) throw new Error('the last resort holds every part')
  const lines = layOut({ ...work, kinds }, normalised, plan)
  const beyond = lines.filter(({ kind }) => kind >= ours)
  const taken = (which: number) =>
    beyond.reduce((sum, { kind, times }) => sum + (kind === which ? times : 0), 0)
  const counts = more.map((kind, index) => ({ kind, count: taken(ours + index) }))
  return {
    lines,
    more: counts.filter(({ count }) => count > 0),
    beyondAll: taken(kinds.length - 1) > 0,
    uncut: work.parts.map((_, part) =>
      beyond.reduce((sum, { counts: cut, times }) => sum + times * (cut[part] as number), 0),
    ),
    pence,
    certain: bound > 0,
    least: bound >= pence,
  }
}

function remedyOf({ more, beyondAll, least }: Repair): string {
  if (beyondAll) return 'no merchant offers a length that holds them, add one'
  const asks = more.map(({ kind, count }) => `${count} more of ${mm(kind.stock)}`).join(' and ')
  const cost = more.reduce((sum, { kind, count }) => sum + kind.pence * count, 0)
  return `${least ? 'the cheapest way out is' : 'enough would be'} ${asks} (${pounds(cost)})`
}

/** Says that limited stock doesn't suffice, or that no way was found in time: what stays uncut, and what more would do. */
export function notEnough(work: SectionWork, repair: Repair): Problem {
  const left = work.parts.flatMap(({ length }, part) => {
    const count = repair.uncut[part] as number
    return count > 0 ? [`${count} of ${mm(length)}`] : []
  })
  const begin = repair.certain
    ? `what is to be had of '${work.section}' can’t hold every part`
    : `no way was found in the time given to cut every part from what is to be had of '${work.section}'`
  return {
    code: repair.certain ? 'not-enough' : 'not-found',
    field: 'stock',
    message: `${begin}; uncut stay ${left.join(', ')}; ${remedyOf(repair)}`,
  }
}
