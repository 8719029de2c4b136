import type { Job, Stage } from '../shared/job/job.ts'
import { smallWords } from '../shared/job/soughtWords.ts'
import { gateWords } from '../shared/job/gateWords.ts'
import { inchParts } from '../shared/units/inch.ts'
import { writeShortMm } from '../shared/units/writeLength.ts'
import type { Connection } from './connection.ts'
import { measuredSizes } from '../shared/gate/measuredSizes.ts'

/** More words than anyone types; the rest are not looked for. */
const mostWords = 12

/** The words typed that are looked for: every run of letters and digits, small words left out unless there are no others. */
export function wordsTyped(search: string): string[] {
  const typed = search.normalize('NFC').match(/[\p{L}\p{N}\p{M}]+/gu) ?? []
  const telling = typed.filter((word) => !smallWords.has(word.toLowerCase()))
  return (telling.length > 0 ? telling : typed).slice(0, mostWords)
}

/**
 * What a person typed, as a question to the word index: each word is looked for as a word's beginning, all of them must be found. Each is quoted, so
 * that no sign the index gives a meaning to gets through. '' when there is nothing to look for.
 * wordsSought(`Müller 5' 11"`) is `"Müller"* "5"* "11"*`.
 */
export const wordsSought = (search: string): string =>
  wordsTyped(search)
    .map((word) => `"${word}"*`)
    .join(' ')

/**
 * A stage as a word of the index. It begins with a sign kept for private use, which the index takes for a letter and nobody types: typing h
 * doesn't find all that is hung.
 */
const stageWord = (stage: Stage): string => `\uE000${stage}`

/** The same question put to one stage's jobs. */
export const atStage = (question: string, stage: Stage | null): string =>
  stage === null ? question : `${question} "${stageWord(stage)}"`

/** A length as it may be looked for: 1803.4 as mm, whole mm, inches and feet: `1803.4 1803 71 5 11`, 930.275 with `36 5/8`. */
function sizeWords(mm: number | null): string {
  if (mm === null) return ''
  const { whole, numerator, denominator } = inchParts(mm, 16)
  const fraction = numerator === 0 ? '' : ` ${numerator}/${denominator}`
  const feet = `${Math.floor(whole / 12)} ${whole % 12}${fraction}`
  return `${writeShortMm(mm, 1)} ${Math.floor(mm)} ${whole}${fraction} ${feet}`
}

/** What a job is found by, in the order of the index's columns. */
function jobCells({ id, number, customer, title, notes, stage, entry }: Job): (number | string)[] {
  const { name, address, town, phone } = customer
  const sizes = measuredSizes(entry.spec.size).map(({ mm }) => sizeWords(mm))
  const words = [number, name, address, town, phone, title, notes, sizes.join(' '), gateWords(entry.spec)]
  return [id, ...words.map((text) => text.normalize('NFC')), stageWord(stage)]
}

/** The word index's columns after its row number: what `jobCells` gives. */
export const jobWordColumns =
  'rowid, number, customer, address, town, phone, title, notes, sizes, gate, stage'

export type SearchRoom = {
  /** Notes the words a job is found by: again after each change. */
  keepJob: (job: Job) => void
  forgetJob: (id: number) => void
  keepCustomer: (customer: Job['customer']) => void
  forgetCustomer: (id: number) => void
}

/** The word index over jobs and customers. Called inside the writing that changes them, so that both stand or fall together. */
export function searchRoom({ db }: Connection): SearchRoom {
  const dropJob = db.prepare('DELETE FROM job_words WHERE rowid = ?')
  const addJob = db.prepare(
    `INSERT INTO job_words (${jobWordColumns}) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
  )
  const dropCustomer = db.prepare('DELETE FROM customer_words WHERE rowid = ?')
  const addCustomer = db.prepare('INSERT INTO customer_words (rowid, name, town, phone) VALUES (?, ?, ?, ?)')
  return {
    keepJob: (job) => {
      dropJob.run(job.id)
      addJob.run(...jobCells(job))
    },
    forgetJob: (id) => void dropJob.run(id),
    keepCustomer: ({ id, name, town, phone }) => {
      dropCustomer.run(id)
      addCustomer.run(id, name.normalize('NFC'), town.normalize('NFC'), phone)
    },
    forgetCustomer: (id) => void dropCustomer.run(id),
  }
}
