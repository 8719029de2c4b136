import { defineStore } from 'pinia'
import { ref, shallowRef } from 'vue'
import type { Happening, HappeningKind } from '../../shared/happened/happening.ts'
import { request, sentences } from '../api.ts'

/** What happened when on the job on the board, the newest first. */
export const useHappenedStore = defineStore('happened', () => {
  const lines = shallowRef<Happening[] | null>(null)
  const earlier = ref(0)
  const kind = ref<HappeningKind | null>(null)
  const trouble = ref('')
  const asked = { jobId: 0 }

  /** Reads the newest lines. True where they are others than before: something was done to the job, here or in another window. */
  async function read(jobId: number): Promise<boolean> {
    if (jobId !== asked.jobId) lines.value = null
    asked.jobId = jobId
    const wanted = kind.value
    const reply = await request('happened.list', { jobId, kind: wanted, before: null })
    if (asked.jobId !== jobId || kind.value !== wanted) return false
    trouble.value = sentences(reply)
    if (!reply.ok) return false
    const newest = JSON.stringify(reply.value.lines)
    if (newest === JSON.stringify(lines.value?.slice(0, reply.value.lines.length))) return false
    lines.value = reply.value.lines
    earlier.value = reply.value.earlier
    return true
  }

  async function readEarlier(): Promise<void> {
    const { jobId } = asked
    const wanted = kind.value
    const reply = await request('happened.list', { jobId, kind: wanted, before: earlier.value })
    if (asked.jobId !== jobId || kind.value !== wanted) return
    trouble.value = sentences(reply)
    if (!reply.ok) return
    lines.value = [...(lines.value ?? []), ...reply.value.lines]
    earlier.value = reply.value.earlier
  }

  async function show(only: HappeningKind | null): Promise<void> {
    kind.value = only
    lines.value = null
    await read(asked.jobId)
  }

  return { lines, earlier, kind, trouble, read, readEarlier, show }
})
