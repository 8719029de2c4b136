import { writeSync } from 'node:fs'
import { openBook } from '../../db/open.ts'
import { newJobFor } from './powerCutJob.ts'

// Run as its own process by the power cut test: makes jobs and changes them without a pause, and says each one only once it is kept.
const [path = '', round = ''] = process.argv.slice(2)
const book = openBook(path, { now: () => new Date().toISOString() })

for (let place = 1; ; place += 1) {
  const title = `round ${round} job ${place}`
  const job = book.jobs.create(newJobFor(title))
  book.jobs.change(job.id, [{ path: 'spec.size.width', value: 500 + place, typed: String(500 + place) }])
  writeSync(1, `${JSON.stringify({ id: job.id, title, width: 500 + place })}\n`)
}
