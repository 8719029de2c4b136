import type { Design } from '../gate/designModel.ts'
import type { GateSpec } from '../gate/spec.ts'
import type { LengthUnit } from '../job/job.ts'
import { backElevation } from './backElevation.ts'
import type { Drawing } from './drawing.ts'
import { faceElevation } from './faceElevation.ts'
import { mirror } from './hand.ts'
import { section } from './section.ts'

export type GateDrawings = { back: Drawing; face: Drawing; section: Drawing }

/**
 * The three views of a gate's leaf, in model mm with figures in the job's unit. The hand turns the drawings over and touches nothing
 * else: a left-hung gate has its hinges at the left of the face and at the right of the back.
 */
export function gateDrawings(spec: GateSpec, design: Design, unit: LengthUnit): GateDrawings {
  const leaf = design.leaves[0]
  if (!leaf) throw new RangeError('a design without a leaf can’t be drawn')
  const back = backElevation(spec, leaf, unit)
  const face = faceElevation(spec, leaf, unit)
  const cut = section({ spec, design, leaf }, unit)
  return spec.hung === 'left'
    ? { back: mirror(back, leaf.width), face, section: cut }
    : { back, face: mirror(face, leaf.width), section: mirror(cut, leaf.width) }
}
