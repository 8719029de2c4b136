import type { Design } from '../gate/designModel.ts'
import type { GateSpec } from '../gate/spec.ts'
import type { PaperHeader } from '../job/issuedPaper.ts'
import type { LengthUnit } from '../job/job.ts'
import type { AppliedFinish } from '../describe/described.ts'
import type { Business } from '../pricing/shapes.ts'
import type { FullSizeChoice } from './fullSize/fullSizeChoice.ts'
import type { LabelChoice } from './labels/labelLayouts.ts'
import type { PaperFormat } from './page.ts'

/**
 * All a job card, and any other sheet of the same gate, is made from. A draft says on every page that it isn't issued. labels: what part labels
 * are printed on; fullSize: which full-size sheets, and the printer's error; handover: the workshop as it stands on a customer's paper and the finish it put on, for the care note.
 */
export type JobCardInput = {
  header: PaperHeader
  spec: GateSpec
  design: Design
  unit: LengthUnit
  format: PaperFormat
  draft: boolean
  labels?: LabelChoice
  fullSize?: FullSizeChoice
  handover?: Handover
}

/** finish: null for left bare, left out where nothing is known of it. */
export type Handover = { business: Business; finish?: AppliedFinish | null }
