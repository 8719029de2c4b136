import { defineStore } from 'pinia'
import { ref, shallowRef } from 'vue'
import type {
  BookLook,
  BroughtIn,
  BroughtJob,
  JobLook,
  TakenOut,
  WorkInHand,
} from '../../shared/openBook/requests.ts'
import type { Problem, Result } from '../../shared/problem.ts'
import { inOwnWindow, request, sentences } from '../api.ts'
import { tellOtherWindows } from '../otherWindows.ts'
import { useJobStore } from './job.ts'
import { forgetUnsent } from './unsent.ts'

/** How often a long work is looked after, ms. */
const lookEvery = 250

/** The book going out as a folder and coming in again, and one job coming in: what is on the way, what was found, what came of it. */
export const useOpenBookStore = defineStore('openBook', () => {
  /** Where it goes and where it comes from, as typed; a desktop window asks for itself. */
  const outFolder = ref('')
  const inFolder = ref('')
  const work = ref<WorkInHand | null>(null)
  const busy = ref(false)
  const taken = shallowRef<TakenOut | null>(null)
  const look = shallowRef<BookLook | null>(null)
  const brought = shallowRef<BroughtIn | null>(null)
  const outTrouble = ref('')
  const inTrouble = ref('')
  const job = shallowRef<{ name: string; text: string; look: JobLook } | null>(null)
  const jobProblems = shallowRef<Problem[]>([])
  const broughtJob = shallowRef<BroughtJob | null>(null)

  /** Asks, looking after how far the work is until the answer comes. */
  async function watched<T>(ask: () => Promise<Result<T>>): Promise<Result<T>> {
    busy.value = true
    const timer = setInterval(() => {
      void request('book.inHand', {}).then((reply) => {
        if (busy.value && reply.ok) work.value = reply.value
      })
    }, lookEvery)
    try {
      return await ask()
    } finally {
      clearInterval(timer)
      busy.value = false
      work.value = null
    }
  }

  const folderOf = (typed: string): string | null => (inOwnWindow() ? null : typed.trim())

  async function takeOut(): Promise<void> {
    taken.value = null
    const folder = folderOf(outFolder.value)
    const reply = await watched(() => request('book.takeOut', { folder }))
    outTrouble.value = sentences(reply)
    if (reply.ok) taken.value = reply.value
  }

  async function lookInto(): Promise<void> {
    look.value = null
    brought.value = null
    const folder = folderOf(inFolder.value)
    const reply = await watched(() => request('book.lookInto', { folder }))
    inTrouble.value = sentences(reply)
    if (reply.ok) look.value = reply.value
  }

  /** Edits of the book that gives place go into it first; what couldn't be sent would else land in another job of the same number. */
  async function bringIn(): Promise<void> {
    const found = look.value
    if (!found) return
    await useJobStore().send()
    const { folder, own } = found
    const reply = await watched(() => request('book.bringIn', { folder, replace: own > 0 }))
    inTrouble.value = sentences(reply)
    if (!reply.ok) return
    forgetUnsent()
    tellOtherWindows()
    brought.value = reply.value
    look.value = null
  }

  const stop = (): Promise<Result<{ stopped: boolean }>> => request('book.stopWork', {})

  function putAway(): void {
    look.value = null
    inTrouble.value = ''
  }

  async function chooseJob(file: File): Promise<void> {
    broughtJob.value = null
    job.value = null
    const text = await file.text()
    const reply = await request('job.lookInto', { text })
    jobProblems.value = reply.ok ? [] : reply.problems
    if (reply.ok) job.value = { name: file.name, text, look: reply.value }
  }

  async function bringJobIn(): Promise<void> {
    if (!job.value) return
    const reply = await request('job.bringIn', { text: job.value.text })
    jobProblems.value = reply.ok ? [] : reply.problems
    if (reply.ok) broughtJob.value = reply.value
    job.value = null
  }
  const putJobAway = (): void => {
    job.value = null
    jobProblems.value = []
  }

  const takeJobOut = (jobId: number, papers: boolean) => request('job.takeOut', { jobId, papers })

  return {
    ...{ outFolder, inFolder, work, busy, taken, look, brought, outTrouble, inTrouble },
    ...{ job, jobProblems, broughtJob },
    ...{ takeOut, lookInto, bringIn, stop, putAway, chooseJob, bringJobIn, putJobAway, takeJobOut },
  }
})
