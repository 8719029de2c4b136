import { createPinia, setActivePinia } from 'pinia'
import { beforeEach, describe, expect, it } from 'vitest'
import { leftWords, madeWords, standingWords } from '../../renderer/cards/dueWords.ts'
import { timeLeft, useDueCardsStore } from '../../renderer/stores/dueCards.ts'
import type { CardMade, DueCard } from '../../shared/papers/dueCards.ts'
import { bad, good } from '../../shared/problem.ts'
import { pause } from './standIn.ts'

const due = (jobId: number, some: Partial<DueCard> = {}): DueCard => ({
  jobId,
  number: `2026-00${jobId}`,
  customer: 'Isolde Hartwhistle',
  title: 'Side gate',
  due: '2026-03-05',
  span: 'this week',
  stage: 'making',
  sample: false,
  card: null,
  hindrance: null,
  ...some,
})
const mark = (jobId: number): string => String(jobId).padStart(64, '0')

/** A carrier that makes cards one at a time, each after a wait; what was asked is noted. */
function book(cards: DueCard[], { wait = 0, refused = 0 } = {}) {
  setActivePinia(createPinia())
  const asked: string[] = []
  const answers = {
    'papers.due': async () => good({ today: '2026-03-04', cards, more: false }),
    'papers.dueCard': async ({ jobId, issue }: { jobId: number; issue: boolean }) => {
      asked.push(`card ${jobId}`)
      await pause(wait)
      if (jobId === refused) return bad({ code: 'stop', field: '', message: 'the brace doesn’t fit' })
      const made: CardMade['made'] = issue ? 'to be issued' : 'draft'
      return good({ sha256: mark(jobId), pages: 3, made, revision: 1 })
    },
    'papers.gather': async ({ cards: marks }: { cards: string[] }) => {
      asked.push(`gather ${marks.length}`)
      return good({ base64: 'JVBERi0=', sha256: mark(99), pages: 3 * marks.length })
    },
    'papers.issueTogether': async ({ cards: marks }: { cards: string[] }) => {
      asked.push(`issue ${marks.length}`)
      return good([])
    },
    'book.summary': async () => bad({ code: 'missing', field: '', message: 'none here' }),
  }
  Object.defineProperty(window, 'bracework', { value: answers, configurable: true })
  return { asked, store: useDueCardsStore() }
}

describe('cards printed together', () => {
  it('are those of the spans chosen, without what was taken out or can’t be made', async () => {
    const { store } = book([
      due(1, { span: 'late' }),
      due(2),
      due(3, { span: 'next week' }),
      due(4, { hindrance: 'the width is missing' }),
    ])
    await store.read()
    const chosen = () => store.chosen.map(({ jobId }) => jobId)
    expect(chosen()).toEqual([1, 2])
    store.turnSpan('next week')
    store.turnSpan('late')
    store.turnJob(2)
    expect(chosen()).toEqual([3])
    expect(store.counts.map(({ count }) => count)).toEqual([1, 2, 1])
  })

  it('come as one paper, with those that have no card in it named with the reason', async () => {
    const { store, asked } = book([due(1), due(2), due(3), due(4, { hindrance: 'the width is missing' })], {
      refused: 2,
    })
    await store.read()
    await store.make()
    expect(asked).toEqual(['card 1', 'card 2', 'card 3', 'gather 2'])
    expect(store.batch?.pages).toBe(6)
    expect(store.batch?.left.map(({ card, why }) => [card.jobId, why])).toEqual([
      [4, 'the width is missing'],
      [2, 'the brace doesn’t fit'],
    ])
    expect(store.batch && madeWords(store.batch)).toBe('2 cards, 6 pages: 2 as drafts, marked so')
  })

  it('are issued once all of them are made and gathered, not one before', async () => {
    const { store, asked } = book([due(1), due(2)])
    await store.read()
    store.issue = true
    await store.make()
    expect(asked).toEqual(['card 1', 'card 2', 'gather 2', 'issue 2'])
  })

  it('stop at once: nothing more is asked for, nothing issued, no paper given', async () => {
    const { store, asked } = book(
      Array.from({ length: 9 }, (_, at) => due(at + 1)),
      { wait: 40 },
    )
    await store.read()
    store.issue = true
    const making = store.make()
    await pause(100)
    expect(store.progress?.of).toBe(9)
    store.stop()
    expect(store.progress).toBeNull()
    await making
    const before = asked.length
    await pause(120)
    expect(asked.length).toBe(before)
    expect(asked.some((name) => /^(gather|issue)/.test(name))).toBe(false)
    expect([store.batch, store.stopped]).toEqual([null, true])
  })
})

describe('how cards stand and what came of them, in words', () => {
  beforeEach(() => setActivePinia(createPinia()))
  it('says how a job’s card stands', () => {
    expect(standingWords(due(1))).toBe('no card issued yet')
    expect(standingWords(due(1, { card: { revision: 2, format: 'letter', current: true } }))).toBe(
      'card 2 issued, Letter',
    )
    expect(standingWords(due(1, { card: { revision: 2, format: 'a4', current: false } }))).toBe(
      'changed since card 2',
    )
  })
  it('guesses the time left once two are made, the gathering counted as two more', () => {
    expect(timeLeft({ made: 1, of: 10, elapsedMs: 300, gathering: false })).toBeUndefined()
    expect(timeLeft({ made: 4, of: 10, elapsedMs: 2000, gathering: false })).toBe(4000)
    expect([2400, 40_000, 200_000].map(leftWords)).toEqual([
      'a few seconds left',
      'about 40 seconds left',
      'about 3 minutes left',
    ])
  })
})
