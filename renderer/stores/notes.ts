import { defineStore } from 'pinia'
import { ref, shallowRef } from 'vue'
import type { JobNote } from '../../shared/notes/note.ts'
import type { Result } from '../../shared/problem.ts'
import { request, sentences } from '../api.ts'

/** What is written down: the words, and the day (ISO) and time they are of. */
export type NoteWritten = { words: string; on: string; at: string }

/** The dated notes of the job on the board, the newest day first. */
export const useNotesStore = defineStore('notes', () => {
  const notes = shallowRef<JobNote[] | null>(null)
  const more = ref(0)
  const trouble = ref('')
  /** The note taken away last, for putting it back. */
  const takenAway = shallowRef<JobNote | null>(null)
  const asked = { jobId: 0, all: false }

  async function read(jobId: number, all = asked.all): Promise<void> {
    if (jobId !== asked.jobId) {
      notes.value = null
      takenAway.value = null
      all = false
    }
    Object.assign(asked, { jobId, all })
    const reply = await request('notes.list', { jobId, all })
    if (asked.jobId !== jobId) return
    trouble.value = sentences(reply)
    if (!reply.ok) return
    notes.value = reply.value.notes
    // It may have been put back by another way.
    if (reply.value.notes.some(({ id }) => id === takenAway.value?.id)) takenAway.value = null
    more.value = reply.value.more
  }

  /** After something was done: the list anew where it went well. */
  async function after<T>(reply: Result<T>): Promise<Result<T>> {
    if (reply.ok) await read(asked.jobId)
    return reply
  }

  const add = async (jobId: number, written: NoteWritten) =>
    after(await request('notes.add', { jobId, ...written }))
  const mend = async (id: number, written: NoteWritten) =>
    after(await request('notes.mend', { id, ...written }))

  async function takeAway(note: JobNote): Promise<void> {
    const reply = await after(await request('notes.putAway', { id: note.id, away: true }))
    trouble.value = sentences(reply)
    if (reply.ok) takenAway.value = note
  }
  async function putBack(): Promise<void> {
    if (!takenAway.value) return
    const reply = await after(await request('notes.putAway', { id: takenAway.value.id, away: false }))
    trouble.value = sentences(reply)
    if (reply.ok) takenAway.value = null
  }

  return { notes, more, trouble, takenAway, read, add, mend, takeAway, putBack }
})
