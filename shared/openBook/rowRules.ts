import { parseShape } from '../gate/parseSpec.ts'
import { itemFacts } from '../pricing/shapes.ts'
import type { Problem } from '../problem.ts'
import type { OpenRow, TableName } from './tables.ts'

/** What needs a whole row: a price line's facts go by its kind. */
export const rowRules: Partial<Record<TableName, (row: OpenRow) => Problem[]>> = {
  items: ({ kind, name, facts }) => {
    const read = parseShape(itemFacts, { kind, name, facts })
    return read.ok ? [] : read.problems
  },
}
