import { defineStore } from 'pinia'
import { ref, shallowRef, watch } from 'vue'
import type { DraftSpec, GateSpec } from '../../shared/gate/spec.ts'
import { specOf } from '../../shared/gate/parseSpec.ts'
import type { Paper } from '../../shared/job/job.ts'
import { request, sentences } from '../api.ts'
import { useJobStore } from './job.ts'

/** A gate to be drawn beside the job's own: what it is called, and the whole of it. option: the version it is of this job, for its price. */
export type Beside = { name: string; spec: GateSpec; option?: number }

/** Which gate lies beside the job's own, and whether the two are being looked at. over: what lies over the gate's board. */
export const useBesideStore = defineStore('beside', () => {
  const over = ref<'usual' | 'beside' | null>(null)
  const other = shallowRef<Beside | null>(null)
  const trouble = ref('')

  function set(name: string, spec: DraftSpec | GateSpec, option?: number): void {
    const whole = specOf(spec)
    trouble.value = whole ? '' : `${name} has no sizes yet, so it can’t be drawn.`
    if (whole) other.value = { name, spec: whole, ...(option === undefined ? {} : { option }) }
  }
  /** The gate of an issued card, as it was frozen. */
  async function setPaper(paper: Paper): Promise<boolean> {
    const reply = await request('papers.gate', { id: paper.id })
    trouble.value = sentences(reply)
    if (reply.ok)
      set(
        paper.kind === 'job-card' ? `Card ${paper.revision}` : `Quotation ${paper.revision}`,
        reply.value.spec,
      )
    return reply.ok
  }
  async function setJob(id: number): Promise<void> {
    const reply = await request('jobs.open', { id })
    trouble.value = sentences(reply)
    if (reply.ok) set(`${reply.value.number} ${reply.value.customer.name}`, reply.value.entry.spec)
  }
  /** Another job is opened: what lay beside the last one goes. */
  function clear(): void {
    over.value = null
    other.value = null
    trouble.value = ''
  }
  const jobs = useJobStore()
  watch(() => jobs.job?.id, clear)
  return { over, other, trouble, set, setPaper, setJob, clear }
})
