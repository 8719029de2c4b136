import type { JobRow, Stage } from './job.ts'
import type { PromiseSpan } from './dueSpan.ts'

/** How the work in hand is laid out: a column for each stage, or for when it is promised. */
export const boardOrders = ['stage', 'day'] as const
export type BoardOrder = (typeof boardOrders)[number]

/** The most cards a column holds; how many more there are stands under it. */
export const mostInColumn = 200

/**
 * A job in hand. carded: a job card was issued; quotedUntil: how long its latest quotation stands, ISO day, null where it was sent none.
 */
export type BoardCard = JobRow & { carded: boolean; quotedUntil: string | null }

/** count: every job of the column; cards: those promised first, then the newest, 200 at most. late: how many of them all are. */
export type BoardColumn = { of: Stage | PromiseSpan; count: number; late: number; cards: BoardCard[] }

/** The work in hand: every job that isn't hung. empty: not even a hung one is in the book. spans: how many in hand stand where by their promised day. */
export type Board = {
  today: string
  empty: boolean
  inHand: number
  spans: Record<PromiseSpan, number>
  columns: BoardColumn[]
}
