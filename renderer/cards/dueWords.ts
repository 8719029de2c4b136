import type { CardMade, DueCard } from '../../shared/papers/dueCards.ts'
import type { Batch } from '../stores/dueCards.ts'
import { formatWord } from '../format.ts'

/** How a job's card stands, in a few words. */
export function standingWords({ card, hindrance }: Pick<DueCard, 'card' | 'hindrance'>): string {
  if (hindrance !== null) return 'no card can be made'
  if (card === null) return 'no card issued yet'
  return card.current
    ? `card ${card.revision} issued, ${formatWord[card.format]}`
    : `changed since card ${card.revision}`
}

const counted = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`

const kinds: Record<CardMade['made'], string> = {
  'to be issued': 'issued now',
  'issued before': 'as issued before',
  draft: 'as drafts, marked so',
}

/** What came of a batch: '5 cards, 15 pages: 2 issued now, 3 as issued before'. */
export function madeWords({ done, pages }: Pick<Batch, 'done' | 'pages'>): string {
  const groups = (['to be issued', 'issued before', 'draft'] as const).flatMap((kind) => {
    const count = done.filter(({ made }) => made.made === kind).length
    if (count === 0) return []
    return [kind === 'draft' && count === 1 ? 'one as a draft, marked so' : `${count} ${kinds[kind]}`]
  })
  return `${counted(done.length, 'card', 'cards')}, ${counted(pages, 'page', 'pages')}: ${groups.join(', ')}`
}

/** A time left as one says it: 'a few seconds left', 'about 40 seconds left', 'about 3 minutes left'. */
export function leftWords(ms: number | undefined): string {
  if (ms === undefined) return ''
  const seconds = Math.ceil(ms / 1000)
  if (seconds <= 3) return 'a few seconds left'
  if (seconds < 90) return `about ${seconds} seconds left`
  return `about ${Math.round(seconds / 60)} minutes left`
}
