import * as v from 'valibot'
import { day, rowId } from '../pricing/shapes.ts'
import { happeningKinds, type HappeningPage } from '../happened/happening.ts'
import { mostNoteWords, type JobNote, type JobNotes } from './note.ts'
import {
  longestSide,
  mostPhotographBytes,
  mostPhotographWords,
  mostThumbnailBytes,
  type Photograph,
  type ShownPhotograph,
} from './photograph.ts'

const noteWords = v.pipe(
  v.string('a text'),
  v.maxLength(mostNoteWords, `a text of up to ${mostNoteWords} characters`),
  v.check((words) => words.trim() !== '', 'a text with something in it'),
)
const clock = v.pipe(v.string('a time as 14:05'), v.regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'a time as 14:05'))
const base64Of = (bytes: number, what: string) =>
  v.pipe(
    v.string(what),
    v.minLength(4, what),
    v.maxLength(Math.ceil(bytes / 3) * 4, `${what} of up to ${(bytes / 1e6).toFixed(2)} MB`),
    v.regex(/^[A-Za-z0-9+/]+={0,2}$/, what),
  )
const dots = v.pipe(
  v.number(`a whole number from 1 to ${longestSide}`),
  v.integer(`a whole number from 1 to ${longestSide}`),
  v.minValue(1, `a whole number from 1 to ${longestSide}`),
  v.maxValue(longestSide, `a whole number from 1 to ${longestSide}`),
)
const photographWords = v.pipe(
  v.string('a text'),
  v.maxLength(mostPhotographWords, `a text of up to ${mostPhotographWords} characters`),
)
const away = v.boolean('yes or no')

/** What the requests of a job's notes, photographs and log take; `NotesReplies` says what each gives. */
export const notesTakes = {
  /** all: also those older than the newest hundred. */
  'notes.list': v.strictObject({ jobId: rowId, all: v.boolean('yes or no') }),
  'notes.add': v.strictObject({ jobId: rowId, words: noteWords, on: day, at: clock }),
  'notes.mend': v.strictObject({ id: rowId, words: noteWords, on: day, at: clock }),
  'notes.putAway': v.strictObject({ id: rowId, away }),
  'photographs.list': v.strictObject({ jobId: rowId }),
  'photographs.add': v.strictObject({
    jobId: rowId,
    base64: base64Of(mostPhotographBytes, 'a photograph'),
    thumbnail: base64Of(mostThumbnailBytes, 'a small picture'),
    ...{ width: dots, height: dots, words: photographWords },
  }),
  'photographs.bytes': v.strictObject({ id: rowId }),
  'photographs.describe': v.strictObject({ id: rowId, words: photographWords }),
  'photographs.putAway': v.strictObject({ id: rowId, away }),
  /** before: only the lines older than that one, counted from the oldest; null for the newest. */
  'happened.list': v.strictObject({
    jobId: rowId,
    kind: v.nullable(v.picklist(happeningKinds, `one of ${happeningKinds.join(', ')}`)),
    before: v.nullable(rowId),
  }),
} as const

export type NotesReplies = {
  'notes.list': JobNotes
  'notes.add': JobNote
  'notes.mend': JobNote
  'notes.putAway': JobNote
  'photographs.list': ShownPhotograph[]
  'photographs.add': ShownPhotograph
  'photographs.bytes': { photograph: Photograph; base64: string }
  'photographs.describe': Photograph
  'photographs.putAway': Photograph
  'happened.list': HappeningPage
}
