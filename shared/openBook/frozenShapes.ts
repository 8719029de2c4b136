import * as v from 'valibot'
import { parseDraft, parseSpec } from '../gate/parseSpec.ts'
import { parseBuyRequest } from '../cutting/buyingPlan/request.ts'
import { planShape } from '../ordering/planShape.ts'
import { parseShape } from '../gate/parseSpec.ts'
import { entryShape } from '../pricing/shapes.ts'
import type { Problem, Result } from '../problem.ts'

const anything = v.unknown()
const many = v.array(anything, 'a list')
const object = (entries: v.ObjectEntries) => v.looseObject(entries, 'a set of entries')
const text = v.string('a text')
const dayText = v.pipe(v.string('a day as 2026-03-02'), v.isoDate('a day as 2026-03-02'))

const problemsOf =
  (read: (value: unknown) => Result<unknown>) =>
  (value: unknown): Problem[] => {
    const result = read(value)
    return result.ok ? [] : result.problems
  }

/** A gate on its way with the words typed for its lengths, as a job keeps it. */
export const gateEntry = v.strictObject(
  { spec: anything, typed: v.record(text, text) },
  'a gate’s entries and what was typed for them',
)

const under = (key: string, problem: Problem): Problem => ({
  ...problem,
  field: problem.field === '' ? key : `${key}.${problem.field}`,
})

/** The gate of a job by its own rules. */
export const gateEntryProblems = (value: unknown): Problem[] =>
  v.is(gateEntry, value) ? problemsOf(parseDraft)(value.spec).map((problem) => under('spec', problem)) : []

/** The gate of an option, or none: the job's own. */
export const optionSpecProblems = (value: unknown): Problem[] =>
  value === null ? [] : problemsOf(parseSpec)(value)

/** A gate that is kept whole. */
export const gateProblems = problemsOf(parseSpec)

export const priceEntryProblems = problemsOf((value) => parseShape(entryShape, value))
export const planProblems = problemsOf((value) => parseShape(planShape, value))
export const buyRequestProblems = problemsOf(parseBuyRequest)

/** Two braces that share one cut, as an order keeps them. */
export const pairs = v.array(object({}), 'a list')

/** The cuts of one length: [{ length, mark }]. */
export const cuts = v.array(
  object({ length: v.pipe(v.number('a length in mm'), v.finite('a length in mm')) }),
  'a list of cuts',
)

/** Lengths in mm. */
export const lengths = v.array(
  v.pipe(v.number('a length in mm'), v.finite('a length in mm')),
  'a list of lengths in mm',
)

/** What stands at the head of a paper. What a paper froze is only read back, so its shape is looked at no deeper than readers go. */
export const paperHeader = object({
  workshop: text,
  number: text,
  title: text,
  customer: object({ name: text, address: text, town: text, phone: text, email: text }),
  due: v.nullable(text),
  notes: text,
  revision: v.number('a number'),
  issuedAt: v.nullable(text),
})

export const paperParts = object({ leaves: many, cuts: many, holes: anything, checks: many })

export const paperFigures = v.record(text, object({}), 'a set of entries')

export const quotedMoney = object({
  settings: object({}),
  times: object({}),
  on: dayText,
  validUntil: dayText,
  options: v.array(
    object({
      name: text,
      spec: object({}),
      description: many,
      needs: object({}),
      entry: object({}),
      estimate: object({}),
      offer: many,
    }),
    'a list of options',
  ),
})
