import { defineStore } from 'pinia'
import { computed, ref, shallowRef } from 'vue'
import { dueSpans, type DueSpan } from '../../shared/job/dueSpan.ts'
import type { CardMade, DueCard, DueCards } from '../../shared/papers/dueCards.ts'
import type { PaperFormat } from '../../shared/papers/page.ts'
import type { Result } from '../../shared/problem.ts'
import { request, sentences } from '../api.ts'
import { useSettingsStore } from './settings.ts'

/** A card that is in the paper made, or the reason why it isn't. */
export type CardDone = { card: DueCard; made: CardMade }
export type CardLeft = { card: DueCard; why: string }

/** What came of a batch: one paper of all the cards, those that are in it, and those that aren't. */
export type Batch = { base64: string; pages: number; done: CardDone[]; left: CardLeft[] }

/** Cards made so far of so many, and how long that took. gathering: all are made and are being put together. */
export type Progress = { made: number; of: number; elapsedMs: number; gathering: boolean }

/** A guess of the time left, ms; undefined until enough are made to guess by. The gathering is counted as two more cards. */
export function timeLeft({ made, of, elapsedMs, gathering }: Progress): number | undefined {
  if (gathering || made < 2) return undefined
  return (elapsedMs / made) * (of - made + 2)
}

/**
 * Cards of the jobs promised soon, printed together. The window asks for one card after the other, so that it can stop at once; nothing stands
 * in the book before all are made and gathered, and then all are issued in one writing.
 */
export const useDueCardsStore = defineStore('dueCards', () => {
  const settings = useSettingsStore()
  const due = shallowRef<DueCards | null>(null)
  const spans = ref<ReadonlySet<DueSpan>>(new Set(['late', 'this week']))
  /** Jobs taken out by hand. */
  const without = ref<ReadonlySet<number>>(new Set())
  const issue = ref(false)
  const chosenFormat = ref<PaperFormat | null>(null)
  const format = computed(() => chosenFormat.value ?? settings.summary?.settings.paper ?? 'a4')
  const trouble = ref('')
  const progress = ref<Progress | null>(null)
  const batch = shallowRef<Batch | null>(null)
  /** Said after a batch was stopped. */
  const stopped = ref(false)
  let run = 0

  const listed = computed(() => due.value?.cards.filter(({ span }) => spans.value.has(span)) ?? [])
  const chosen = computed(() =>
    listed.value.filter(({ jobId, hindrance }) => hindrance === null && !without.value.has(jobId)),
  )
  const counts = computed(() =>
    dueSpans.map((span) => ({
      span,
      count: due.value?.cards.filter((one) => one.span === span).length ?? 0,
    })),
  )
  /** The cards chosen that would be issued, or come as drafts. */
  const unissued = computed(() => chosen.value.filter(({ card }) => !card?.current))

  async function read(): Promise<void> {
    const reply = await request('papers.due', {})
    if (reply.ok) due.value = reply.value
    trouble.value = sentences(reply)
  }
  const turned = <T>(set: ReadonlySet<T>, one: T): ReadonlySet<T> =>
    set.has(one) ? new Set([...set].filter((other) => other !== one)) : new Set([...set, one])
  const turnSpan = (span: DueSpan) => (spans.value = turned(spans.value, span))
  const turnJob = (jobId: number) => (without.value = turned(without.value, jobId))

  const fail = (reply: Result<unknown>) => {
    progress.value = null
    trouble.value = sentences(reply)
  }
  /** Makes the cards one after the other; undefined once it was stopped. */
  async function makeAll(
    mine: number,
    cards: readonly DueCard[],
  ): Promise<Omit<Batch, 'base64' | 'pages'> | undefined> {
    const began = performance.now()
    const [done, left]: [CardDone[], CardLeft[]] = [[], []]
    const asks = { format: format.value, issue: issue.value }
    for (const [place, card] of cards.entries()) {
      const elapsedMs = performance.now() - began
      progress.value = { made: place, of: cards.length, elapsedMs, gathering: false }
      const reply = await request('papers.dueCard', { jobId: card.jobId, ...asks })
      if (mine !== run) return undefined
      if (reply.ok) done.push({ card, made: reply.value })
      else left.push({ card, why: sentences(reply) })
    }
    progress.value = {
      ...{ made: cards.length, of: cards.length, gathering: true },
      elapsedMs: performance.now() - began,
    }
    return { done, left }
  }
  /** Puts what was made together and issues what is to be; where that fails, nothing is given. */
  async function finish(mine: number, made: Omit<Batch, 'base64' | 'pages'>): Promise<void> {
    const cards = made.done.map((one) => one.made.sha256)
    if (cards.length === 0) {
      progress.value = null
      batch.value = { ...made, base64: '', pages: 0 }
      return
    }
    const gathered = await request('papers.gather', { cards })
    if (mine !== run) return
    if (!gathered.ok) return fail(gathered)
    if (made.done.some((one) => one.made.made === 'to be issued')) {
      const issued = await request('papers.issueTogether', { cards })
      if (!issued.ok) return fail(issued)
    }
    progress.value = null
    batch.value = { ...made, base64: gathered.value.base64, pages: gathered.value.pages }
    void read()
  }
  async function make(): Promise<void> {
    if (progress.value || chosen.value.length === 0) return
    const mine = ++run
    trouble.value = ''
    stopped.value = false
    batch.value = null
    const hindered = listed.value.flatMap((card) =>
      card.hindrance === null ? [] : [{ card, why: card.hindrance }],
    )
    const made = await makeAll(mine, chosen.value)
    if (made) await finish(mine, { done: made.done, left: [...hindered, ...made.left] })
  }
  /** Stops at once: the cards made so far are let go of, and none is issued. */
  function stop() {
    if (!progress.value) return
    run += 1
    progress.value = null
    stopped.value = true
  }
  return {
    ...{ due, spans, without, issue, chosenFormat, format, trouble, progress, batch, stopped },
    ...{ listed, chosen, counts, unissued, read, turnSpan, turnJob, make, stop },
  }
})
