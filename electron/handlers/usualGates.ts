import { parseSpec } from '../../shared/gate/parseSpec.ts'
import { bad, good, type Problem } from '../../shared/problem.ts'
import type { Handler } from './context.ts'
import { missing } from './missing.ts'

const nameTaken: Problem = {
  code: 'refused',
  field: 'name',
  message: 'There is a usual gate of that name already. Give this one another.',
}

export const listUsualGates: Handler<'usual.list'> = ({ book }) => good(book.usualGates.list())

/** Keeps a gate under a name. Only a whole gate that keeps the rules between its entries can be drawn again. */
export const addUsualGate: Handler<'usual.add'> = ({ book }, { name, unit, spec }) => {
  const read = parseSpec(spec)
  if (!read.ok)
    return bad(...read.problems.map((problem) => ({ ...problem, field: `spec.${problem.field}` })))
  return book.usualGates.add({ name, unit, spec: read.value }) ? good(book.usualGates.list()) : bad(nameTaken)
}

export const renameUsualGate: Handler<'usual.rename'> = ({ book }, { id, name }) => {
  if (!book.usualGates.one(id)) return bad(missing('id', 'usual gate'))
  return book.usualGates.rename(id, name) ? good(book.usualGates.list()) : bad(nameTaken)
}

export const removeUsualGate: Handler<'usual.remove'> = ({ book }, { id }) =>
  book.usualGates.remove(id) ? good(book.usualGates.list()) : bad(missing('id', 'usual gate'))

/** The gate of an issued paper as it was frozen, to be drawn beside another. */
export const gateOfPaper: Handler<'papers.gate'> = ({ book }, { id }) => {
  const frozen = book.papers.frozen(id)
  if (!frozen) return bad(missing('id', 'paper'))
  const read = parseSpec(frozen.spec)
  if (read.ok) return good({ spec: read.value })
  return bad({
    code: 'refused',
    field: 'id',
    message:
      'That paper’s gate was made by other rules and can’t be drawn anew. The paper itself opens as it was.',
  })
}
