import { defineStore } from 'pinia'
import { ref, shallowRef } from 'vue'
import type { EstimateRecord, WorkDone } from '../../shared/pricing/workDone.ts'
import { request, sentences } from '../api.ts'

/** What jobs really took: the entries of the job on the board, and the record over all jobs. */
export const useWorkDoneStore = defineStore('workDone', () => {
  const entries = shallowRef<WorkDone[] | null>(null)
  const record = shallowRef<EstimateRecord[] | null>(null)
  const trouble = ref('')
  let jobId = 0

  async function read(id: number): Promise<void> {
    if (id !== jobId) entries.value = null
    jobId = id
    const reply = await request('workDone.list', { jobId: id })
    if (jobId !== id) return
    if (reply.ok) entries.value = reply.value
    trouble.value = sentences(reply)
  }

  /** Adds an entry; whether the book took it. */
  async function add(entry: Omit<WorkDone, 'id'>): Promise<boolean> {
    const reply = await request('workDone.add', entry)
    trouble.value = sentences(reply)
    if (reply.ok) await read(entry.jobId)
    return reply.ok
  }

  async function remove(id: number): Promise<void> {
    const reply = await request('workDone.remove', { id })
    trouble.value = sentences(reply)
    if (reply.ok) entries.value = reply.value
  }

  async function readRecord(): Promise<void> {
    const reply = await request('workDone.record', {})
    if (reply.ok) record.value = reply.value
    trouble.value = sentences(reply)
  }

  return { entries, record, trouble, read, add, remove, readRecord }
})
