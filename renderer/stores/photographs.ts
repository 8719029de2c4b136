import { defineStore } from 'pinia'
import { ref, shallowRef } from 'vue'
import type { ShownPhotograph } from '../../shared/notes/photograph.ts'
import { request, sentences } from '../api.ts'
import { scaleDown } from '../notes/askPictures.ts'

/** How far the adding of several photographs is. */
export type Adding = { done: number; of: number }

/** A file that didn't come in, in a whole sentence. */
export type NotAdded = { name: string; why: string }

/** The photographs of the job on the board, in the order they were added. */
export const usePhotographsStore = defineStore('photographs', () => {
  const photographs = shallowRef<ShownPhotograph[] | null>(null)
  const trouble = ref('')
  const adding = ref<Adding | null>(null)
  const notAdded = ref<NotAdded[]>([])
  const takenAway = shallowRef<ShownPhotograph | null>(null)
  const asked = { jobId: 0, stopped: false }

  async function read(jobId: number): Promise<void> {
    if (jobId !== asked.jobId) {
      photographs.value = null
      takenAway.value = null
      notAdded.value = []
    }
    asked.jobId = jobId
    const reply = await request('photographs.list', { jobId })
    if (asked.jobId !== jobId) return
    trouble.value = sentences(reply)
    if (!reply.ok) return
    photographs.value = reply.value
    // It may have been put back by another way.
    if (reply.value.some(({ id }) => id === takenAway.value?.id)) takenAway.value = null
  }

  async function addOne(jobId: number, file: File): Promise<void> {
    const scaled = await scaleDown(file)
    if (!scaled.ok) {
      notAdded.value = [...notAdded.value, { name: file.name, why: sentences(scaled) }]
      return
    }
    if (asked.stopped) return
    const reply = await request('photographs.add', { jobId, words: '', ...scaled.value })
    if (!reply.ok) notAdded.value = [...notAdded.value, { name: file.name, why: sentences(reply) }]
    else if (asked.jobId === jobId) photographs.value = [...(photographs.value ?? []), reply.value]
  }

  /** Adds files one after the other, each scaled down first; those that can't be taken are told by name. */
  async function add(jobId: number, files: readonly File[]): Promise<void> {
    if (files.length === 0 || adding.value) return
    notAdded.value = []
    asked.stopped = false
    adding.value = { done: 0, of: files.length }
    for (const [done, file] of files.entries()) {
      if (asked.stopped) break
      adding.value = { done, of: files.length }
      await addOne(jobId, file)
    }
    adding.value = null
  }
  /** What was added before stays. */
  const stop = () => (asked.stopped = true)

  async function describe(id: number, words: string): Promise<boolean> {
    const reply = await request('photographs.describe', { id, words })
    trouble.value = sentences(reply)
    if (!reply.ok) return false
    const said = reply.value.words
    photographs.value =
      photographs.value?.map((one) => (one.id === id ? { ...one, words: said } : one)) ?? null
    return true
  }

  async function takeAway(photograph: ShownPhotograph): Promise<void> {
    const reply = await request('photographs.putAway', { id: photograph.id, away: true })
    trouble.value = sentences(reply)
    if (!reply.ok) return
    takenAway.value = photograph
    await read(asked.jobId)
  }
  async function putBack(): Promise<void> {
    if (!takenAway.value) return
    const reply = await request('photographs.putAway', { id: takenAway.value.id, away: false })
    trouble.value = sentences(reply)
    if (!reply.ok) return
    takenAway.value = null
    await read(asked.jobId)
  }
  const bytes = (id: number) => request('photographs.bytes', { id })

  return {
    ...{ photographs, trouble, adding, notAdded, takenAway },
    ...{ read, add, stop, describe, takeAway, putBack, bytes },
  }
})
