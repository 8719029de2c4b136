import * as v from 'valibot'
import type { Problem, Result } from '../problem.ts'
import { draftShape, specShape, type DraftSpec, type GateSpec } from './spec.ts'
import { specProblems } from './specRules.ts'
import { strangeKeys } from './strangeKeys.ts'

/** A text from outside without its control characters, which could move the cursor of whoever reads the message. */
const printable = (text: string): string => text.replace(/\p{Cc}+/gu, ' ')

/** What came, short enough to print: texts quoted and cut, objects and lists named. */
export function received(input: unknown): string {
  if (input === undefined) return 'nothing'
  if (input === null) return 'null'
  if (typeof input === 'string') return `'${printable(input.length > 40 ? `${input.slice(0, 40)}…` : input)}'`
  if (Array.isArray(input)) return `a list of ${input.length}`
  if (typeof input === 'object') return 'an object'
  return String(input)
}

/** The keys that lead to a field as messages write them: 'supplier.lines[3].name'. */
export const pathOf = (keys: readonly unknown[]): string =>
  keys.reduce<string>((path, key) => {
    if (typeof key === 'number') return `${path}[${key}]`
    const name = printable(String(key).slice(0, 60))
    return path === '' ? name : `${path}.${name}`
  }, '')

const keysOf = (issue: v.BaseIssue<unknown>): unknown[] => (issue.path ?? []).map((item) => item.key)

const unknownKey = (field: string, accepted: string): Problem => ({
  code: 'unknown-key',
  field,
  message: `unknown key, accepted here are ${accepted}`,
})

/** What a schema asks for by its own word, in ours. */
const asked: Record<string, string> = {
  Object: 'an object',
  Array: 'a list',
  string: 'a text',
  number: 'a number',
  boolean: 'yes or no',
  never: 'none of such a name',
}

/** What is accepted: in a shape's own words, else by what it asks for. The schema's own sentence would hold all that came, however long. */
function acceptedBy({ message, expected }: v.BaseIssue<unknown>): string {
  if (!message.startsWith('Invalid ')) return message
  return asked[expected ?? ''] ?? (expected ?? 'something else').slice(0, 200)
}

/** One problem from one issue of the schema: the field, what came, what is accepted. */
export function problemFrom(issue: v.BaseIssue<unknown>): Problem {
  const field = pathOf(keysOf(issue))
  const [kind, accepted] = issue.message.split('|')
  if (kind === 'unknown key') return unknownKey(field, accepted ?? '')
  if (kind === 'list') {
    const list = issue.path?.at(-1)?.input
    return {
      code: 'refused',
      field: pathOf(keysOf(issue).slice(0, -1)),
      message: `got ${received(list)}, accepted is ${accepted}`,
    }
  }
  if (kind === 'missing') return { code: 'missing', field, message: `missing, accepted is ${accepted}` }
  if (issue.input === undefined && issue.message.startsWith('Invalid key'))
    return { code: 'missing', field, message: 'missing' }
  const accepts = acceptedBy(issue)
  if (issue.input === undefined) return { code: 'missing', field, message: `missing, accepted is ${accepts}` }
  return { code: 'refused', field, message: `got ${received(issue.input)}, accepted is ${accepts}` }
}

/** The schema reports only the first key of an object that it doesn't know: here each has its own problem. */
function unknownKeys(issue: v.BaseIssue<unknown>): Problem[] {
  const at = issue.path?.at(-1)
  const [kind, accepted] = issue.message.split('|')
  if (kind !== 'unknown key' || at === undefined || accepted === undefined) return []
  const known = accepted.split(', ')
  return Object.keys(at.input as object)
    .filter((key) => !known.includes(key))
    .map((key) => unknownKey(pathOf([...keysOf(issue).slice(0, -1), key]), accepted))
}

/** All problems of an input against a schema, one a field; or the value. */
export function parseShape<T extends v.GenericSchema>(shape: T, input: unknown): Result<v.InferOutput<T>> {
  const parsed = v.safeParse(shape, input)
  if (parsed.success) return { ok: true, value: parsed.output }
  const byField = new Map<string, Problem>()
  for (const issue of parsed.issues) {
    const several = unknownKeys(issue)
    for (const problem of several.length > 0 ? several : [problemFrom(issue)])
      if (!byField.has(problem.field)) byField.set(problem.field, problem)
  }
  return { ok: false, problems: [...byField.values()] }
}

/** Reads an input by its shape and then by rules that need the whole of it. All problems of the one that fails first. */
export function parseBy<T extends v.GenericSchema>(
  shape: T,
  rules: (value: v.InferOutput<T>) => Problem[],
  input: unknown,
): Result<v.InferOutput<T>> {
  const strange = strangeKeys(input).map((path) => unknownKey(pathOf(path), 'none of such a name'))
  const shaped = parseShape(shape, input)
  if (!shaped.ok) {
    const told = new Set(shaped.problems.map(({ field }) => field))
    return { ok: false, problems: [...shaped.problems, ...strange.filter(({ field }) => !told.has(field))] }
  }
  if (strange.length > 0) return { ok: false, problems: strange }
  const problems = rules(shaped.value)
  return problems.length > 0 ? { ok: false, problems } : shaped
}

/** Reads a spec from outside: shape, then the rules between keys. */
export const parseSpec = (input: unknown): Result<GateSpec> => parseBy(specShape, specProblems, input)

/** Reads a draft: as `parseSpec`, but the leaf's sizes may still be missing. */
export const parseDraft = (input: unknown): Result<DraftSpec> => parseBy(draftShape, specProblems, input)

/** A draft's sizes when all of them are there. */
function wholeSize(size: DraftSpec['size']): GateSpec['size'] | undefined {
  if (size.from === 'leaf') {
    const { width, height } = size
    return width === null || height === null ? undefined : { ...size, width, height }
  }
  const [top, middle, foot] = size.widths
  const [hanging, closing] = size.heights
  if (top === null || middle === null || foot === null || hanging === null || closing === null)
    return undefined
  return { ...size, widths: [top, middle, foot], heights: [hanging, closing] }
}

/** The whole spec of a draft, once its sizes are there. */
export function specOf(draft: DraftSpec): GateSpec | undefined {
  const size = wholeSize(draft.size)
  return size && { ...draft, size }
}
