import { mostOptions, type OptionEntry } from '../../db/options.ts'
import { parseSpec } from '../../shared/gate/parseSpec.ts'
import { bad, good, type Problem, type Result } from '../../shared/problem.ts'
import type { Handler } from './context.ts'
import { foundOr, missing } from './missing.ts'

const changedMeanwhile: Problem = {
  code: 'changed-meanwhile',
  field: '',
  message: 'this option was changed meanwhile in another window; look it over, then change it again',
}

/** An option whose gate, where it has one of its own, keeps the rules between its fields. */
function readOption({ name, spec, entry }: OptionEntry): Result<OptionEntry> {
  const named = { name: name.trim(), spec, entry }
  if (spec === null) return good(named)
  const read = parseSpec(spec)
  if (read.ok) return good({ ...named, spec: read.value })
  return bad(...read.problems.map((problem) => ({ ...problem, field: `option.spec.${problem.field}` })))
}

export const listOptions: Handler<'options.list'> = ({ book }, { jobId }) =>
  book.jobs.open(jobId) ? good(book.options.list(jobId)) : bad(missing('jobId', 'job'))

export const addOption: Handler<'options.add'> = ({ book }, { jobId, option }) => {
  if (!book.jobs.open(jobId)) return bad(missing('jobId', 'job'))
  const read = readOption(option)
  if (!read.ok) return read
  const made = book.options.add(jobId, read.value)
  if (made) return good(made)
  return bad({
    code: 'refused',
    field: '',
    message: `a job has up to ${mostOptions} options; take one out first`,
  })
}

/** Refused when another window has changed the option since: an entry is one whole, and two can't both stand. */
export const changeOption: Handler<'options.change'> = ({ book }, { id, version, option }) => {
  if (!book.options.one(id)) return bad(missing('id', 'option'))
  const read = readOption(option)
  if (!read.ok) return read
  const changed = book.options.change(id, version, read.value)
  return changed ? good(changed) : bad(changedMeanwhile)
}

export const removeOption: Handler<'options.remove'> = ({ book }, { id }) => {
  const found = foundOr(book.options.one(id), 'id', 'option')
  if (!found.ok) return found
  book.options.remove(id)
  return good(book.options.list(found.value.jobId))
}
