import type { BookCounts, WorkInHand } from '../../shared/openBook/requests.ts'
import { guessLeft } from '../components/stageClock.ts'

const few = (count: number, one: string, more: string): string[] =>
  count === 0 ? [] : [`${count} ${count === 1 ? one : more}`]

/** How much of a book there is, in words: '12 jobs, 9 customers, 4 papers'. */
export const countWords = (counts: BookCounts): string =>
  [
    ...few(counts.jobs, 'job', 'jobs'),
    ...few(counts.customers, 'customer', 'customers'),
    ...few(counts.papers, 'paper', 'papers'),
    ...few(counts.prices, 'price', 'prices'),
    ...few(counts.orders, 'order', 'orders'),
    ...few(counts.rackPieces, 'piece of the rack', 'pieces of the rack'),
  ].join(', ') || 'no jobs yet'

/** What is going on, with how far it is. */
export function workWords({ what, done, of }: WorkInHand): string {
  const doing = {
    'taking out': 'Taking the book out',
    looking: 'Looking it over',
    'bringing in': 'Bringing it in',
  }[what]
  return of > 0 ? `${doing}: ${Math.min(done, of)} of ${of} files` : doing
}

/** A guess of the time left, ms; undefined until enough files are done, and enough time went by, to guess by. */
export const carryLeft = (work: WorkInHand, elapsedMs: number): number | undefined =>
  guessLeft(work, elapsedMs, 3)
