import loadHighs from 'highs'
import { describe, expect, it } from 'vitest'
import { checkPlan } from '../../shared/cutting/buyingPlan/checkPlan.ts'
import { buyingPlan } from '../../shared/cutting/buyingPlan/plan.ts'
import type { BuyRequest } from '../../shared/cutting/buyingPlan/request.ts'
import { sampleSize, seed } from '../fixtures/sample.ts'
import { jobRequest } from './smallRequests.ts'

const size = sampleSize('Buying plans against HiGHS', { usual: 40, long: 500, of: 'random jobs' })

type Offer = { room: number; pence: number; most: number }

const offersOf = ({ stock, rack = [], kerf, endTrim }: BuyRequest): Offer[] => [
  ...stock.map(({ length, pence, available = Infinity }) => ({
    room: length - endTrim + kerf,
    pence,
    most: available,
  })),
  ...rack.map(({ length, pence = 0 }) => ({ room: length + kerf, pence, most: 1 })),
]

/** Every pattern to which no further wanted part can be added. */
function fullPatterns(sizes: number[], demand: number[], room: number): number[][] {
  const patterns: number[][] = []
  const choose = (part: number, left: number, counts: number[]): void => {
    if (part === sizes.length) {
      const isFull = sizes.every((size, index) => size > left || counts[index] === demand[index])
      if (isFull && counts.some((count) => count > 0)) patterns.push(counts)
      return
    }
    const size = sizes[part] as number
    for (let count = 0; count * size <= left && count <= (demand[part] as number); count += 1)
      choose(part + 1, left - count * size, [...counts, count])
  }
  choose(0, room, [])
  return patterns
}

/** The cutting problem with a whole variable for every pattern, in the LP text format. */
function modelOf(request: BuyRequest): string {
  const lengths = [...new Set(request.parts.map(({ length }) => length))]
  const sizes = lengths.map((length) => length + request.kerf)
  const demand = lengths.map((length) => request.parts.filter((part) => part.length === length).length)
  const columns = offersOf(request).flatMap((offer, index) =>
    fullPatterns(sizes, demand, offer.room).map((counts) => ({ offer: index, counts, pence: offer.pence })),
  )
  const sum = (of: (column: (typeof columns)[number]) => number) =>
    columns.flatMap((column, index) => (of(column) > 0 ? [`${of(column)} x${index}`] : [])).join(' + ')
  const parts = lengths.map(
    (_, part) => `p${part}: ${sum(({ counts }) => counts[part] as number)} >= ${demand[part]}`,
  )
  const limits = offersOf(request).flatMap(({ most }, index) => {
    const row = sum(({ offer }) => (offer === index ? 1 : 0))
    return most < Infinity && row !== '' ? [`o${index}: ${row} <= ${most}`] : []
  })
  const names = columns.map((_, index) => `x${index}`).join(' ')
  return `Minimize\n cost: ${sum(({ pence }) => pence) || '0 x0'}\nSubject To\n ${[...parts, ...limits].join('\n ')}\nGenerals\n ${names}\nEnd\n`
}

describe('a buying plan for a job', () => {
  it.each([{ rack: false }, { rack: true }])(
    'costs what HiGHS finds by all patterns, rack $rack',
    async ({ rack }) => {
      const highs = await loadHighs()
      for (let index = 0; index < size / 2; index += 1) {
        const request = jobRequest(seed + index, { rack })
        const solved = highs.solve(modelOf(request), {
          output_flag: false,
          mip_rel_gap: 0,
          mip_abs_gap: 1e-6,
        })
        const plan = buyingPlan(request)
        if (!plan.ok) throw new Error(JSON.stringify(plan.problems))
        const which = `seed ${seed + index}`
        expect([which, solved.Status]).toEqual([which, 'Optimal'])
        expect([which, plan.value.cost, plan.value.status]).toEqual([
          which,
          Math.round(solved.ObjectiveValue),
          'proven',
        ])
        expect([which, checkPlan(request, plan.value)]).toEqual([
          which,
          { faults: [], bound: plan.value.cost },
        ])
      }
    },
  )
})
