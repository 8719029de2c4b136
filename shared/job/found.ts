import type { JobRow, Stage } from './job.ts'
import type { PromiseSpan } from './dueSpan.ts'

/** What is looked for in the book: words, and what a job must be besides. year: the one it was begun in; papers: whether any was issued. */
export type JobQuestion = {
  search: string
  stage: Stage | null
  year?: number | undefined
  customerId?: number | undefined
  papers?: boolean | undefined
  sample?: boolean | undefined
  promised?: PromiseSpan | undefined
}

/** The jobs found. limited: the words are so common that only the newest jobs with them were looked at. */
export type FoundJobs = { rows: JobRow[]; limited?: boolean }

/** Where a word was found that no column of the list shows. */
export const hiddenPlaces = ['notes', 'telephone', 'address', 'timber', 'kind'] as const
export type HiddenPlace = (typeof hiddenPlaces)[number]

/** A piece of what a job holds around a word looked for: the notes with what stands about it, or a whole short entry. */
export type FoundPiece = { id: number; place: HiddenPlace; words: string }
