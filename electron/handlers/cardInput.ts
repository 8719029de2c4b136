import { isStop } from '../../shared/gate/checks.ts'
import { design } from '../../shared/gate/design.ts'
import type { Design } from '../../shared/gate/designModel.ts'
import { parseSpec, specOf } from '../../shared/gate/parseSpec.ts'
import type { GateSpec } from '../../shared/gate/spec.ts'
import type { PaperHeader } from '../../shared/job/issuedPaper.ts'
import type { Job, Paper } from '../../shared/job/job.ts'
import { unreadWords, type Unread } from '../../shared/job/unreadWords.ts'
import { bad, good, type Problem, type Result } from '../../shared/problem.ts'
import type { Context } from './context.ts'
import { measuredSizes, type MeasuredSize } from '../../shared/gate/measuredSizes.ts'

/** A gate that can be made: its whole spec and what follows from it. */
export type MakeableGate = { spec: GateSpec; design: Design }

const missingSize = ({ path, called }: MeasuredSize): Problem => ({
  code: 'missing',
  field: `spec.${path}`,
  message: `the ${called} is missing; type it in first`,
})

const unread = ({ field, words }: Unread): Problem => ({
  code: 'unread',
  field: `spec.${field}`,
  message: `‘${words}’ isn’t settled yet; type the length so that it can mean one thing only`,
})

/** The job's gate worked out, or why no card can be made of it: each missing size, or each stop with its remedy. */
export function makeableGate(job: Job): Result<MakeableGate> {
  const { spec: draft } = job.entry
  const unsettled = unreadWords(job.entry, job.unit)
  if (unsettled.length > 0) return bad(...unsettled.map(unread))
  const whole = specOf(draft)
  if (!whole)
    return bad(
      ...measuredSizes(draft.size)
        .filter(({ mm }) => mm === null)
        .map(missingSize),
    )
  return makeableSpec(whole)
}

/** A whole gate worked out, or each stop with its remedy. */
export function makeableSpec(whole: GateSpec): Result<MakeableGate> {
  const spec = parseSpec(whole)
  if (!spec.ok) return spec
  const outcome = design(spec.value)
  if (outcome.made) return good({ spec: spec.value, design: outcome.design })
  const stops = outcome.stopped.checks.filter(isStop)
  return bad(
    ...stops.map(({ field, message, remedy }) => ({
      code: 'stop',
      field: field === '' ? '' : `spec.${field}`,
      message: `${message} ${remedy}`.trim(),
    })),
  )
}

/** A paper's head for a job as it stands. issuedAt null for a draft. */
export function headerOf(
  { book, dayOf }: Pick<Context, 'book' | 'dayOf'>,
  job: Job,
  { kind, issuedAt }: { kind: Paper['kind']; issuedAt: string | null },
): PaperHeader {
  const { name, address, town, phone, email } = job.customer
  return {
    workshop: book.settings.read().name,
    number: job.number,
    title: job.title,
    customer: { name, address, town, phone, email },
    due: job.due,
    notes: job.notes,
    revision: book.papers.nextRevision(job.id, kind),
    issuedAt,
    issuedOn: issuedAt === null ? null : dayOf(issuedAt),
  }
}
