import { defineStore } from 'pinia'
import { computed, ref, shallowRef } from 'vue'
import type { PaperBytes } from '../../shared/contract.ts'
import type { Paper } from '../../shared/job/job.ts'
import type { PaperFormat } from '../../shared/papers/page.ts'
import type { QuotedOption, RequotedLine } from '../../shared/pricing/quotation.ts'
import type { StandingQuotation } from '../../shared/pricing/requests.ts'
import type { Result } from '../../shared/problem.ts'
import { request, sentences } from '../api.ts'
import { today } from '../today.ts'

/** How a quotation stands: accepted, still open, or past its day. */
export type QuotationStands = 'accepted' | 'stands' | 'lapsed'

/** How a quotation stands on a day. The last day it is open is its validUntil itself. */
export function standsOn({ acceptance, money }: StandingQuotation, on: string): QuotationStands {
  if (acceptance) return 'accepted'
  return money.validUntil < on ? 'lapsed' : 'stands'
}

/** A quotation that was accepted, with the option the customer chose. */
export type Accepted = {
  quotation: StandingQuotation
  option: QuotedOption
  acceptedOn: string
  note: string
}

/** Quotations issued for the job on the board, the newest first. */
export const useQuotationsStore = defineStore('quotations', () => {
  const list = shallowRef<StandingQuotation[] | null>(null)
  const damaged = shallowRef<{ paper: Paper; message: string }[]>([])
  const trouble = ref('')
  let jobId = 0

  async function read(id: number): Promise<void> {
    if (id !== jobId) list.value = null
    jobId = id
    const papers = await request('papers.list', { jobId: id })
    if (jobId !== id) return
    trouble.value = sentences(papers)
    if (!papers.ok) return
    const quoted = papers.value.filter(({ kind }) => kind === 'quotation')
    const read = await Promise.all(
      quoted.map(async (paper) => ({
        paper,
        reply: await request('quotations.money', { paperId: paper.id }),
      })),
    )
    if (jobId !== id) return
    list.value = read
      .flatMap(({ reply }) => (reply.ok ? [reply.value] : []))
      .sort((a, b) => b.paper.id - a.paper.id)
    damaged.value = read.flatMap(({ paper, reply }) =>
      reply.ok ? [] : [{ paper, message: sentences(reply) }],
    )
  }

  /** The quotation accepted last; nothing more of the price moves after it. */
  const accepted = computed<Accepted | null>(() => {
    const all = (list.value ?? []).filter(({ acceptance }) => acceptance !== null)
    const newest = [...all].sort((a, b) =>
      (b.acceptance?.acceptedOn ?? '').localeCompare(a.acceptance?.acceptedOn ?? ''),
    )[0]
    const option = newest?.acceptance && newest.money.options[newest.acceptance.option]
    return newest?.acceptance && option
      ? {
          quotation: newest,
          option,
          acceptedOn: newest.acceptance.acceptedOn,
          note: newest.acceptance.note,
        }
      : null
  })
  const standing = (quotation: StandingQuotation): QuotationStands => standsOn(quotation, today())

  const bytes = (id: number): Promise<Result<PaperBytes>> => request('papers.bytes', { id })
  const draft = (id: number, format: PaperFormat): Promise<Result<{ base64: string }>> =>
    request('quotations.draft', { jobId: id, format })
  const requote = (paperId: number): Promise<Result<RequotedLine[]>> =>
    request('quotations.requote', { paperId })

  /** Issues a quotation of the job as it stood at a version; refused when the job has moved on since. */
  async function issue(given: {
    jobId: number
    format: PaperFormat
    version: number
  }): Promise<Result<Paper>> {
    const reply = await request('quotations.issue', given)
    if (reply.ok) await read(given.jobId)
    return reply
  }
  async function accept(given: {
    paperId: number
    option: number
    acceptedOn: string
    note: string
  }): Promise<Result<StandingQuotation>> {
    const reply = await request('quotations.accept', given)
    if (reply.ok) await read(jobId)
    return reply
  }

  return { list, damaged, trouble, accepted, read, standing, bytes, draft, requote, issue, accept }
})
