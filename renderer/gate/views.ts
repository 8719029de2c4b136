import { extraDrawing, extraViews, type ExtraView } from '../../shared/drawing/extraDrawings.ts'
import type { Drawing } from '../../shared/drawing/drawing.ts'
import type { GateDrawings } from '../../shared/drawing/gateDrawings.ts'
import type { Design } from '../../shared/gate/designModel.ts'
import type { GateSpec } from '../../shared/gate/spec.ts'
import type { LengthUnit } from '../../shared/job/job.ts'

/** A view of the gate that can lie large on the sheet. */
export type View = keyof GateDrawings | ExtraView

/** The views that every gate has; each is shown small as well. */
export const mainViews = ['back', 'face', 'section'] as const

/** Views as they are said. */
export const viewWords: Record<View, string> = {
  back: 'Back',
  face: 'Face',
  section: 'Section',
  exploded: 'Layers apart',
  swing: 'Swing',
  ground: 'Ground',
  notch: 'Notch',
  meeting: 'Meeting edge',
  frameSection: 'Rail section',
  ledgeSection: 'Ledge section',
  settingOut: 'Setting out',
}

const isExtra = (view: View): view is ExtraView => extraViews.some((extra) => extra === view)

/** The drawing of one view; a further one is drawn here and now, so that it costs nothing until it is looked at. */
export const drawingOf = (
  view: View,
  drawings: GateDrawings,
  gate: { spec: GateSpec; design: Design; unit: LengthUnit },
): Drawing | undefined => (isExtra(view) ? extraDrawing(gate, view) : drawings[view])
