import { defineStore } from 'pinia'
import { computed, ref, shallowRef } from 'vue'
import type { GateSpec, DraftSpec } from '../../shared/gate/spec.ts'
import { layOver, type UsualGate } from '../../shared/gate/usualGate.ts'
import type { LengthUnit } from '../../shared/job/job.ts'
import type { Result } from '../../shared/problem.ts'
import { request, sentences } from '../api.ts'
import { useJobStore } from './job.ts'

/** The workshop's usual gates, and what is done with them. */
export const useUsualStore = defineStore('usual', () => {
  const jobs = useJobStore()
  const gates = shallowRef<UsualGate[] | null>(null)
  const trouble = ref('')
  /** The one that was put away last, so that it can be put back. */
  const away = shallowRef<UsualGate | null>(null)
  const known = computed(() => gates.value ?? [])

  function took(reply: Result<UsualGate[]>): boolean {
    trouble.value = sentences(reply)
    if (reply.ok) gates.value = reply.value
    return reply.ok
  }
  const read = async () => took(await request('usual.list', {}))
  const keep = async (gate: { name: string; unit: LengthUnit; spec: GateSpec }) =>
    took(await request('usual.add', gate))
  const rename = async (id: number, name: string) => took(await request('usual.rename', { id, name }))

  async function putAway(gate: UsualGate): Promise<void> {
    if (took(await request('usual.remove', { id: gate.id }))) away.value = gate
  }
  async function putBack(): Promise<void> {
    const gate = away.value
    if (gate && (await keep({ name: gate.name, unit: gate.unit, spec: gate.spec }))) away.value = null
  }

  /** Lays a usual gate's way of making over the job on the board. */
  function lay(gate: UsualGate): void {
    if (jobs.job) jobs.edit(layOver(jobs.job.entry.spec, gate.spec))
  }
  /** Starts a job that is in the book already from a usual gate. */
  async function startFrom(gate: UsualGate, job: { id: number; spec: DraftSpec }): Promise<string> {
    return sentences(
      await request('jobs.change', { id: job.id, changes: layOver(job.spec, gate.spec, true) }),
    )
  }
  return { gates, known, trouble, away, read, keep, rename, putAway, putBack, lay, startFrom }
})
