import type { Design } from '../gate/designModel.ts'
import type { GateSpec } from '../gate/spec.ts'
import type { LengthUnit } from '../job/job.ts'
import { backElevation } from './backElevation.ts'
import type { Drawing } from './drawing.ts'
import type { GateView } from './elevation.ts'
import { faceElevation } from './faceElevation.ts'
import { withSources } from './figureSources.ts'
import { figureText } from './figureText.ts'
import { mirror } from './hand.ts'
import { placeLeaves } from './placeLeaves.ts'
import { section } from './section.ts'
import { stileSection } from './stileSection.ts'

export type GateDrawings = { back: Drawing; face: Drawing; section: Drawing }

/** A gate made ready to be drawn: its leaves in their places, its figures in the job's unit. */
export const gateView = (spec: GateSpec, design: Design, unit: LengthUnit): GateView => ({
  spec,
  design,
  placing: placeLeaves(spec, design),
  figures: figureText(unit),
})

/**
 * The three views of a gate, all its leaves in each elevation, in model mm with figures in the job's unit. The hand turns the drawings
 * over and touches nothing else: a left-hung gate has its (first leaf's) hinges at the left of the face and at the right of the back.
 */
export function gateDrawings(spec: GateSpec, design: Design, unit: LengthUnit): GateDrawings {
  const view = gateView(spec, design, unit)
  const [leaf] = design.leaves
  if (!leaf) throw new RangeError('a design without a leaf can’t be drawn')
  const { width } = view.placing
  const back = withSources(backElevation(view), view)
  const face = withSources(faceElevation(view), view)
  const cut = withSources(
    spec.frame
      ? stileSection({ spec, leaf }, spec.frame, view.figures)
      : section({ spec, design, leaf }, unit),
    view,
  )
  return spec.hung === 'left'
    ? { back: mirror(back, width), face, section: cut }
    : { back, face: mirror(face, width), section: mirror(cut, leaf.width) }
}
