import { boardStates, fullBoardStates } from './boardStates.ts'
import { besideStates, handStates } from './handStates.ts'
import { askStates } from './askStates.ts'
import { firstStates, helpStates } from './helpStates.ts'
import { noteStates } from './noteStates.ts'
import { cardStates } from './cardStates.ts'
import { gateStates } from './gateStates.ts'
import { jobStates } from './jobStates.ts'
import { moneyStates } from './moneyStates.ts'
import { openBookStates } from './openBookStates.ts'
import { paperStates } from './paperStates.ts'
import { shellStates } from './shellStates.ts'
import { longPlanStates, timberStates } from './timberStates.ts'
import { wholeGateStates } from './wholeGateStates.ts'
import { workshopStates } from './workshopStates.ts'
import type { State } from './state.ts'

/**
 * Every screen in every state: what is pictured, and what is swept for faults of the look. One book serves them one after the other, so those that
 * want it as it began stand first, and those that leave it full last.
 */
export const everyState: readonly State[] = [
  ...firstStates,
  ...jobStates,
  ...boardStates,
  ...timberStates,
  ...moneyStates,
  ...noteStates,
  ...gateStates,
  ...handStates,
  ...besideStates,
  ...wholeGateStates,
  ...paperStates,
  ...cardStates,
  ...workshopStates,
  ...shellStates,
  ...openBookStates,
  ...helpStates,
  ...askStates,
  ...longPlanStates,
  ...fullBoardStates,
]
