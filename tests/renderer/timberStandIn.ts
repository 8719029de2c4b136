import type { BuyingPlan } from '../../shared/cutting/buyingPlan/planModel.ts'
import { layOrder } from '../../shared/ordering/orderLayout.ts'
import type { Order, OrderCandidate, OrderTask } from '../../shared/ordering/orderModel.ts'
import { bad, good } from '../../shared/problem.ts'
import { oneLengthSteps } from '../../shared/ordering/oneLength.ts'
import { planSteps } from '../../shared/ordering/planSteps.ts'
import type { PlanAsk, PlanTold } from '../../renderer/timber/planWork.ts'
import { hardRequest } from '../ordering/hardRequest.ts'
import { gateWith } from '../fixtures/gates.ts'
import { jobOf, pricedBook, rackPiece, taskOf } from '../ordering/aTask.ts'

const twoBraces = gateWith({ ledges: { count: 3 }, braces: { run: 'each-bay' } }, {})

/** What one job takes whose gate has two braces, with two pieces of its boards on the rack. */
export const task = (): OrderTask =>
  taskOf(pricedBook(), [jobOf(7, twoBraces)], { rack: [rackPiece(31), rackPiece(32, { length: 640 })] })

/** An order as the book gives it once it is placed. */
export function orderOf(wanted: OrderTask, plan: BuyingPlan, paired: boolean): Order {
  const { lines, lengths } = layOrder(wanted, plan)
  const section = (itemId: number) => {
    const found = wanted.sections.find((one) => one.itemId === itemId)
    return { name: found?.name ?? '', species: found?.species ?? '' }
  }
  return {
    ...{ id: 1, number: '2026-T01', placedOn: '2026-06-15', state: 'placed', suppliers: [], cost: plan.cost },
    ...{ sample: false, note: '', plan, request: wanted.requests.plain, pairs: paired ? wanted.pairs : [] },
    jobs: wanted.jobs.map(({ jobId, number, customer }) => ({ jobId, number, customer })),
    lines: lines.map((line, place) => ({
      ...line,
      ...{ id: place + 1, ...section(line.itemId), supplier: 'Alder Yard', received: 0 },
    })),
    lengths: lengths.map((length, place) => ({
      ...length,
      id: place + 1,
      done: 0,
      ...section(length.itemId),
    })),
  }
}

const candidates = (orderedOn: string | null): OrderCandidate[] => [
  {
    ...{ jobId: 7, number: '2026-007', customer: 'Peg Sash', title: 'Side gate', due: null, stage: 'quoted' },
    ...{ accepted: true, orderedOn, hindrance: null, sample: false },
  },
  {
    ...{ jobId: 8, number: '2026-008', customer: 'Ash Twybill', title: '', due: null, stage: 'enquiry' },
    ...{ accepted: false, orderedOn: null, hindrance: 'the height of the leaf is missing; type it in first' },
    sample: false,
  },
  {
    ...{ jobId: 9, number: 'S-009', customer: 'Wynn Dowel', title: '', due: null, stage: 'surveyed' },
    ...{ accepted: false, orderedOn: null, hindrance: null, sample: true },
  },
]

type Placed = { jobIds: number[]; stamp: string; paired: boolean; plan: BuyingPlan; note: string }

/** A carrier with one job to order for. moved: somebody changed prices meanwhile; hard: its timber takes long to plan. */
export function orderingCarrier({ hard = false } = {}) {
  const placed: Placed[] = []
  const self: { placed: Placed[]; moved: boolean; orderedOn: string | null } = {
    ...{ placed, moved: false, orderedOn: null },
  }
  const wanted = hard ? { ...task(), requests: { plain: hardRequest(24, 7), paired: null } } : task()
  const answers = {
    'orders.candidates': async () => good(candidates(self.orderedOn)),
    'orders.task': async () => good(wanted),
    'orders.place': async (given: Placed) => {
      const message = 'prices, the rack or a job were changed meanwhile'
      if (self.moved) return bad({ code: 'changed-meanwhile', field: 'stamp', message })
      placed.push(given)
      return good(orderOf(wanted, given.plan, given.paired))
    },
  }
  Object.defineProperty(window, 'bracework', { value: answers, configurable: true })
  return self
}

/** Runs planners in the test's own thread, a step at a time, in place of the browser's workers. Gives what takes them away again. */
export function planner(): () => void {
  const before = globalThis.Worker
  const at = { work: true }
  class Planner extends EventTarget {
    private ended = false
    terminate() {
      this.ended = true
    }
    postMessage(asked: PlanAsk) {
      const ask = structuredClone(asked)
      const until = performance.now() + ask.limitMs
      // In the one thread a step must end before a press can be heard, so each is cut short.
      let pause = performance.now() + 40
      const stop = () => performance.now() > until || performance.now() > pause
      const steps = ask.ask === 'plan' ? planSteps(ask.requests, stop) : oneLengthSteps(ask.request, stop)
      const tell = (told: PlanTold) => this.dispatchEvent(new MessageEvent('message', { data: told }))
      const next = () => {
        // A test that is over has no use for what its planners would still find.
        if (this.ended || !at.work) return
        pause = performance.now() + 40
        const step = steps.next()
        if (step.done) return void tell({ told: 'done', timedOut: false })
        tell('told' in step.value ? step.value : { told: 'one length', section: step.value })
        setTimeout(next, 0)
      }
      setTimeout(next, 0)
    }
  }
  Object.defineProperty(globalThis, 'Worker', { value: Planner, configurable: true, writable: true })
  return () => {
    at.work = false
    Object.defineProperty(globalThis, 'Worker', { value: before, configurable: true, writable: true })
  }
}

/** Waits until something holds, for up to ten seconds. */
export async function settled(holds: () => boolean): Promise<void> {
  for (const until = performance.now() + 10_000; performance.now() < until;) {
    if (holds()) return
    await new Promise((resolve) => setTimeout(resolve, 10))
  }
  throw new Error('it never came to hold')
}
