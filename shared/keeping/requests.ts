import * as v from 'valibot'
import { rowId } from '../pricing/shapes.ts'
import type {
  BackedUp,
  BookCopy,
  InsideCopy,
  KeepingState,
  PapersGoneOver,
  Salvaged,
} from './keepingModel.ts'
import type { WorkStands } from './workStands.ts'

const nothing = v.strictObject({})
const copyName = v.pipe(
  v.string('the name of a copy'),
  v.maxLength(300, 'the name of a copy'),
  // A copy is named, never where it lies: nothing that could lead out of the folder.
  v.regex(/^[^/\\\0]+$/, 'the name of a copy'),
)
const folder = v.pipe(
  v.string('a folder'),
  v.trim(),
  v.minLength(1, 'a folder'),
  v.maxLength(1000, 'a folder of up to 1000 letters'),
  v.regex(/^[^\0]*$/, 'a folder'),
)

/** What the requests about copies and damage take: `KeepingReplies` says what each gives. */
export const keepingTakes = {
  'keeping.state': nothing,
  'keeping.inside': v.strictObject({ name: copyName }),
  'keeping.copy': nothing,
  'keeping.restore': v.strictObject({ name: copyName }),
  'keeping.salvage': nothing,
  'keeping.fresh': nothing,
  'keeping.again': nothing,
  'keeping.chooseFolder': nothing,
  'keeping.backUp': v.strictObject({ folder }),
  'keeping.putOff': nothing,
  'keeping.putAway': nothing,
  'keeping.goOver': nothing,
  'keeping.inHand': nothing,
  'keeping.stopWork': nothing,
  'keeping.putBack': v.strictObject({ paperId: rowId }),
} as const

export type KeepingReplies = {
  'keeping.state': KeepingState
  'keeping.inside': InsideCopy
  'keeping.copy': BookCopy
  'keeping.restore': KeepingState
  'keeping.salvage': Salvaged
  'keeping.fresh': KeepingState
  'keeping.again': KeepingState
  'keeping.chooseFolder': { folder: string | null }
  'keeping.backUp': BackedUp
  'keeping.putOff': KeepingState
  'keeping.putAway': KeepingState
  'keeping.goOver': PapersGoneOver
  'keeping.inHand': WorkStands | null
  'keeping.stopWork': { stopped: boolean }
  'keeping.putBack': PapersGoneOver
}
