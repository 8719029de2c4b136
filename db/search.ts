import type { Job } from '../shared/job/job.ts'
import { inchParts } from '../shared/units/inch.ts'
import { writeShortMm } from '../shared/units/writeLength.ts'
import type { Connection } from './connection.ts'
import { measuredSizes } from '../shared/gate/measuredSizes.ts'

/** More words than anyone types; the rest are not looked for. */
const mostWords = 12

/**
 * What a person typed, as a question to the word index: every run of letters and digits is looked for as a word's beginning, all of them
 * must be found. Each is quoted, so that no sign the index gives a meaning to gets through. '' when there is nothing to look for.
 * wordsSought(`Müller 5' 11"`) is `"Müller"* "5"* "11"*`.
 */
export const wordsSought = (search: string): string =>
  (search.normalize('NFC').match(/[\p{L}\p{N}\p{M}]+/gu) ?? [])
    .slice(0, mostWords)
    .map((word) => `"${word}"*`)
    .join(' ')

/** A length as it may be looked for: 1803.4 as mm, whole mm, inches and feet: `1803.4 1803 71 5 11`, 930.275 with `36 5/8`. */
function sizeWords(mm: number | null): string {
  if (mm === null) return ''
  const { whole, numerator, denominator } = inchParts(mm, 16)
  const fraction = numerator === 0 ? '' : ` ${numerator}/${denominator}`
  const feet = `${Math.floor(whole / 12)} ${whole % 12}${fraction}`
  return `${writeShortMm(mm, 1)} ${Math.floor(mm)} ${whole}${fraction} ${feet}`
}

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
    'INSERT INTO job_words (rowid, number, customer, town, phone, title, notes, sizes) VALUES (?, ?, ?, ?, ?, ?, ?, ?)',
  )
  const dropCustomer = db.prepare('DELETE FROM customer_words WHERE rowid = ?')
  const addCustomer = db.prepare('INSERT INTO customer_words (rowid, name, town, phone) VALUES (?, ?, ?, ?)')
  return {
    keepJob: (job) => {
      const { size } = job.entry.spec
      const { name, town, phone } = job.customer
      dropJob.run(job.id)
      addJob.run(
        job.id,
        job.number,
        name.normalize('NFC'),
        town.normalize('NFC'),
        phone,
        job.title.normalize('NFC'),
        job.notes.normalize('NFC'),
        measuredSizes(size)
          .map(({ mm }) => sizeWords(mm))
          .join(' '),
      )
    },
    forgetJob: (id) => void dropJob.run(id),
    keepCustomer: ({ id, name, town, phone }) => {
      dropCustomer.run(id)
      addCustomer.run(id, name.normalize('NFC'), town.normalize('NFC'), phone)
    },
    forgetCustomer: (id) => void dropCustomer.run(id),
  }
}
