import { defineStore } from 'pinia'
import { computed, ref, shallowRef, watch } from 'vue'
import { boardOrders, type Board, type BoardCard, type BoardOrder } from '../../shared/job/board.ts'
import type { JobRow, Stage } from '../../shared/job/job.ts'
import { request, sentences } from '../api.ts'

const remembered = 'bracework.board'

/** A job moved on the board just now, so that it can be moved back. */
export type Moved = { row: JobRow; from: Stage; to: Stage }

const soonest = (cards: BoardCard[]): BoardCard | undefined =>
  cards
    .filter(({ due }) => due !== null)
    .sort((a, b) => (a.due ?? '').localeCompare(b.due ?? '') || a.number.localeCompare(b.number))[0]

/** The work in hand. Which way it is laid out is kept with this screen. */
export const useBoardStore = defineStore('board', () => {
  const board = shallowRef<Board | null>(null)
  const by = ref<BoardOrder>(
    boardOrders.find((one) => one === window.localStorage.getItem(remembered)) ?? 'stage',
  )
  const trouble = ref('')
  const moved = ref<Moved | null>(null)
  let asked = 0

  /** The job promised first. */
  const first = computed(() => soonest((board.value?.columns ?? []).flatMap(({ cards }) => cards)))

  async function read(): Promise<void> {
    const mine = ++asked
    const reply = await request('jobs.board', { by: by.value })
    if (mine !== asked) return
    if (reply.ok) board.value = reply.value
    trouble.value = sentences(reply)
  }
  /** Moves a job to another stage; true where the book took it. What another window did meanwhile is read with it. */
  async function move(row: JobRow, to: Stage): Promise<boolean> {
    if (row.stage === to) return false
    const { id, stage: from } = row
    const reply = await request('jobs.change', { id, changes: [{ path: 'stage', value: to, was: from }] })
    if (reply.ok) moved.value = { row: { ...row, stage: to }, from, to }
    await read()
    if (!reply.ok) trouble.value = sentences(reply)
    return reply.ok
  }
  /** Moves the job moved last back to where it stood. */
  async function moveBack(): Promise<void> {
    const last = moved.value
    if (last && (await move(last.row, last.from))) moved.value = null
  }

  watch(by, (chosen) => {
    window.localStorage.setItem(remembered, chosen)
    void read()
  })
  return { board, by, trouble, moved, first, read, move, moveBack }
})
