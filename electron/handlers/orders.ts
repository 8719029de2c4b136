import { atOnce } from '../../db/prices.ts'
import type { OrderedJob } from '../../db/orders.ts'
import type { Takes } from '../../shared/contract.ts'
import { checkSteps } from '../../shared/cutting/buyingPlan/checkPlan.ts'
import type { BuyingPlan } from '../../shared/cutting/buyingPlan/planModel.ts'
import type { BuyRequest } from '../../shared/cutting/buyingPlan/request.ts'
import { parseShape } from '../../shared/gate/parseSpec.ts'
import { stages, type Job } from '../../shared/job/job.ts'
import { layOrder } from '../../shared/ordering/orderLayout.ts'
import type { Order, OrderTask } from '../../shared/ordering/orderModel.ts'
import { cancelProblems, cutProblems, receiveProblems } from '../../shared/ordering/orderRules.ts'
import { planShape } from '../../shared/ordering/planShape.ts'
import { bad, good, type Problem, type Result } from '../../shared/problem.ts'
import type { Context, Handler } from './context.ts'
import { inSlices } from './inSlices.ts'
import { foundOr, missing } from './missing.ts'
import { taskSteps, type KnownGates } from './timberTask.ts'

/** As many faults of a plan as are told. */
const mostFaults = 5

type Placing = Takes<'orders.place'>

const changedMeanwhile: Problem = {
  code: 'changed-meanwhile',
  field: 'stamp',
  message: 'prices, the rack or a job were changed meanwhile; work the order out again, then place it',
}

const unsound = (fault: string): Problem => ({
  code: 'unsound',
  field: 'plan',
  message: `this plan doesn’t hold (${fault}); work the order out again, then place it`,
})

/** A plan as it came, read strictly. */
function readPlan(plan: unknown): Result<BuyingPlan> {
  const read = parseShape(planShape, plan)
  if (read.ok) return read
  return bad(...read.problems.slice(0, mostFaults).map((one) => ({ ...one, field: `plan.${one.field}` })))
}

/** Every fault that the checker of plans finds, a piece at a time. A proof that makes no sense at all stops it, and is a fault too. */
async function faultsOf(request: BuyRequest, plan: BuyingPlan): Promise<string[]> {
  try {
    return (await inSlices(checkSteps(request, plan))).faults
  } catch (error) {
    if (!(error instanceof RangeError || error instanceof TypeError)) throw error
    return [`its proof can’t be followed: ${error.message}`]
  }
}

type Sound = { plan: BuyingPlan; request: BuyRequest }

/** The plan with the request that it is for, once it is known to hold. */
async function soundPlan(
  task: OrderTask,
  { stamp, paired }: Placing,
  plan: BuyingPlan,
): Promise<Result<Sound>> {
  if (task.stamp !== stamp) return bad(changedMeanwhile)
  const request = paired ? task.requests.paired : task.requests.plain
  if (!request)
    return bad({ code: 'refused', field: 'paired', message: 'no braces of these jobs share a cut' })
  if (request.parts.length === 0)
    return bad({ code: 'refused', field: 'jobIds', message: 'there is nothing to order for these jobs' })
  const faults = await faultsOf(request, plan)
  return faults.length > 0 ? bad(...faults.slice(0, mostFaults).map(unsound)) : good({ plan, request })
}

/** Why these jobs can't stand on a new order together. */
function jobProblems({ book }: Context, jobs: readonly Job[]): Problem[] {
  const problems = jobs.flatMap(({ id, number }) => {
    const on = book.orders.standingFor(id)
    if (on === null) return []
    const message = `the timber of ${number} is on order ${on} already; leave it out, or cancel that order first`
    return [{ code: 'ordered-before', field: 'jobIds', message }]
  })
  if (new Set(jobs.map(({ sample }) => sample)).size < 2) return problems
  const message = 'jobs of the sample can’t be ordered for together with your own; leave either out'
  return [...problems, { code: 'refused', field: 'jobIds', message }]
}

function moveTo({ book }: Context, jobId: number, stage: Job['stage']): void {
  const moved = book.jobs.change(jobId, [{ path: 'stage', value: stage }])
  if (!moved?.ok) throw new Error(`job ${jobId} can’t be moved to ${stage}: ${JSON.stringify(moved)}`)
}

/** Moves jobs that stand before it on to ordered; never one back. */
function markOrdered(context: Context, jobs: readonly Job[]): OrderedJob[] {
  const ordered = stages.indexOf('ordered')
  return jobs.map(({ id, stage }) => {
    if (stages.indexOf(stage) >= ordered) return { jobId: id, stageBefore: null }
    moveTo(context, id, 'ordered')
    return { jobId: id, stageBefore: stage }
  })
}

type Written = { task: OrderTask; sound: Sound; asked: Placing }

