import { defineStore } from 'pinia'
import { ref } from 'vue'
import type { PaperBytes, Takes } from '../../shared/contract.ts'
import type { Difference, Paper } from '../../shared/job/job.ts'
import type { PaperFormat } from '../../shared/papers/page.ts'
import type { Problem, Result } from '../../shared/problem.ts'
import { request } from '../api.ts'

/** Cards issued for the job on the board, newest first. Quotations are kept beside its price. */
export const usePapersStore = defineStore('papers', () => {
  const papers = ref<Paper[] | null>(null)
  const problems = ref<Problem[]>([])
  let jobId = 0

  async function read(id: number): Promise<void> {
    if (id !== jobId) papers.value = null
    jobId = id
    const reply = await request('papers.list', { jobId: id })
    if (jobId !== id) return
    problems.value = reply.ok ? [] : reply.problems
    if (!reply.ok) return
    const cards = reply.value.filter(({ kind }) => kind === 'job-card')
    papers.value = cards.sort((a, b) => b.revision - a.revision)
  }

  /** Issues the card of the job as it stood at a version; refused when the job has moved on since. */
  async function issue(given: {
    jobId: number
    format: PaperFormat
    version: number
  }): Promise<Result<Paper>> {
    const reply = await request('papers.issue', given)
    if (reply.ok) await read(given.jobId)
    return reply
  }

  const bytes = (id: number): Promise<Result<PaperBytes>> => request('papers.bytes', { id })
  const draft = (id: number, format: PaperFormat): Promise<Result<{ base64: string }>> =>
    request('papers.draft', { jobId: id, format })
  const sheet = (
    id: number,
    format: PaperFormat,
    which: Takes<'papers.sheet'>['sheet'],
  ): Promise<Result<{ base64: string }>> => request('papers.sheet', { jobId: id, format, sheet: which })
  const compare = (earlier: number, later: number | null): Promise<Result<Difference[]>> =>
    request('papers.compare', { earlier, later })

  return { papers, problems, read, issue, bytes, draft, sheet, compare }
})
