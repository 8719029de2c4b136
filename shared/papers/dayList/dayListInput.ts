import type { Design } from '../../gate/designModel.ts'
import type { GateSpec } from '../../gate/spec.ts'
import type { LengthUnit } from '../../job/job.ts'
import type { PaperFormat } from '../page.ts'

/** A job whose parts are cut that day. */
export type DayJob = { number: string; customer: string; title: string; spec: GateSpec; design: Design }

/** All a workshop day list is made from: the day (ISO), its jobs in the order they are wanted, and the workshop's own unit. */
export type DayListInput = {
  workshop: string
  day: string
  jobs: readonly DayJob[]
  unit: LengthUnit
  format: PaperFormat
}
