import type { CutRow } from '../cutting/cutList.ts'
import type { SawSetting } from '../cutting/sawSetting.ts'
import type { Check } from './checks.ts'
import type { Figures } from './figures.ts'
import type { Hole } from './holes.ts'
import type { Leaf } from './leaf.ts'
import type { Step } from './steps.ts'

/** Version of the calculation rules. Raised whenever any figure could come out differently. */
export const engine = '1'

/** Everything worked out from a spec. With a stop among its checks it has no leaves and nothing else: never half a design. */
export type Design = {
  engine: string
  leaves: Leaf[]
  cuts: CutRow[]
  holes: Hole[]
  sawSettings: SawSetting[]
  checks: Check[]
  figures: Figures
  steps: Step[]
}

/** What is left when the gate can't be made as entered. */
export type StoppedDesign = { engine: string; leaves: []; checks: Check[] }

export type DesignOutcome = { made: true; design: Design } | { made: false; stopped: StoppedDesign }
