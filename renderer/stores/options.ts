import { defineStore } from 'pinia'
import { computed, ref, shallowRef } from 'vue'
import { plainEntry, type EstimateEntry } from '../../shared/pricing/terms.ts'
import type { JobOption } from '../../shared/pricing/quotation.ts'
import { request, sentences, wasUnreachable } from '../api.ts'

/** How long a hand may rest between two keys before an option goes to the book, ms. */
const rest = 300
/** How long to wait after the book did not answer, ms. */
const retryAfter = 1500

/** What an option is until anything is said of it: the job's gate as drawn. Its id 0 says that the book has no row for it yet. */
const asDrawn = (jobId: number): JobOption => ({
  id: 0,
  jobId,
  position: 1,
  name: 'As drawn',
  spec: null,
  entry: plainEntry,
  version: 0,
})

const contents = ({ name, spec, entry }: JobOption) => ({ name, spec, entry })

/** The versions of the job's gate to be priced. Shown as typed; each goes to the book after a short rest, one at a time. */
export const useOptionsStore = defineStore('options', () => {
  const jobId = ref(0)
  const held = shallowRef<JobOption[] | null>(null)
  const chosenId = ref<number | null>(null)
  const trouble = ref('')
  const unsent = shallowRef<ReadonlySet<number>>(new Set())
  const onTheWay = ref(false)
  let timer: ReturnType<typeof setTimeout> | undefined
  let underway: Promise<void> = Promise.resolve()

  const options = computed<JobOption[]>(() =>
    held.value && held.value.length > 0 ? held.value : jobId.value > 0 ? [asDrawn(jobId.value)] : [],
  )
  const chosen = computed(() => options.value.find(({ id }) => id === chosenId.value) ?? options.value[0])
  const ready = computed(() => held.value !== null)

  async function read(id: number): Promise<void> {
    if (id !== jobId.value) {
      held.value = null
      chosenId.value = null
      unsent.value = new Set()
    }
    jobId.value = id
    const reply = await request('options.list', { jobId: id })
    if (jobId.value !== id || unsent.value.size > 0 || onTheWay.value) return
    if (reply.ok) held.value = reply.value
    trouble.value = sentences(reply)
  }
  const look = async () => {
    if (jobId.value > 0 && unsent.value.size === 0 && !onTheWay.value) await read(jobId.value)
  }

  const put = (option: JobOption) =>
    (held.value = options.value.map((one) => (one.id === option.id ? option : one)))

  /** Changes an option at once on the screen, and in the book after a short rest. */
  function edit(id: number, some: Partial<Pick<JobOption, 'name' | 'spec' | 'entry'>>) {
    const now = options.value.find((one) => one.id === id)
    if (!now) return
    put({ ...now, ...some })
    unsent.value = new Set([...unsent.value, id])
    after(rest)
  }
  const editEntry = (id: number, some: Partial<EstimateEntry>) => {
    const now = options.value.find((one) => one.id === id)
    if (now) edit(id, { entry: { ...now.entry, ...some } })
  }
  const after = (ms: number) => {
    clearTimeout(timer)
    timer = setTimeout(() => void send(), ms)
  }

  /** Sends what is waiting now, once what is on its way has arrived. */
  const send = (): Promise<void> => (underway = underway.then(sendWaiting))

  async function sendWaiting(): Promise<void> {
    clearTimeout(timer)
    const job = jobId.value
    // Another job may be opened meanwhile: what was written on this one still goes.
    for (const dirty of options.value.filter(({ id }) => unsent.value.has(id))) {
      const newest = jobId.value === job ? options.value.find(({ id }) => id === dirty.id) : dirty
      if (newest && !(await sendOne(newest, job))) return
    }
  }

  /** Whether the option was taken or refused for good; false when the book didn't answer and it waits for another try. */
  async function sendOne(option: JobOption, job: number): Promise<boolean> {
    const settle = (id: number) => (unsent.value = new Set([...unsent.value].filter((one) => one !== id)))
    settle(option.id)
    const reply =
      option.id === 0
        ? await request('options.add', { jobId: job, option: contents(option) })
        : await request('options.change', {
            id: option.id,
            version: option.version,
            option: contents(option),
          })
    if (jobId.value !== job) return true
    trouble.value = sentences(reply)
    if (reply.ok) {
      took(option, reply.value)
      return true
    }
    if (wasUnreachable(reply)) {
      unsent.value = new Set([...unsent.value, option.id])
      after(retryAfter)
      return false
    }
    const why = trouble.value
    await read(job)
    trouble.value = why
    return true
  }

  /** The book has taken an option: its new version is adopted, and what was typed meanwhile stays over it and goes next. */
  function took(sent: JobOption, kept: JobOption) {
    const now = options.value.find((one) => one.id === sent.id)
    const typedMeanwhile = now !== undefined && unsent.value.has(sent.id)
    const newer = typedMeanwhile ? { ...kept, ...contents(now) } : kept
    held.value = options.value.map((one) => (one.id === sent.id ? newer : one))
    if (chosenId.value === sent.id) chosenId.value = kept.id
    if (!typedMeanwhile) return
    unsent.value = new Set([...[...unsent.value].filter((id) => id !== sent.id), kept.id])
    after(rest)
  }

  /** Adds a version beside those there; the gate as drawn gets its row first, so that both stand in the book. */
  async function add(option: Pick<JobOption, 'name' | 'spec' | 'entry'>): Promise<void> {
    const first = options.value[0]
    if (first?.id === 0) edit(0, {})
    await send()
    const reply = await request('options.add', { jobId: jobId.value, option })
    trouble.value = sentences(reply)
    if (!reply.ok) return
    held.value = [...options.value.filter(({ id }) => id !== reply.value.id), reply.value]
    chosenId.value = reply.value.id
  }

  async function remove(id: number): Promise<void> {
    await send()
    const reply = await request('options.remove', { id })
    trouble.value = sentences(reply)
    if (reply.ok) held.value = reply.value
  }

  return {
    options,
    chosen,
    chosenId,
    ready,
    trouble,
    unsent,
    read,
    look,
    edit,
    editEntry,
    send,
    add,
    remove,
  }
})
