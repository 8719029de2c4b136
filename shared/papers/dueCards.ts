import type { DueSpan } from '../job/dueSpan.ts'
import type { Stage } from '../job/job.ts'
import type { PaperFormat } from './page.ts'

/**
 * A job promised soon, and how its card stands. card: the newest one issued; current: nothing differs between it and the job as it stands.
 * hindrance: why no card can be made of it, null where one can.
 */
export type DueCard = {
  jobId: number
  number: string
  customer: string
  title: string
  due: string
  span: DueSpan
  stage: Stage
  sample: boolean
  card: { revision: number; format: PaperFormat; current: boolean } | null
  hindrance: string | null
}

/** What is promised up to the end of next week, the earliest first. more: there are more than are listed. */
export type DueCards = { today: string; cards: DueCard[]; more: boolean }

/** A card made for a batch: issued before and unchanged, made to be issued with the others, or a draft. */
export type CardMade = {
  sha256: string
  pages: number
  made: 'issued before' | 'to be issued' | 'draft'
  revision: number
}

/** The most cards that are printed together: more than a workshop makes in a quarter. */
export const mostCards = 200
