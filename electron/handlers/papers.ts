import type { FrozenPaper } from '../../db/papers.ts'
import { compareCards, type ComparedCard } from '../../shared/job/compare.ts'
import { fullSizeOffers } from '../../shared/papers/fullSize/offers.ts'
import { fullSizeKinds, type FullSizeKind } from '../../shared/papers/fullSize/template.ts'
import { labelsOn, type LabelChoice } from '../../shared/papers/labels/labelLayouts.ts'
import { bad, good, type Problem, type Result } from '../../shared/problem.ts'
import { headerOf, makeableGate, type MakeableGate } from './cardInput.ts'
import type { Context, Handler } from './context.ts'
import { handoverOf } from './handover.ts'
import { foundOr, missing } from './missing.ts'

const changedMeanwhile: Problem = {
  code: 'changed-meanwhile',
  field: '',
  message: 'the job was changed meanwhile in another window; look it over, then issue the card again',
}

export const listPapers: Handler<'papers.list'> = ({ book, warm }, { jobId }) => {
  warm?.()
  return book.jobs.open(jobId) ? good(book.papers.list(jobId)) : bad(missing('jobId', 'job'))
}

/**
 * Issues the job card: works the stored gate out, makes the card, and freezes all of it together. Refused when the job isn't the one the
 * window shows any more, before or while the card is made; when a size is missing; when a check is a stop.
 */
export const issueCard: Handler<'papers.issue'> = async (context, { jobId, format, version }) => {
  const { book, now, makeCard } = context
  const job = book.jobs.open(jobId)
  if (!job) return bad(missing('jobId', 'job'))
  if (job.version !== version) return bad(changedMeanwhile)
  const gate = makeableGate(job)
  if (!gate.ok) return gate
  const { spec, design } = gate.value
  const issuedAt = now()
  const header = headerOf(context, job, { kind: 'job-card', issuedAt })
  const { bytes, pages } = await makeCard({ header, spec, design, unit: job.unit, format, draft: false })
  const { engine, figures, leaves, cuts, holes, checks } = design
  const parts = { leaves, cuts, holes, checks }
  const frozen = { jobId, version, kind: 'job-card' as const, revision: header.revision, format, issuedAt }
  const paper = book.papers.issue({ ...frozen, engine, spec, figures, parts, header, pages, bytes })
  return paper ? good(paper) : bad(changedMeanwhile)
}

const inText = (bytes: Uint8Array): string => Buffer.from(bytes).toString('base64')

/** The very bytes that were issued, their hash checked just now. */
export const readPaper: Handler<'papers.bytes'> = ({ book, shelf }, { id }) => {
  const found = foundOr(book.papers.bytes(id), 'id', 'paper')
  if (!found.ok) return found
  const { paper, bytes } = found.value
  shelf.put(bytes)
  return good({ paper, base64: inText(bytes) })
}

/** The card as it would be issued now, marked as a draft. Nothing is kept. */
export const draftCard: Handler<'papers.draft'> = async (context, { jobId, format }) => {
  const job = context.book.jobs.open(jobId)
  if (!job) return bad(missing('jobId', 'job'))
  const gate = makeableGate(job)
  if (!gate.ok) return gate
  const header = headerOf(context, job, { kind: 'job-card', issuedAt: null })
  const { bytes } = await context.makeCard({ header, ...gate.value, unit: job.unit, format, draft: true })
  return good({ base64: inText(bytes) })
}

const noSuchLabel = ({ sheet, start }: LabelChoice): Problem => ({
  code: 'refused',
  field: 'labels.start',
  message: `there is no label ${start} on that sheet; the first free one is from 1 to ${labelsOn(sheet)}`,
})

/** Every kind of full-size sheet asked for that the gate doesn't want, and why. */
const notWanted = ({ spec, design }: MakeableGate, kinds: readonly FullSizeKind[]): Problem[] =>
  fullSizeOffers(spec, design)
    .filter(({ kind, why }) => why !== '' && kinds.includes(kind))
    .map(({ name, why }) => ({ code: 'refused', field: 'fullSize', message: `${name}: ${why}` }))

/** Full-size sheets as they are printed today, on the workshop's own printer. */
const fullSizeOf = ({ book, dayOf, now }: Context, kinds: readonly FullSizeKind[] = fullSizeKinds) => ({
  fullSize: { kinds, day: dayOf(now()), printer: book.settings.read().printer },
})

/** A sheet of the gate as it stands, to be printed beside its card. Nothing is kept. */
export const printSheet: Handler<'papers.sheet'> = async (context, asked) => {
  const { jobId, format, sheet, labels } = asked
  if (labels && labels.start > labelsOn(labels.sheet)) return bad(noSuchLabel(labels))
  const job = context.book.jobs.open(jobId)
  if (!job) return bad(missing('jobId', 'job'))
  const gate = makeableGate(job)
  if (!gate.ok) return gate
  const strangers = notWanted(gate.value, asked.fullSize ?? [])
  if (strangers.length > 0) return bad(...strangers)
  const header = headerOf(context, job, { kind: 'job-card', issuedAt: null })
  const own = {
    ...(labels ? { labels } : {}),
    ...(sheet === 'full-size sheets' ? fullSizeOf(context, asked.fullSize) : {}),
    ...(sheet === 'care note' ? { handover: handoverOf(context, jobId) } : {}),
  }
  const input = { header, ...gate.value, unit: job.unit, format, draft: false, ...own }
  const { bytes } = await context.makeCard(input, sheet)
  return good({ base64: inText(bytes) })
}

/** The job as it stands, set beside a card. */
function standingCard(context: Context, jobId: number): Result<ComparedCard> {
  const job = foundOr(context.book.jobs.open(jobId), 'earlier', 'job')
  if (!job.ok) return job
  const gate = makeableGate(job.value)
  const parts = gate.ok ? gate.value.design : null
  return good({
    header: headerOf(context, job.value, { kind: 'job-card', issuedAt: null }),
    spec: job.value.entry.spec,
    parts,
  })
}

const ofSameJob = (earlier: FrozenPaper, later: FrozenPaper): boolean =>
  earlier.paper.jobId === later.paper.jobId

/** What differs between an earlier card and a later one of the same job, or the job as it stands. */
export const comparePapers: Handler<'papers.compare'> = (context, { earlier: earlierId, later: laterId }) => {
  const { book } = context
  const earlier = foundOr(book.papers.frozen(earlierId), 'earlier', 'paper')
  if (!earlier.ok) return earlier
  const { jobId } = earlier.value.paper
  const unit = book.jobs.open(jobId)?.unit ?? 'mm'
  if (laterId === null) {
    const stands = standingCard(context, jobId)
    return stands.ok ? good(compareCards(earlier.value, stands.value, unit)) : stands
  }
  const later = foundOr(book.papers.frozen(laterId), 'later', 'paper')
  if (!later.ok) return later
  if (!ofSameJob(earlier.value, later.value))
    return bad({
      code: 'refused',
      field: 'later',
      message: 'two papers of the same job can be compared, these belong to two',
    })
  return good(compareCards(earlier.value, later.value, unit))
}
