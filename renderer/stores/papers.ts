import { defineStore } from 'pinia'
import { computed, ref } from 'vue'
import type { PaperBytes, Takes } from '../../shared/contract.ts'
import type { Difference, JobRow, Paper } from '../../shared/job/job.ts'
import type { OrderRow } from '../../shared/ordering/orderModel.ts'
import type { FullSizeKind } from '../../shared/papers/fullSize/template.ts'
import type { LabelChoice } from '../../shared/papers/labels/labelLayouts.ts'
import type { PaperFormat } from '../../shared/papers/page.ts'
import type { Problem, Result } from '../../shared/problem.ts'
import { request } from '../api.ts'
import { useSettingsStore } from './settings.ts'

/** Cards issued for the job on the board, newest first. Quotations are kept beside its price. */
export const usePapersStore = defineStore('papers', () => {
  const papers = ref<Paper[] | null>(null)
  const problems = ref<Problem[]>([])
  const settings = useSettingsStore()
  /** The paper chosen on this screen; until then the workshop's own. */
  const chosen = ref<PaperFormat | null>(null)
  const format = computed(() => chosen.value ?? settings.summary?.settings.paper ?? 'a4')
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
  const labels = (id: number, choice: LabelChoice): Promise<Result<{ base64: string }>> =>
    request('papers.sheet', { jobId: id, format: format.value, sheet: 'part labels', labels: choice })
  const fullSize = (id: number, kinds: FullSizeKind[]): Promise<Result<{ base64: string }>> =>
    request('papers.sheet', { jobId: id, format: format.value, sheet: 'full-size sheets', fullSize: kinds })
  const dayList = (jobIds: number[]): Promise<Result<{ base64: string }>> =>
    request('papers.dayList', { jobIds, format: format.value })
  const order = (orderId: number): Promise<Result<{ base64: string }>> =>
    request('papers.order', { orderId, format: format.value })

  /** Orders that stand with timber of a job on them; none where they can't be read. */
  async function ordersOf(id: number): Promise<OrderRow[]> {
    const reply = await request('orders.list', { jobId: id })
    return reply.ok ? reply.value.filter(({ state }) => state !== 'cancelled') : []
  }

  /** Other jobs that are being made, or whose timber is ordered. */
  async function onTheBench(id: number): Promise<JobRow[]> {
    const stages = ['making', 'ordered'] as const
    const replies = await Promise.all(stages.map((stage) => request('jobs.list', { search: '', stage })))
    return replies.flatMap((reply) => (reply.ok ? reply.value.rows.filter((row) => row.id !== id) : []))
  }

  const compare = (earlier: number, later: number | null): Promise<Result<Difference[]>> =>
    request('papers.compare', { earlier, later })

  const made = { labels, fullSize, dayList, order, ordersOf, onTheBench }
  return { papers, problems, chosen, format, read, issue, bytes, draft, sheet, compare, ...made }
})