function writeOrder(context: Context, jobs: readonly Job[], { task, sound, asked }: Written): Order {
  const { lines, lengths } = layOrder(task, sound.plan)
  return context.book.orders.place({
    jobs: markOrdered(context, jobs),
    placedOn: context.now().slice(0, 10),
    note: asked.note.trim(),
    pairs: asked.paired ? task.pairs : [],
    ...sound,
    ...{ lines, lengths, sample: jobs.some(({ sample }) => sample) },
  })
}

/**
 * Places an order, all of it or nothing. The plan comes from the window, so it is read strictly and checked by the independent checker against a
 * task worked out anew; refused when the book has moved since, when a job is on another order, when anything in the plan doesn't hold.
 */
export const placeOrder: Handler<'orders.place'> = async (context, asked) => {
  const plan = readPlan(asked.plan)
  if (!plan.ok) return plan
  const known: KnownGates = new Map()
  const task = await inSlices(taskSteps(context, asked.jobIds, known))
  if (!task.ok) return task
  const sound = await soundPlan(task.value, asked, plan.value)
  if (!sound.ok) return sound
  const { book } = context
  // Other requests came in between: what is written rests on a task that is worked out once more within the writing.
  return book.together(() => {
    const now = atOnce(taskSteps(context, asked.jobIds, known))
    if (!now.ok) return now
    if (now.value.stamp !== asked.stamp) return bad(changedMeanwhile)
    const jobs = now.value.jobs.flatMap(({ jobId }) => book.jobs.open(jobId) ?? [])
    const problems = jobProblems(context, jobs)
    if (problems.length > 0) return bad(...problems)
    return good(writeOrder(context, jobs, { task: now.value, sound: sound.value, asked }))
  })
}

export const listOrders: Handler<'orders.list'> = async ({ book }, { jobId }) =>
  good(jobId === undefined ? await inSlices(book.orders.listSteps()) : book.orders.ofJob(jobId))

export const openOrder: Handler<'orders.open'> = ({ book }, { id }) =>
  foundOr(book.orders.open(id), 'id', 'order')

/** Does something with an order that stands, all or nothing, and gives it as it is then. */
function withOrder(
  { book }: Context,
  id: number,
  { problems, write }: { problems: (order: Order) => Problem[]; write: (order: Order) => void },
): Result<Order> {
  return book.together(() => {
    const order = book.orders.open(id)
    if (!order) return bad(missing('id', 'order'))
    const found = problems(order)
    if (found.length > 0) return bad(...found)
    write(order)
    return foundOr(book.orders.open(id), 'id', 'order')
  })
}

/** Books in what came, up to what is still to come. */
export const receiveOrder: Handler<'orders.receive'> = (context, { id, lines, receivedOn }) =>
  withOrder(context, id, {
    problems: (order) => receiveProblems(order, lines),
    write: () => {
      for (const { lineId, count } of lines) context.book.orders.receive(lineId, count, receivedOn)
    },
  })

/** Takes the pieces that were cut off the rack and puts the offcuts on it. */
function bookCut({ book }: Context, order: Order, cut: Takes<'orders.cut'>): void {
  const { lengthId, count, offcuts, cutOn } = cut
  const length = order.lengths.find(({ id }) => id === lengthId)
  if (!length) throw new RangeError(`order ${order.number} has no length ${lengthId}`)
  const jobId = book.orders.leftFrom(lengthId)
  const jobNumber = order.jobs.find((job) => job.jobId === jobId)?.number ?? null
  const { number, sample } = order
  const there = length.rackPieceIds.filter((id) => book.rack.one(id)?.keptFor === number)
  for (const id of there.slice(0, count))
    book.rack.take(id, { why: 'cut up', on: cutOn, orderNumber: number, jobNumber })
  book.orders.cut(lengthId, count, cutOn)
  const { itemId } = length
  for (const offcut of offcuts)
    book.rack.add(
      { itemId, length: offcut.length, place: offcut.place.trim(), jobId, note: '', addedOn: cutOn, sample },
      number,
    )
}

/** Puts down that lengths were cut: the rack's pieces go, the offcuts worth keeping come. */
export const cutOrder: Handler<'orders.cut'> = (context, cut) =>
  withOrder(context, cut.id, {
    problems: (order) => cutProblems(order, cut),
    write: (order) => bookCut(context, order, cut),
  })

/** Cancels an order nothing has come of: its pieces of the rack are free, the jobs it moved on stand where they stood. */
export const cancelOrder: Handler<'orders.cancel'> = (context, { id }) =>
  withOrder(context, id, {
    problems: cancelProblems,
    write: () => {
      for (const { jobId, stageBefore } of context.book.orders.cancel(id) ?? [])
        if (stageBefore !== null && context.book.jobs.open(jobId)?.stage === 'ordered')
          moveTo(context, jobId, stageBefore)
    },
  })
