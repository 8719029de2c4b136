import { defineStore } from 'pinia'
import { ref } from 'vue'
import type { Job, JobRow, Stage } from '../../shared/job/job.ts'
import type { Takes } from '../../shared/contract.ts'
import type { Result } from '../../shared/problem.ts'
import { request, sentences } from '../api.ts'

/** The job book: what is searched for, and the lines found. */
export const useJobsStore = defineStore('jobs', () => {
  const search = ref('')
  const stage = ref<Stage | null>(null)
  const rows = ref<JobRow[] | null>(null)
  const trouble = ref('')
  const starting = ref(false)
  let asked = 0

  /** Reads the lines for the search as it stands; an answer overtaken by a later search is let go. */
  async function read(): Promise<void> {
    const mine = ++asked
    const reply = await request('jobs.list', { search: search.value.trim(), stage: stage.value })
    if (mine !== asked) return
    if (reply.ok) rows.value = reply.value.rows
    trouble.value = sentences(reply)
  }

  const create = (given: Takes<'jobs.create'>): Promise<Result<Job>> => request('jobs.create', given)
  const repeat = (id: number): Promise<Result<Job>> => request('jobs.repeat', { id })

  return { starting, search, stage, rows, trouble, read, create, repeat }
})
