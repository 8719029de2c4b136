import type { Design } from '../gate/designModel.ts'
import type { GateSpec } from '../gate/spec.ts'
import type { PaperHeader } from '../job/issuedPaper.ts'
import type { LengthUnit } from '../job/job.ts'
import type { PaperFormat } from './page.ts'

/** All a job card is made from. A draft says on every page that it isn't issued. */
export type JobCardInput = {
  header: PaperHeader
  spec: GateSpec
  design: Design
  unit: LengthUnit
  format: PaperFormat
  draft: boolean
}
