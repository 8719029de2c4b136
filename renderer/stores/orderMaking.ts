import { defineStore } from 'pinia'
import { computed, ref, shallowRef } from 'vue'
import type { OneLength } from '../../shared/ordering/oneLength.ts'
import type { Order, OrderCandidate, OrderTask } from '../../shared/ordering/orderModel.ts'
import { bad } from '../../shared/problem.ts'
import { request } from '../api.ts'
import { said } from '../timber/said.ts'
import { askPlan } from '../timber/askPlan.ts'
import { chosenPlan, noPlans, withPlan } from '../timber/plansInHand.ts'
import type { PlanTold } from '../timber/planWork.ts'

/** How long a plan may take by the clock, ms. */
export const planLimitMs = 30_000
const compareLimitMs = 10_000

/** choosing: which jobs; asking: what they take; planning: in the worker; planned: the plan lies on the table. */
export type MakingPhase = 'choosing' | 'asking' | 'planning' | 'planned'

/** An order on its way: the jobs it is for, what they take, the plan as it comes, and the placing of it. Nothing stands in the book before that. */
export const useOrderMakingStore = defineStore('orderMaking', () => {
  const candidates = shallowRef<OrderCandidate[] | null>(null)
  const chosen = shallowRef<ReadonlySet<number>>(new Set())
  const phase = ref<MakingPhase>('choosing')
  const task = shallowRef<OrderTask | null>(null)
  const plans = shallowRef(noPlans)
  const section = ref('')
  const elapsedMs = ref(0)
  /** How the plan came to an end: by itself, at the limit of time, or stopped by hand. */
  const ended = ref<'itself' | 'time' | 'hand'>('itself')
  const oneLength = shallowRef<OneLength[] | null>(null)
  const note = ref('')
  const busy = ref(false)
  const trouble = ref('')
  /** Prices, the rack or a job moved since the plan was made: it can't be placed as it is. */
  const stale = ref(false)
  let breakOff: (() => void) | null = null
  let compareOff: (() => void) | null = null
  let clock: ReturnType<typeof setInterval> | undefined
  let asked = 0

  const best = computed(() => (task.value ? chosenPlan(plans.value, task.value.requests) : null))
  const open = computed(() =>
    (candidates.value ?? []).filter(({ hindrance, orderedOn }) => hindrance === null && orderedOn === null),
  )
  /** The accepted ones; the workshop's own alone where there are some, since the sample's aren't ordered for together with them. */
  const accepted = computed(() => {
    const all = open.value.filter((one) => one.accepted)
    const own = all.filter(({ sample }) => !sample)
    return own.length > 0 ? own : all
  })
  /** Whether jobs of the sample are ticked together with the workshop's own. */
  const mixed = computed(() => {
    const ticked = open.value.filter(({ jobId }) => chosen.value.has(jobId))
    return new Set(ticked.map(({ sample }) => sample)).size > 1
  })

  /** Reads the jobs that can be ordered for; a job that no longer can is let go of. */
  async function read(): Promise<void> {
    const reply = await request('orders.candidates', {})
    if (reply.ok) {
      candidates.value = reply.value
      const still = new Set(open.value.map(({ jobId }) => jobId))
      chosen.value = new Set([...chosen.value].filter((id) => still.has(id)))
    }
    if (phase.value === 'choosing') trouble.value = said(reply)
  }
  /** Reads them and ticks one alone: an order is made for it. A plan for others that lay on the table is put away. */
  async function readFor(jobId: number): Promise<void> {
    if (phase.value !== 'choosing' && chosen.value.size === 1 && chosen.value.has(jobId)) return read()
    putAway()
    await read()
    tickOnly(open.value.filter((one) => one.jobId === jobId).map((one) => one.jobId))
  }
  function tick(jobId: number, on: boolean) {
    const now = new Set(chosen.value)
    if (on) now.add(jobId)
    else now.delete(jobId)
    chosen.value = now
  }
  const tickOnly = (ids: readonly number[]) => (chosen.value = new Set(ids))

  function halt() {
    breakOff?.()
    compareOff?.()
    breakOff = compareOff = null
    clearInterval(clock)
  }
  function compare() {
    if (!task.value || !best.value) return
    const wanted = task.value.requests[best.value.paired ? 'paired' : 'plain']
    if (!wanted) return
    const found: OneLength[] = []
    compareOff = askPlan({ ask: 'one length', request: wanted, limitMs: compareLimitMs }, (told) => {
      if (told.told === 'one length') found.push(told.section)
      if (told.told === 'done') oneLength.value = found
    })
  }
  function settle(how: typeof ended.value) {
    breakOff?.()
    breakOff = null
    clearInterval(clock)
    ended.value = how
    phase.value = best.value ? 'planned' : 'choosing'
    compare()
  }
  function hear(told: PlanTold | { told: 'failed' }) {
    if (told.told === 'section') section.value = told.section
    else if (told.told === 'planned') plans.value = withPlan(plans.value, told)
    else if (told.told === 'done') settle(told.timedOut ? 'time' : 'itself')
    else if (told.told === 'problems' || told.told === 'failed') {
      halt()
      phase.value = 'choosing'
      trouble.value =
        told.told === 'problems'
          ? said(bad(...told.problems))
          : 'The plan couldn’t be worked out. Choose the jobs again.'
    }
  }

  /** Asks what the jobs chosen take, then plans it. */
  async function plan(): Promise<void> {
    if (chosen.value.size === 0) return
    const mine = ++asked
    halt()
    phase.value = 'asking'
    trouble.value = ''
    stale.value = false
    plans.value = noPlans
    oneLength.value = null
    task.value = null
    section.value = ''
    elapsedMs.value = 0
    const reply = await request('orders.task', { jobIds: [...chosen.value] })
    if (mine !== asked) return
    if (!reply.ok) {
      phase.value = 'choosing'
      trouble.value = said(reply)
      return
    }
    task.value = reply.value
    if (reply.value.parts.length === 0) {
      phase.value = 'planned'
      return
    }
    phase.value = 'planning'
    const began = performance.now()
    clock = setInterval(() => (elapsedMs.value = performance.now() - began), 200)
    breakOff = askPlan({ ask: 'plan', requests: reply.value.requests, limitMs: planLimitMs }, hear)
  }
  /** Ends the planning at once; the best plan so far lies on the table. */
  const stopHere = () => settle('hand')
  /** Back to the choice of jobs, the plan put away. */
  function putAway() {
    asked += 1
    halt()
    phase.value = 'choosing'
    task.value = null
    plans.value = noPlans
    oneLength.value = null
    trouble.value = ''
    stale.value = false
  }

  /** Places the order; undefined where it wasn't taken, with the reason told. */
  async function place(): Promise<Order | undefined> {
    if (!task.value || !best.value || busy.value) return undefined
    busy.value = true
    const reply = await request('orders.place', {
      jobIds: task.value.jobs.map(({ jobId }) => jobId),
      stamp: task.value.stamp,
      paired: best.value.paired,
      plan: best.value.plan,
      note: note.value,
    })
    busy.value = false
    trouble.value = said(reply)
    stale.value = !reply.ok && reply.problems.some(({ code }) => code === 'changed-meanwhile')
    if (!reply.ok) return undefined
    putAway()
    chosen.value = new Set()
    note.value = ''
    return reply.value
  }

  return {
    candidates,
    chosen,
    phase,
    task,
    section,
    elapsedMs,
    ended,
    oneLength,
    note,
    busy,
    trouble,
    stale,
    best,
    open,
    accepted,
    mixed,
    read,
    readFor,
    tick,
    tickOnly,
    plan,
    stopHere,
    putAway,
    place,
  }
})
