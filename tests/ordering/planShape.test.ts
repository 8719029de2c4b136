import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { checkPlan } from '../../shared/cutting/buyingPlan/checkPlan.ts'
import { buyingPlan } from '../../shared/cutting/buyingPlan/plan.ts'
import { parseShape } from '../../shared/gate/parseSpec.ts'
import { layOrder } from '../../shared/ordering/orderLayout.ts'
import { planShape } from '../../shared/ordering/planShape.ts'
import { gateWith } from '../fixtures/gates.ts'
import { sampleSize, seed } from '../fixtures/sample.ts'
import { jobOf, pricedBook, rackPiece, taskOf } from './aTask.ts'

const wanted = sampleSize('Orders laid out from their plans', { usual: 60, long: 1000, of: 'tasks' })

const someJobs = fc.array(
  fc.record({
    width: fc.integer({ min: 700, max: 1150 }),
    height: fc.integer({ min: 1500, max: 2100 }),
    run: fc.constantFrom('in-line' as const, 'each-bay' as const),
  }),
  { minLength: 1, maxLength: 4 },
)
const someRack = fc.array(
  fc.record({ itemId: fc.integer({ min: 1, max: 3 }), length: fc.integer({ min: 4500, max: 24_000 }) }),
  { maxLength: 8 },
)

describe('a plan that comes back from the window', () => {
  it('is read as it was, and laid out so that all of it is asked for or taken from the rack, once', () => {
    fc.assert(
      fc.property(someJobs, someRack, (sizes, offcuts) => {
        const jobs = sizes.map(({ width, height, run }, place) =>
          jobOf(
            place + 1,
            gateWith(
              { size: { width, height }, boards: { rip: 'both' }, ledges: { count: 3 }, braces: { run } },
              {},
            ),
          ),
        )
        const rack = offcuts.map(({ itemId, length }, place) =>
          rackPiece(place + 1, { itemId, length: length / 10 + 0.03 }),
        )
        const task = taskOf(pricedBook(), jobs, { rack })
        for (const request of [task.requests.plain, task.requests.paired]) {
          if (!request) continue
          const plan = buyingPlan(request, { mostEffort: 2e7 })
          if (!plan.ok) throw new Error(JSON.stringify(plan.problems))
          const read = parseShape(planShape, JSON.parse(JSON.stringify(plan.value)))
          expect(read).toEqual(plan)
          expect(checkPlan(request, plan.value).faults).toEqual([])
          const { lines, lengths } = layOrder(task, plan.value)
          expect(lines.reduce((sum, { count, pence }) => sum + count * pence, 0)).toBe(plan.value.cost)
          const bought = (from: string) => lengths.filter((one) => one.from === from)
          const sum = (rows: readonly { length: number; count: number }[]) =>
            rows.reduce((all, { length, count }) => all + length * count, 0)
          expect(sum(bought('merchant'))).toBe(sum(lines))
          const taken = bought('rack').flatMap(({ rackPieceIds }) => rackPieceIds)
          expect(new Set(taken).size).toBe(taken.length)
          for (const { rackPieceIds, itemId, length, count } of bought('rack')) {
            expect(rackPieceIds).toHaveLength(count)
            for (const id of rackPieceIds) {
              const piece = rack.find((one) => one.id === id)
              expect([piece?.itemId, Math.floor((piece?.length ?? 0) * 10 + 1e-6) / 10]).toEqual([
                itemId,
                length,
              ])
            }
          }
          for (const { leftFrom, cuts } of lengths) {
            const job = jobs.find(({ jobId }) => jobId === leftFrom)
            expect(cuts.at(-1)?.mark).toContain(job?.number)
          }
        }
      }),
      { seed, numRuns: wanted },
    )
  })

  it('of another task can’t be laid out', () => {
    const task = taskOf(pricedBook(), [jobOf(1)])
    const plan = buyingPlan(task.requests.plain)
    if (!plan.ok) throw new Error('no plan')
    const [first] = plan.value.lengths
    const wrong = (changed: object) => ({
      ...plan.value,
      lengths: first ? [{ ...first, ...changed }] : [],
    })
    expect(() => layOrder(task, wrong({ section: 'elm' }))).toThrow(RangeError)
    expect(() => layOrder(task, wrong({ from: 'rack' }))).toThrow(RangeError)
  })
})
