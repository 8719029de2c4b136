import type { SpanDays } from '../shared/job/dueSpan.ts'
import type { Stage } from '../shared/job/job.ts'

/**
 * What the jobs of a list must be. begun: moments (ISO) from and up to which they were taken in; due: days (ISO), both of them within; what is left
 * out is not asked.
 */
export type JobFilter = {
  stage?: Stage | null | undefined
  begun?: { from: string; until: string } | undefined
  customerId?: number | undefined
  papers?: boolean | undefined
  sample?: boolean | undefined
  inHand?: boolean | undefined
  due?: SpanDays | undefined
}

type Given = Record<string, string | number>
type Condition = { sql: string; given: Given } | undefined

const stageOf = ({ stage }: JobFilter): Condition =>
  stage ? { sql: 'jobs.stage = @stage', given: { stage } } : undefined

const begunIn = ({ begun }: JobFilter): Condition =>
  begun && { sql: 'jobs.created_at >= @from AND jobs.created_at < @until', given: begun }

const ofCustomer = ({ customerId }: JobFilter): Condition =>
  customerId === undefined
    ? undefined
    : { sql: 'jobs.customer_id = @customer', given: { customer: customerId } }

const withPapers = ({ papers }: JobFilter): Condition =>
  papers === undefined
    ? undefined
    : { sql: `${papers ? '' : 'NOT '}EXISTS (SELECT 1 FROM papers WHERE papers.job_id = jobs.id)`, given: {} }

const ofSample = ({ sample }: JobFilter): Condition =>
  sample === undefined ? undefined : { sql: `jobs.sample = ${sample ? 1 : 0}`, given: {} }

const stillInHand = ({ inHand }: JobFilter): Condition =>
  inHand ? { sql: `jobs.stage <> 'hung'`, given: {} } : undefined

function dueWithin({ due }: JobFilter): Condition {
  if (due === undefined) return undefined
  if (due === 'none') return { sql: 'jobs.due IS NULL', given: {} }
  const given: Given = {}
  if (due.from !== undefined) given['dueFrom'] = due.from
  if (due.upTo !== undefined) given['dueUpTo'] = due.upTo
  const from = due.from === undefined ? [] : ['jobs.due >= @dueFrom']
  const upTo = due.upTo === undefined ? [] : ['jobs.due <= @dueUpTo']
  return { sql: [...from, ...upTo, 'jobs.due IS NOT NULL'].join(' AND '), given }
}

const conditions = [stageOf, begunIn, ofCustomer, withPapers, ofSample, stillInHand, dueWithin]

/** The filter as conditions on `jobs`, each begun with AND, and the values they name. */
export function filterSql(filter: JobFilter): { sql: string; given: Given } {
  const asked = conditions.flatMap((condition) => condition(filter) ?? [])
  return {
    sql: asked.map(({ sql }) => ` AND ${sql}`).join(''),
    given: Object.assign({}, ...asked.map(({ given }) => given)) as Given,
  }
}
