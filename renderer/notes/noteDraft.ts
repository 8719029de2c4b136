const place = (jobId: number): string => `bracework.unsent.note.${jobId}`

/** The words of a note that was begun and not yet written down, kept in the window so that nothing typed is lost; '' when there are none. */
export const draftOf = (jobId: number): string => window.localStorage.getItem(place(jobId)) ?? ''

export function keepDraft(jobId: number, words: string): void {
  if (words === '') window.localStorage.removeItem(place(jobId))
  else window.localStorage.setItem(place(jobId), words)
}
