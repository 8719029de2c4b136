import { sameValue } from '../../shared/job/specPath.ts'
import { specOf } from '../../shared/gate/parseSpec.ts'
import type { GateSpec } from '../../shared/gate/spec.ts'
import { stages, type Change, type Job, type Paper } from '../../shared/job/job.ts'
import type { PaperHeader } from '../../shared/job/issuedPaper.ts'
import type { PaperFormat } from '../../shared/papers/page.ts'
import type { QuotationInput } from '../../shared/papers/quotationInput.ts'
import { requote } from '../../shared/pricing/requote.ts'
import type { StandingQuotation } from '../../shared/pricing/requests.ts'
import { bad, good, type Problem } from '../../shared/problem.ts'
import { headerOf } from './cardInput.ts'
import type { Context, Handler } from './context.ts'
import { inSlices } from './inSlices.ts'
import { foundOr, missing } from './missing.ts'
import { quoteJob, type Quote } from './quote.ts'

const changedMeanwhile: Problem = {
  code: 'changed-meanwhile',
  field: '',
  message:
    'the job or its price was changed meanwhile in another window; look it over, then issue the quotation again',
}

type Laying = { job: Job; header: PaperHeader; quote: Quote; format: PaperFormat }

const inputOf = ({ job, header, quote, format }: Laying, draft: boolean): QuotationInput => {
  const { money, settings } = quote
  return { header, business: settings.business, money, unit: job.unit, format, draft }
}

/** The quotation as it would be issued now, marked as a draft. Nothing is kept. */
export const draftQuotation: Handler<'quotations.draft'> = async (context, { jobId, format }) => {
  const { book, now, dayOf, makeQuotation } = context
  const job = book.jobs.open(jobId)
  if (!job) return bad(missing('jobId', 'job'))
  const quote = await quoteJob(context, job, dayOf(now()))
  if (!quote.ok) return quote
  const header = headerOf(context, job, { kind: 'quotation', issuedAt: null })
  const { bytes } = await makeQuotation(inputOf({ job, header, quote: quote.value, format }, true))
  return good({ base64: Buffer.from(bytes).toString('base64') })
}

const isBeforeQuoted = ({ stage }: Job): boolean => stages.indexOf(stage) < stages.indexOf('quoted')

/** Freezes a quotation and moves its job on to quoted, both or neither; undefined when job or options aren't those it was made from. */
function freeze(
  { book }: Context,
  laid: Laying,
  { bytes, pages }: { bytes: Uint8Array; pages: number },
): Paper | undefined {
  const { job, header, quote, format } = laid
  const { engine, figures, leaves, cuts, holes, checks } = quote.gate.design
  const parts = { leaves, cuts, holes, checks }
  const made = { engine, spec: quote.gate.spec, figures, parts, header, money: quote.money, pages, bytes }
  const issuedAt = header.issuedAt ?? ''
  const under = { jobId: job.id, version: job.version, revision: header.revision, format, issuedAt }
  return book.together(() => {
    if (!sameValue(book.options.list(job.id), quote.options)) return undefined
    const paper = book.papers.issue({ kind: 'quotation', ...under, ...made })
    if (paper && isBeforeQuoted(job)) book.jobs.change(job.id, [{ path: 'stage', value: 'quoted' }])
    return paper
  })
}

/**
 * Issues a quotation: prices every option at today's prices, makes the paper, and freezes all of it together. Refused when the job isn't the
 * one the window shows any more, when a gate can't be made, when a line has no price. A job that stood before it moves on to quoted.
 */
export const issueQuotation: Handler<'quotations.issue'> = async (context, { jobId, format, version }) => {
  const { book, now, dayOf, makeQuotation } = context
  const job = book.jobs.open(jobId)
  if (!job) return bad(missing('jobId', 'job'))
  if (job.version !== version) return bad(changedMeanwhile)
  const issuedAt = now()
  const quote = await quoteJob(context, job, dayOf(issuedAt))
  if (!quote.ok) return quote
  const header = headerOf(context, job, { kind: 'quotation', issuedAt })
  const laid = { job, header, quote: quote.value, format }
  const paper = freeze(context, laid, await makeQuotation(inputOf(laid, false)))
  return paper ? good(paper) : bad(changedMeanwhile)
}

export const quotationMoney: Handler<'quotations.money'> = ({ book }, { paperId }) =>
  foundOr(book.quotations.money(paperId), 'paperId', 'quotation')

const changesTo = (from: GateSpec, to: GateSpec): Change[] =>
  [...new Set([...Object.keys(from), ...Object.keys(to)])]
    .map((key) => key as keyof GateSpec)
    .filter((key) => !sameValue(from[key], to[key]))
    .map((key) => ({ path: `spec.${key}`, value: to[key] ?? null }))

/**
 * What makes the job's gate the accepted one, where it still is another of the gates that were quoted. A gate that was drawn on since (surveyed,
 * say) is left as it is: those sizes may be the better ones, and the joiner settles it.
 */
function changesToAccepted(job: Job, { money }: StandingQuotation, option: number): Change[] {
  const stands = specOf(job.entry.spec)
  const wanted = money.options[option]?.spec
  if (!stands || !wanted) return []
  return money.options.some(({ spec }) => sameValue(spec, stands)) ? changesTo(stands, wanted) : []
}

/** Puts down, once, that the customer accepted one option. Where that is another gate than the job's, unchanged since, it becomes the job's. */
export const acceptQuotation: Handler<'quotations.accept'> = ({ book }, acceptance) => {
  const { paperId, option } = acceptance
  const found = foundOr(book.quotations.money(paperId), 'paperId', 'quotation')
  if (!found.ok) return found
  const { money, paper } = found.value
  if (option >= money.options.length)
    return bad({ code: 'refused', field: 'option', message: 'this quotation has no such option' })
  const accepted = book.together(() => {
    const job = book.jobs.open(paper.jobId)
    if (!job || !book.quotations.accept(acceptance)) return false
    const changes = changesToAccepted(job, found.value, option)
    if (changes.length > 0) book.jobs.change(job.id, changes)
    return true
  })
  if (!accepted)
    return bad({ code: 'accepted-before', field: 'paperId', message: 'this quotation was accepted before' })
  return foundOr(book.quotations.money(paperId), 'paperId', 'quotation')
}

/** The quotation at today's prices, line by line beside what it was. The quotation itself stays as it is. */
export const requoteQuotation: Handler<'quotations.requote'> = async ({ book, now, dayOf }, { paperId }) => {
  const found = foundOr(book.quotations.money(paperId), 'paperId', 'quotation')
  if (!found.ok) return found
  const prices = await inSlices(book.prices.bookSteps())
  return good(requote(found.value.money, prices, dayOf(now())))
}
