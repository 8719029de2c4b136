import { specOf } from '../../shared/gate/parseSpec.ts'
import type { Job } from '../../shared/job/job.ts'
import { sameValue } from '../../shared/job/specPath.ts'
import { parseBuyRequest } from '../../shared/cutting/buyingPlan/request.ts'
import type { JobToOrder } from '../../shared/ordering/jobTimber.ts'
import type { OrderCandidate, OrderTask } from '../../shared/ordering/orderModel.ts'
import { orderTask } from '../../shared/ordering/orderTask.ts'
import { standingBook } from '../../shared/pricing/standingBook.ts'
import { bad, good, type Problem, type Result } from '../../shared/problem.ts'
import { makeableGate, type MakeableGate } from './cardInput.ts'
import type { Context, Handler } from './context.ts'
import { inSlices } from './inSlices.ts'
import { missing } from './missing.ts'

/** Gates worked out already, by job and version: working one out takes some thousandths of a second. */
export type KnownGates = Map<string, Result<MakeableGate>>

function gateOf(job: Job, known: KnownGates): Result<MakeableGate> {
  const key = `${job.id}/${job.version}`
  const gate = known.get(key) ?? makeableGate(job)
  known.set(key, gate)
  return gate
}

/** Items put by hand when the job was priced: in the option accepted, else in its first. */
const chosenFor = ({ book }: Context, jobId: number): Record<string, number> =>
  (book.quotations.accepted(jobId) ?? book.options.list(jobId)[0])?.entry.chosen ?? {}

/**
 * A job as timber is bought for it: its gate as it stands, which its card is made of too. A gate that was accepted has become the job's own, and
 * may have been surveyed since.
 */
function jobToOrder(context: Context, { field, job }: Asked, known: KnownGates): Result<JobToOrder> {
  const { id, number, customer, title } = job
  if (job.stage === 'hung')
    return bad({ code: 'refused', field, message: `${number} is hung; nothing is ordered for it any more` })
  const gate = gateOf(job, known)
  if (!gate.ok)
    return bad(
      ...gate.problems.map(({ code, message }) => ({ code, field, message: `${number}: ${message}` })),
    )
  const { spec, design } = gate.value
  const chosen = chosenFor(context, id)
  return good({ jobId: id, number, customer: customer.name, title, spec, design, chosen })
}

type Asked = { field: string; job: Job }

function* jobsSteps(
  context: Context,
  jobIds: readonly number[],
  known: KnownGates,
): Generator<void, Result<JobToOrder[]>> {
  const jobs: JobToOrder[] = []
  const problems: Problem[] = []
  for (const [place, id] of jobIds.entries()) {
    if (jobIds.indexOf(id) < place) continue
    const field = `jobIds[${place}]`
    const job = context.book.jobs.open(id)
    const read = job ? jobToOrder(context, { field, job }, known) : bad(missing(field, 'job'))
    if (read.ok) jobs.push(read.value)
    else problems.push(...read.problems)
    yield
  }
  return problems.length > 0 ? bad(...problems) : good(jobs)
}

/** What is to be bought for some jobs today, a step at a time. Refused with all that keeps a job from it, or where it is more than one plan takes. */
export function* taskSteps(
  context: Context,
  jobIds: readonly number[],
  known: KnownGates = new Map(),
): Generator<void, Result<OrderTask>> {
  const { book, now } = context
  const jobs = yield* jobsSteps(context, jobIds, known)
  if (!jobs.ok) return jobs
  const prices = standingBook(yield* book.prices.bookSteps(), now().slice(0, 10))
  yield
  const rack = book.rack.list().filter(({ keptFor }) => keptFor === null)
  const { cutting } = book.settings.read()
  const task = orderTask({ jobs: jobs.value, book: prices, rack, cutting })
  const wanted = parseBuyRequest(task.requests.plain)
  if (wanted.ok) return good(task)
  return bad({
    code: 'too-many',
    field: 'jobIds',
    message: `that is more than one order takes; choose fewer jobs (${wanted.problems[0]?.message ?? ''})`,
  })
}

export const timberTask: Handler<'orders.task'> = (context, { jobIds }) =>
  inSlices(taskSteps(context, jobIds))

/** The first thing that keeps a job from being ordered for, and how many there are besides. */
function hindranceOf(gate: Result<MakeableGate>): string | null {
  if (gate.ok) return null
  const [first, ...others] = gate.problems
  const words = first?.message ?? 'its gate can’t be made as entered'
  return others.length === 0 ? words : `${words} (and ${others.length} more)`
}

function candidate(context: Context, job: Job): OrderCandidate {
  const { id, number, customer, title, due, stage } = job
  const accepted = context.book.quotations.accepted(id)
  const own = specOf(job.entry.spec)
  const drawnOn = accepted !== undefined && own !== undefined && !sameValue(accepted.spec, own)
  return {
    jobId: id,
    number,
    customer: customer.name,
    title,
    due,
    stage,
    accepted: accepted !== undefined,
    orderedOn: context.book.orders.standingFor(id),
    hindrance: hindranceOf(makeableGate(job)),
    sample: job.sample,
    ...(drawnOn && {
      remark: 'the gate was changed since it was accepted; timber is bought for it as it stands now',
    }),
  }
}

/** Accepted ones first, then by the day promised, those without one last, then by number. */
const before = (a: OrderCandidate, b: OrderCandidate): number =>
  Number(b.accepted) - Number(a.accepted) ||
  (a.due ?? '9').localeCompare(b.due ?? '9') ||
  a.number.localeCompare(b.number)

function* candidateSteps(context: Context): Generator<void, OrderCandidate[]> {
  const { book } = context
  const found: OrderCandidate[] = []
  for (const id of book.jobs.toOrder()) {
    const job = book.jobs.open(id)
    if (job) found.push(candidate(context, job))
    yield
  }
  return found.sort(before)
}

/** The jobs that timber may be bought for, with what stands in the way of it. */
export const orderCandidates: Handler<'orders.candidates'> = async (context) =>
  good(await inSlices(candidateSteps(context)))
