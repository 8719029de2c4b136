import type { DayJob } from '../../shared/papers/dayList/dayListInput.ts'
import { dustKnown } from '../../shared/papers/sawSafety.ts'
import type { Order } from '../../shared/ordering/orderModel.ts'
import { bad, good, type Problem, type Result } from '../../shared/problem.ts'
import { makeableGate } from './cardInput.ts'
import type { Context, Handler } from './context.ts'
import { missing } from './missing.ts'

const inText = (bytes: Uint8Array): string => Buffer.from(bytes).toString('base64')

/** The jobs of a day with their gates worked out, each once; or all that keeps any from being cut. */
function dayJobs({ book }: Context, jobIds: readonly number[]): Result<DayJob[]> {
  const jobs: DayJob[] = []
  const problems: Problem[] = []
  for (const [place, id] of jobIds.entries()) {
    if (jobIds.indexOf(id) < place) continue
    const field = `jobIds[${place}]`
    const job = book.jobs.open(id)
    const gate = job ? makeableGate(job) : bad(missing(field, 'job'))
    if (job && gate.ok) {
      const { number, title, customer } = job
      jobs.push({ number, title, customer: customer.name, ...gate.value })
    } else if (!gate.ok)
      problems.push(
        ...gate.problems.map(({ code, message }) => ({
          code,
          field,
          message: job ? `${job.number}: ${message}` : message,
        })),
      )
  }
  return problems.length > 0 ? bad(...problems) : good(jobs)
}

/** What is cut today over some jobs, as they stand. Refused where one of them can't be made as entered. Nothing is kept. */
export const printDayList: Handler<'papers.dayList'> = async (context, { jobIds, format }) => {
  const jobs = dayJobs(context, jobIds)
  if (!jobs.ok) return jobs
  const { name, unit } = context.book.settings.read()
  const input = { workshop: name, day: context.now().slice(0, 10), jobs: jobs.value, unit, format }
  const { bytes } = await context.makeBenchPaper({ paper: 'day list', input })
  return good({ base64: inText(bytes) })
}

/** What is known of the timber of an order's jobs, as far as they can still be worked out. */
const dustOf = ({ book }: Context, { jobs }: Order) =>
  dustKnown(
    jobs.flatMap(({ jobId }) => {
      const job = book.jobs.open(jobId)
      const gate = job && makeableGate(job)
      return gate?.ok ? [gate.value.spec] : []
    }),
  )

/** An order as it was placed, to send and to cut by. Nothing is kept. */
export const printOrder: Handler<'papers.order'> = async (context, { orderId, format }) => {
  const { book } = context
  const order = book.orders.open(orderId)
  if (!order) return bad(missing('orderId', 'order'))
  const { name, business, unit, money } = book.settings.read()
  const input = {
    ...{ order, business, unit, format },
    workshop: name,
    rack: book.rack.list(),
    dust: dustOf(context, order),
    currency: money.currency,
  }
  const { bytes } = await context.makeBenchPaper({ paper: 'timber order', input })
  return good({ base64: inText(bytes) })
}
