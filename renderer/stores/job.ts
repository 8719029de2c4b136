import { defineStore } from 'pinia'
import { computed, ref, shallowRef } from 'vue'
import type { Change, Job, Overlap } from '../../shared/job/job.ts'
import { request, sentences, wasUnreachable } from '../api.ts'
import { applyChanges } from '../../shared/job/applyChange.ts'
import { oneBatch, queued, standing, tellable, withEdits, type Edit } from './edits.ts'
import { hand } from './hand.ts'
import { layBy, takeUp } from './unsent.ts'
import { watchOver } from './watchOver.ts'

/** How long a hand may rest between two keys before the edit goes to the book, ms. */
const rest = 300
/** How long to wait after the book did not answer, ms. */
const retryAfter = 1500

/**
 * The job on the board. What is shown is the book's job with the edits on their way laid over it; edits go one batch
 * at a time, in order, and stay until the book has taken them.
 */
export const useJobStore = defineStore('job', () => {
  const kept = shallowRef<Job | null>(null)
  const waiting = shallowRef<Edit[]>([])
  const onTheWay = shallowRef<Edit[]>([])
  /** What a part that is being moved stands at: shown, and no edit until it is let go. */
  const inHand = shallowRef<Edit>([])
  const keptAt = ref<string | null>(null)
  const trouble = ref('')
  const missing = ref('')
  const overlaps = ref<Overlap[]>([])
  const refused = ref<{ path: string; message: string }[]>([])
  let timer: ReturnType<typeof setTimeout> | undefined
  let stopWatching = () => {}
  let underway: Promise<void> = Promise.resolve()
  let turns: Promise<void> = Promise.resolve()

  const pending = computed(() => [...onTheWay.value, ...waiting.value])
  const job = computed(() =>
    kept.value
      ? withEdits(kept.value, inHand.value.length > 0 ? [...pending.value, inHand.value] : pending.value)
      : null,
  )
  /** Shows changes on the board without making them; none puts it back as it was. */
  const hold = (changes: Edit) => (inHand.value = changes)

  function adopt(newer: Job) {
    if (kept.value && newer.id !== kept.value.id) return
    if (!kept.value || newer.version > kept.value.version) kept.value = newer
  }

  const after = (ms: number) => {
    clearTimeout(timer)
    timer = setTimeout(() => void send(), ms)
  }

  /** Makes changes on the board at once, and on the book within the time of a short rest. */
  function edit(changes: Omit<Change, 'was'>[]) {
    const now = job.value
    if (!now) return
    const made = changes.map((change) => ({ ...change, was: standing(now, change.path) }))
    refused.value = refused.value.filter((one) => !changes.some((change) => change.path === one.path))
    const applied = applyChanges(now, made)
    if (!applied.ok) {
      refuse(made, sentences(applied))
      return
    }
    waiting.value = queued(waiting.value, made)
    layBy(now.id, pending.value)
    after(rest)
  }

  const refuse = (edit: Edit, message: string) =>
    (refused.value = [...refused.value, { path: edit[0]?.path ?? '', message }])

  /** Sends what is waiting now, once what is on its way has arrived. */
  const send = (): Promise<void> => (underway = underway.then(sendWaiting))

  async function sendWaiting(): Promise<void> {
    clearTimeout(timer)
    const id = kept.value?.id
    if (id === undefined || waiting.value.length === 0) return
    onTheWay.value = oneBatch(waiting.value)
    waiting.value = waiting.value.slice(onTheWay.value.length)
    const reply = await request('jobs.change', { id, changes: onTheWay.value.flat(), hand })
    if (kept.value?.id !== id) return
    const sent = onTheWay.value
    onTheWay.value = []
    if (reply.ok) {
      trouble.value = ''
      keptAt.value = new Date().toISOString()
      layBy(id, waiting.value)
      adopt(reply.value.job)
      overlaps.value = [...overlaps.value, ...tellable(reply.value.overlaps)]
    } else if (wasUnreachable(reply)) {
      trouble.value = sentences(reply)
      waiting.value = [...sent, ...waiting.value]
      layBy(id, waiting.value)
      return after(retryAfter)
    } else await sendSingly(id, sent)
    if (waiting.value.length > 0) after(rest)
  }

  /** One edit of a batch was refused: the good ones still go, and the refused one is told beside its field. */
  async function sendSingly(id: number, edits: Edit[]): Promise<void> {
    for (const [index, one] of edits.entries()) {
      onTheWay.value = edits.slice(index)
      const reply = await request('jobs.change', { id, changes: one, hand })
      if (kept.value?.id !== id) return
      if (reply.ok) {
        adopt(reply.value.job)
        keptAt.value = new Date().toISOString()
      } else if (wasUnreachable(reply)) {
        waiting.value = [...edits.slice(index), ...waiting.value]
        trouble.value = sentences(reply)
        break
      } else refuse(one, sentences(reply))
    }
    onTheWay.value = []
    layBy(id, waiting.value)
  }

  /** Reads the job again, unless an edit of this window is on its way (its reply brings the newest). */
  async function look(): Promise<void> {
    const id = kept.value?.id
    if (id === undefined || pending.value.length > 0 || document.visibilityState === 'hidden') return
    const reply = await request('jobs.open', { id })
    if (reply.ok && pending.value.length === 0) adopt(reply.value)
    if (reply.ok) trouble.value = ''
    else if (wasUnreachable(reply)) trouble.value = sentences(reply)
  }

  /** The window is closing: edits go now, and are laid by as well while the book doesn't answer. */
  function flushAtEnd() {
    void send()
    if (kept.value) layBy(kept.value.id, pending.value)
  }

  async function putAway(): Promise<void> {
    await send()
    if (kept.value) layBy(kept.value.id, pending.value)
    clearTimeout(timer)
    stopWatching()
    kept.value = null
    waiting.value = []
    onTheWay.value = []
    inHand.value = []
    overlaps.value = []
    refused.value = []
    keptAt.value = null
    trouble.value = ''
    missing.value = ''
  }

  async function take(id: number): Promise<void> {
    if (kept.value) await putAway()
    const reply = await request('jobs.open', { id })
    if (!reply.ok) {
      missing.value = sentences(reply)
      return
    }
    kept.value = reply.value
    keptAt.value = reply.value.updatedAt
    waiting.value = await takeUp(id)
    if (waiting.value.length > 0) after(0)
    stopWatching = watchOver({ look, send, sendAtEnd: flushAtEnd })
  }

  /** Opens a job; the one on the board is put away first. One after another, however fast they are asked for. */
  const open = (id: number): Promise<void> => (turns = turns.then(() => take(id)))
  /** Puts the job away; what is still waiting is sent first. */
  const close = (): Promise<void> => (turns = turns.then(putAway))

  /** Answers an overlap: the other window's words go back in place of mine. */
  function putTheirsBack(overlap: Overlap) {
    forget(overlap)
    edit([
      {
        path: overlap.path,
        value: overlap.theirs,
        ...(overlap.path.startsWith('spec.') ? { typed: '' } : {}),
      },
    ])
  }
  const forget = (overlap: Overlap) => (overlaps.value = overlaps.value.filter((one) => one !== overlap))

  return {
    job,
    pending,
    keptAt,
    trouble,
    missing,
    overlaps,
    refused,
    edit,
    hold,
    send,
    look,
    open,
    close,
    putTheirsBack,
    forget,
  }
})
