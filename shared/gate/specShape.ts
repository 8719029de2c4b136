import * as v from 'valibot'

/**
 * The pieces a spec's schema is made of. Each carries one sentence saying what is accepted: it is the error's ending and the
 * description in the published JSON Schema, so the two can't disagree.
 */
const number = (accepts: string, min: number, max: number) =>
  v.pipe(
    v.number(accepts),
    v.finite(accepts),
    v.minValue(min, accepts),
    v.maxValue(max, accepts),
    v.description(accepts),
  )

/** The longest length any field takes, mm: past any gate, well short of where a slip of the keyboard does harm. */
export const longest = 10000

/** A size that must be there: over 0 up to max mm. */
export const size = (max = longest) => {
  const accepts = `a length in mm over 0 and up to ${max}`
  return v.pipe(
    v.number(accepts),
    v.finite(accepts),
    v.gtValue(0, accepts),
    v.maxValue(max, accepts),
    v.description(accepts),
  )
}

/** A gap, inset or trim: 0 up to max mm. */
export const allowance = (max = longest) => number(`a length in mm from 0 to ${max}`, 0, max)

export const angle = (max: number) => number(`an angle in degrees from 0 to ${max}`, 0, max)

export const amount = (what: string, min: number, max: number) =>
  number(`${what} from ${min} to ${max}`, min, max)

export const count = (min: number, max: number) => {
  const accepts = `a whole number from ${min} to ${max}`
  return v.pipe(
    v.number(accepts),
    v.integer(accepts),
    v.minValue(min, accepts),
    v.maxValue(max, accepts),
    v.description(accepts),
  )
}

export const text = (max = 200) => {
  const accepts = `a text of 1 to ${max} characters`
  return v.pipe(
    v.string(accepts),
    v.minLength(1, accepts),
    v.maxLength(max, accepts),
    // The store takes a text to end where this sign stands.
    v.regex(/^[^\0]*$/, accepts),
    v.description(accepts),
  )
}

export const choice = <const T extends readonly (string | number)[]>(...options: T) => {
  const accepts = `one of ${options.join(', ')}`
  return v.pipe(v.picklist(options, accepts), v.description(accepts))
}

export const flag = () => v.pipe(v.boolean('true or false'), v.description('true or false'))

export const list = <T extends v.GenericSchema>(item: T, most: number, what: string) => {
  const accepts = `a list of ${what}, ${most} at most`
  return v.pipe(v.array(item, accepts), v.maxLength(most, accepts), v.description(accepts))
}

/** What an entry accepts, in words: its own description, an object's keys, a variant's or a literal's message. */
function acceptedBy(entry: v.GenericSchema): string {
  const described = v.getDescription(entry as never)
  if (described !== undefined) return described
  if ('entries' in entry) return `an object with ${Object.keys(entry.entries as object).join(', ')}`
  if ('message' in entry && typeof entry.message === 'string') return entry.message
  return entry.expects
}

/** An object with these keys and no others. */
export const keys = <T extends v.ObjectEntries>(entries: T) =>
  v.strictObject(entries, (issue) => {
    const key = String(issue.path?.at(-1)?.key ?? '')
    if (Array.isArray(issue.path?.at(-1)?.input))
      return `list|an object with ${Object.keys(entries).join(', ')}`
    if (issue.expected === 'never') return `unknown key|${Object.keys(entries).join(', ')}`
    const entry = entries[key]
    if (entry === undefined) return `an object with ${Object.keys(entries).join(', ')}`
    return `missing|${acceptedBy(entry as v.GenericSchema)}`
  })
