import { parseShape } from '../../shared/gate/parseSpec.ts'
import type { OpenRow, TableName } from '../../shared/openBook/tables.ts'
import type { Problem } from '../../shared/problem.ts'
import { settingShapes } from '../settings.ts'

const isSetting = (key: unknown): key is keyof typeof settingShapes =>
  typeof key === 'string' && Object.hasOwn(settingShapes, key)

/** What is wrong with a setting's value; a setting that isn't one of the workshop's own may hold anything. */
export function settingProblem(at: { table: TableName; row: OpenRow; where: string }): Problem | undefined {
  const { table, row, where } = at
  const { key, value } = row
  if (table !== 'settings' || !isSetting(key)) return undefined
  const read = parseShape(settingShapes[key], value)
  const [problem] = read.ok ? [] : read.problems
  return (
    problem && {
      ...problem,
      field: [`${where}.value`, problem.field].filter((part) => part !== '').join('.'),
    }
  )
}
