import * as v from 'valibot'
import { fieldTexts } from './fieldTexts.ts'
import { parseShape } from '../gate/parseSpec.ts'
import { bad, good, type Result } from '../problem.ts'
import type { Customer, Job } from './job.ts'

/** A job's own fields outside the gate, by the path a change names them with. */
const shapes = {
  title: fieldTexts.short,
  stage: fieldTexts.stage,
  due: v.nullable(fieldTexts.day),
  notes: fieldTexts.long,
  unit: fieldTexts.unit,
  'customer.name': fieldTexts.short,
  'customer.address': fieldTexts.short,
  'customer.town': fieldTexts.short,
  'customer.phone': fieldTexts.short,
  'customer.email': fieldTexts.short,
}

export type JobFieldPath = keyof typeof shapes

export const isJobField = (path: string): path is JobFieldPath => Object.hasOwn(shapes, path)

const isRealDay = (day: string): boolean => {
  const [year = 0, month = 0, date = 0] = day.split('-').map(Number)
  const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0
  return date <= ([31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month - 1] ?? 0)
}

/** Reads a new value for one of a job's own fields; the problem stands at the field's path. */
export function readJobField(path: JobFieldPath, value: unknown): Result<unknown> {
  const read = parseShape(shapes[path], value)
  if (!read.ok) return { ok: false, problems: read.problems.map((problem) => ({ ...problem, field: path })) }
  if (path === 'due' && typeof read.value === 'string' && !isRealDay(read.value))
    return bad({
      code: 'refused',
      field: path,
      message: `got '${read.value}', which is no day of the calendar`,
    })
  return good(read.value)
}

const customerKey = (path: JobFieldPath): string | undefined =>
  path.startsWith('customer.') ? path.slice('customer.'.length) : undefined

export function jobFieldAt(job: Job, path: JobFieldPath): unknown {
  const key = customerKey(path)
  return key === undefined ? job[path as 'title'] : job.customer[key as keyof Customer]
}

/** The job with another value in one field. The value must have come through `readJobField`. */
export function withJobField(job: Job, path: JobFieldPath, value: unknown): Job {
  const key = customerKey(path)
  return key === undefined
    ? { ...job, [path]: value }
    : { ...job, customer: { ...job.customer, [key]: value } }
}
