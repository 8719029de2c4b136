import { defineStore } from 'pinia'
import { computed, ref, shallowRef } from 'vue'
import type { Takes } from '../../shared/contract.ts'
import type { Order, OrderRow } from '../../shared/ordering/orderModel.ts'
import type { Result } from '../../shared/problem.ts'
import { request } from '../api.ts'
import { said } from '../timber/said.ts'

/** The orders made, and the one that is open. */
export const useOrdersStore = defineStore('orders', () => {
  const rows = shallowRef<OrderRow[] | null>(null)
  const order = shallowRef<Order | null>(null)
  const trouble = ref('')
  const busy = ref(false)
  let asked = 0

  /** Which order a job's timber stands on, by the job; one that was cancelled doesn't count. */
  const byJob = computed(() => {
    const standing = (rows.value ?? []).filter(({ state }) => state !== 'cancelled')
    return new Map(standing.flatMap((row) => row.jobs.map(({ jobId }) => [jobId, row] as const)))
  })

  async function read(): Promise<void> {
    const reply = await request('orders.list', {})
    if (reply.ok) rows.value = reply.value
    trouble.value = said(reply)
  }
  /** Opens an order; an answer overtaken by a later one is let go. */
  async function open(id: number): Promise<void> {
    const mine = ++asked
    if (order.value?.id !== id) order.value = null
    const reply = await request('orders.open', { id })
    if (mine !== asked) return
    if (reply.ok) order.value = reply.value
    trouble.value = said(reply)
  }
  /** After the book has taken something done with the open order: shows it as it is now. True where it was taken. */
  async function followed(reply: Promise<Result<Order>>): Promise<boolean> {
    busy.value = true
    const given = await reply
    busy.value = false
    trouble.value = said(given)
    if (given.ok) order.value = given.value
    return given.ok
  }
  const receive = (came: Takes<'orders.receive'>) => followed(request('orders.receive', came))
  const cut = (done: Takes<'orders.cut'>) => followed(request('orders.cut', done))
  const cancel = (id: number) => followed(request('orders.cancel', { id }))

  return { rows, order, trouble, busy, byJob, read, open, receive, cut, cancel }
})
