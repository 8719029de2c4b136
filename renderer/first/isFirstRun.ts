import type { BookSummary } from '../../shared/contract.ts'

/** Whether nobody has begun with this book: no question answered, and no job but the invented ones. */
export const isFirstRun = (summary: BookSummary | null): boolean =>
  summary !== null && !summary.settings.welcomed && summary.jobs === summary.sampleJobs
