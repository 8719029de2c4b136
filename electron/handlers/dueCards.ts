import { dueSpan, endOfNextWeek } from '../../shared/job/dueSpan.ts'
import { compareCards } from '../../shared/job/compare.ts'
import type { Job, JobRow, Paper } from '../../shared/job/job.ts'
import { mostCards, type DueCard } from '../../shared/papers/dueCards.ts'
import { good, type Result } from '../../shared/problem.ts'
import { headerOf, makeableGate, type MakeableGate } from './cardInput.ts'
import type { Context, Handler } from './context.ts'
import { inSlices } from './inSlices.ts'

/** The newest card issued for a job. */
export const newestCard = ({ book }: Context, jobId: number): Paper | undefined =>
  book.papers.list(jobId).find(({ kind }) => kind === 'job-card')

/** Whether a card is of the job as it stands: nothing that shows on it differs. */
export function isCurrent(
  context: Context,
  job: Job,
  { paper, gate }: { paper: Paper; gate: MakeableGate },
): boolean {
  const frozen = context.book.papers.frozen(paper.id)
  if (!frozen || frozen.paper.engine !== gate.design.engine) return false
  const header = headerOf(context, job, { kind: 'job-card', issuedAt: null })
  return compareCards(frozen, { header, spec: job.entry.spec, parts: gate.design }, job.unit).length === 0
}

/** The first thing that keeps a card from being made, and how many there are besides. */
function hindranceOf(gate: Result<MakeableGate>): string | null {
  if (gate.ok) return null
  const [first, ...others] = gate.problems
  const words = first?.message ?? 'its gate can’t be made as entered'
  return others.length === 0 ? words : `${words} (and ${others.length} more)`
}

function dueCard(context: Context, job: Job, day: Pick<DueCard, 'due' | 'span'>): DueCard {
  const { id, number, customer, title, stage, sample } = job
  const gate = makeableGate(job)
  const paper = newestCard(context, id)
  const card = paper && {
    revision: paper.revision,
    format: paper.format,
    current: gate.ok && isCurrent(context, job, { paper, gate: gate.value }),
  }
  return {
    ...{ jobId: id, number, customer: customer.name, title, ...day, stage, sample },
    card: card ?? null,
    hindrance: hindranceOf(gate),
  }
}

function* dueSteps(context: Context, rows: readonly JobRow[], today: string): Generator<void, DueCard[]> {
  const found: DueCard[] = []
  for (const { id, due } of rows) {
    const span = due === null ? undefined : dueSpan(due, today)
    const job = span && context.book.jobs.open(id)
    if (job && due !== null) found.push(dueCard(context, job, { due, span }))
    yield
  }
  return found
}

/** Every job promised up to the end of next week that isn't hung, with how its card stands; the earliest first, as many as are printed together. */
export const listDueCards: Handler<'papers.due'> = async (context) => {
  const today = context.dayOf(context.now())
  const rows = context.book.jobs.due(endOfNextWeek(today), mostCards + 1)
  const cards = await inSlices(dueSteps(context, rows.slice(0, mostCards), today))
  return good({ today, cards, more: rows.length > mostCards })
}
