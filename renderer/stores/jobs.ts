import { defineStore } from 'pinia'
import { computed, ref, shallowRef } from 'vue'
import type { FoundPiece, JobQuestion } from '../../shared/job/found.ts'
import type { Job, JobRow } from '../../shared/job/job.ts'
import { soughtWords } from '../../shared/job/soughtWords.ts'
import type { Takes } from '../../shared/contract.ts'
import type { Result } from '../../shared/problem.ts'
import { request, sentences } from '../api.ts'

/** What the jobs of the list must be, beside the words looked for. customer: the name of the one whose jobs they are. */
export type JobsWanted = Omit<JobQuestion, 'search'> & { customer?: string }

const everything: JobsWanted = { stage: null }

/** The list of every job: what is looked for, and the lines found. */
export const useJobsStore = defineStore('jobs', () => {
  const search = ref('')
  const wanted = ref<JobsWanted>(everything)
  const rows = shallowRef<JobRow[] | null>(null)
  /** The words that the lines shown were found by: they may be a key behind what is typed. */
  const foundBy = ref<string[]>([])
  const limited = ref(false)
  const pieces = shallowRef<ReadonlyMap<number, FoundPiece>>(new Map())
  /** Every year a job can have been begun in, the latest first. */
  const years = ref<number[]>([])
  const trouble = ref('')
  const starting = ref(false)
  let asked = 0

  const filtered = computed(() =>
    Object.entries(wanted.value).some(
      ([key, value]) => key !== 'customer' && value !== null && value !== undefined,
    ),
  )

  /** Reads the lines for the search as it stands; an answer overtaken by a later search is let go. */
  async function read(): Promise<void> {
    const mine = ++asked
    const words = search.value.trim()
    const { customer: _named, ...question } = wanted.value
    const reply = await request('jobs.list', { search: words, ...question })
    if (mine !== asked) return
    if (reply.ok) {
      rows.value = reply.value.rows
      limited.value = reply.value.limited ?? false
      foundBy.value = words === '' ? [] : soughtWords(words)
      pieces.value = new Map()
    }
    trouble.value = sentences(reply)
  }
  /** Looks where the words stand that some lines don't show. What comes for lines that have gone is let go. */
  async function readPieces(unseen: Takes<'jobs.pieces'>['rows']): Promise<void> {
    const mine = asked
    const reply = await request('jobs.pieces', { rows: unseen })
    if (mine !== asked || !reply.ok) return
    pieces.value = new Map([...pieces.value, ...reply.value.map((piece) => [piece.id, piece] as const)])
  }
  async function readYears(): Promise<void> {
    const reply = await request('jobs.years', {})
    if (reply.ok) years.value = reply.value
  }
  const want = (some: Partial<JobsWanted>) => (wanted.value = { ...wanted.value, ...some })
  const wantAll = () => (wanted.value = everything)
  /** Every job, or those of one kind only, whatever was looked for before. */
  function start(with_: Partial<JobsWanted> = {}) {
    search.value = ''
    wanted.value = { ...everything, ...with_ }
  }

  const create = (given: Takes<'jobs.create'>): Promise<Result<Job>> => request('jobs.create', given)
  const repeat = (id: number): Promise<Result<Job>> => request('jobs.repeat', { id })

  return {
    ...{ starting, search, wanted, filtered, rows, foundBy, limited, pieces, years, trouble },
    ...{ read, readPieces, readYears, want, wantAll, start, create, repeat },
  }
})
