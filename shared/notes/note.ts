/** The most a note of one day may hold, signs: some four pages. */
export const mostNoteWords = 8000

/** A dated note of a job. place: its number among the job's own; on and at: day (ISO) and time ('14:05') by the calendar and clock on the wall; mendedAt: when its words were last put right. */
export type JobNote = {
  id: number
  jobId: number
  place: number
  words: string
  on: string
  at: string
  addedAt: string
  mendedAt: string | null
}

/** A job's notes, the newest day first. more: so many older ones weren't given. */
export type JobNotes = { notes: JobNote[]; more: number }
