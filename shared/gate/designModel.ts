import type { CutRow } from '../cutting/cutList.ts'
import type { SawSetting } from '../cutting/sawSetting.ts'
import type { Fitting } from '../ironmongery/fitting.ts'
import type { Check } from './checks.ts'
import type { Figures } from './figures.ts'
import type { Hole } from './holes.ts'
import type { HangingLeaf } from './leaf.ts'
import type { LeafSwing } from './leafSwing.ts'
import type { Movement } from './movement.ts'
import type { Step } from './steps/step.ts'

/** Version of the calculation rules. Raised whenever any figure could come out differently. */
export const engine = '3'

/**
 * Everything worked out from a spec. movement: how the boarding moves with the air, null without a climate; swing: one a leaf, in their
 * order, none for a leaf whose pin stands past it; fittings: every piece of ironmongery in its place. With a stop among its checks it has no leaves and nothing else: never half a design.
 */
export type Design = {
  engine: string
  leaves: HangingLeaf[]
  cuts: CutRow[]
  holes: Hole[]
  sawSettings: SawSetting[]
  movement: Movement | null
  swing: LeafSwing[]
  fittings: Fitting[]
  checks: Check[]
  figures: Figures
  steps: Step[]
}

/** What is left when the gate can't be made as entered. */
export type StoppedDesign = { engine: string; leaves: []; checks: Check[] }

export type DesignOutcome = { made: true; design: Design } | { made: false; stopped: StoppedDesign }
