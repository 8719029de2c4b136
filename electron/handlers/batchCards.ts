import type { NewPaper } from '../../db/papers.ts'
import type { Job, Paper } from '../../shared/job/job.ts'
import { bad, good, type Problem, type Result } from '../../shared/problem.ts'
import type { CardInHand, Shelved } from '../printing/shelf.ts'
import { headerOf, makeableGate, type MakeableGate } from './cardInput.ts'
import type { Context, Handler } from './context.ts'
import { isCurrent, newestCard } from './dueCards.ts'
import { inSlices } from './inSlices.ts'
import { missing } from './missing.ts'

const putAway: Problem = {
  code: 'not-found',
  field: 'cards',
  message: 'the cards made have been put away meanwhile; make them again',
}

/** A card of a job as it stands, in hand: on the shelf, and not issued by being there. */
async function madeCard(
  context: Context,
  { job, gate }: { job: Job; gate: MakeableGate },
  { format, issue }: { format: Paper['format']; issue: boolean },
) {
  const issuedAt = issue ? context.now() : null
  const header = headerOf(context, job, { kind: 'job-card', issuedAt })
  const input = { header, ...gate, unit: job.unit, format, draft: !issue }
  const { bytes, pages } = await context.makeCard(input)
  const { revision } = header
  const card =
    issuedAt === null ? undefined : { jobId: job.id, version: job.version, revision, format, issuedAt, pages }
  return { sha256: context.shelf.put(bytes, card).sha256, pages, revision }
}

/**
 * One card of a batch, put by to be gathered with the others: the very bytes issued before where the job hasn't changed since; otherwise one made
 * to be issued with the rest, or a draft. Nothing is kept in the book by it.
 */
export const makeDueCard: Handler<'papers.dueCard'> = async (context, { jobId, format, issue }) => {
  const job = context.book.jobs.open(jobId)
  if (!job) return bad(missing('jobId', 'job'))
  const gate = makeableGate(job)
  if (!gate.ok) return gate
  const paper = newestCard(context, jobId)
  if (paper && isCurrent(context, job, { paper, gate: gate.value })) {
    const { bytes } = context.book.papers.bytes(paper.id) ?? {}
    if (!bytes) return bad(missing('jobId', 'card'))
    const { sha256 } = context.shelf.put(bytes)
    return good({ sha256, pages: paper.pages, made: 'issued before', revision: paper.revision })
  }
  const card = await madeCard(context, { job, gate: gate.value }, { format, issue })
  return good({ ...card, made: issue ? 'to be issued' : 'draft' })
}

function shelvedCards({ shelf }: Context, marks: readonly string[]): Result<Shelved[]> {
  const found = marks.flatMap((mark) => shelf.find(mark) ?? [])
  return found.length === marks.length ? good(found) : bad(putAway)
}

/** The cards of a batch as one paper, their very pages one after the other. Nothing is issued by it. */
export const gatherCards: Handler<'papers.gather'> = async (context, { cards }) => {
  const found = shelvedCards(context, cards)
  if (!found.ok) return found
  const { gatherPages } = await import('../paint/gatherPages.ts')
  const gathered = await gatherPages(found.value, { title: 'Job cards', copies: 1 })
  if (!gathered) return bad(putAway)
  const { sha256 } = context.shelf.put(gathered.bytes)
  return good({ base64: Buffer.from(gathered.bytes).toString('base64'), sha256, pages: gathered.pages })
}

const changed = (number: string): Problem => ({
  code: 'changed-meanwhile',
  field: 'cards',
  message: `${number} was changed meanwhile; none of the cards was issued, make them again`,
})

/** What is frozen with a card in hand: its gate worked out anew from the job, which must still stand at the same version. */
function paperToIssue(
  context: Context,
  { card, bytes }: { card: CardInHand; bytes: Uint8Array },
): Result<NewPaper> {
  const job = context.book.jobs.open(card.jobId)
  if (!job) return bad(missing('cards', 'job'))
  const gate = makeableGate(job)
  if (job.version !== card.version || !gate.ok) return bad(changed(job.number))
  const { spec, design } = gate.value
  const { engine, figures, leaves, cuts, holes, checks } = design
  const header = headerOf(context, job, { kind: 'job-card', issuedAt: card.issuedAt })
  const parts = { leaves, cuts, holes, checks }
  return good({ ...card, kind: 'job-card', engine, spec, figures, parts, header, bytes })
}

function* papersSteps(context: Context, cards: readonly Shelved[]): Generator<void, Result<NewPaper[]>> {
  const papers: NewPaper[] = []
  for (const { card, bytes } of cards) {
    if (!card) continue
    const paper = paperToIssue(context, { card, bytes })
    if (!paper.ok) return paper
    papers.push(paper.value)
    yield
  }
  return good(papers)
}

/** Thrown inside the one writing of a batch, so that nothing of it stays. */
class NotIssued extends Error {
  readonly number: string
  constructor(number: string) {
    super(`${number} was changed meanwhile`)
    this.number = number
  }
}

/** Issues the cards made to be issued, all in one writing: all of them, or where a job was changed meanwhile none. */
export const issueCards: Handler<'papers.issueTogether'> = async (context, { cards }) => {
  const found = shelvedCards(context, cards)
  if (!found.ok) return found
  const papers = await inSlices(papersSteps(context, found.value))
  if (!papers.ok) return papers
  try {
    return good(
      context.book.together(() =>
        papers.value.map((paper) => {
          const issued = context.book.papers.issue(paper)
          if (!issued) throw new NotIssued(paper.header.number)
          return issued
        }),
      ),
    )
  } catch (error) {
    if (error instanceof NotIssued) return bad(changed(error.number))
    throw error
  }
}
