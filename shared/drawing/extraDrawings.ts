import type { Design } from '../gate/designModel.ts'
import type { GateSpec } from '../gate/spec.ts'
import type { LengthUnit } from '../job/job.ts'
import type { Drawing } from './drawing.ts'
import type { GateView } from './elevation.ts'
import { explodedView } from './explodedView.ts'
import { withSources } from './figureSources.ts'
import { gateView } from './gateDrawings.ts'
import { groundProfile } from './groundProfile.ts'
import { mirror } from './hand.ts'
import { ledgeSection } from './ledgeSection.ts'
import { meetingSection } from './meetingSection.ts'
import { notchDetail } from './notchDetail.ts'
import { railSection } from './railSection.ts'
import { settingOutDrawing } from './settingOutDrawing.ts'
import { swingPlan } from './swingPlan.ts'

/** The views beyond elevations and section, by name, in the order they are shown. */
export const extraViews = [
  'exploded',
  'swing',
  'ground',
  'notch',
  'meeting',
  'frameSection',
  'ledgeSection',
  'settingOut',
] as const

export type ExtraView = (typeof extraViews)[number]
export type ExtraDrawings = Partial<Record<ExtraView, Drawing>>

/** Draws one view before the hand turns it; undefined where a gate has none of it. */
function drawn(view: GateView, name: ExtraView): Drawing | undefined {
  const { spec, placing, figures } = view
  const [first] = placing.leaves
  switch (name) {
    case 'exploded':
      return explodedView(spec, placing)
    case 'swing':
      return swingPlan(view)
    case 'ground':
      return groundProfile(view)
    case 'notch':
      return first && notchDetail(spec, first, figures)
    case 'meeting':
      return meetingSection(spec, placing, figures)
    case 'frameSection':
      return first && railSection(spec, placing.leaves.at(-1) ?? first, figures)
    case 'ledgeSection':
      return first && ledgeSection(spec, first, figures)
    case 'settingOut':
      return settingOutDrawing(spec, placing, figures)
  }
}

/** Views from the back lie over for a left-hung gate, those from the face or from above for a right-hung one; the rest never do. */
const lookedAt: Record<ExtraView, 'back' | 'face' | 'either'> = {
  exploded: 'back',
  swing: 'face',
  ground: 'either',
  notch: 'back',
  meeting: 'face',
  frameSection: 'either',
  ledgeSection: 'either',
  settingOut: 'face',
}

/** Width about whose middle a view is turned over, mm. */
function turningWidth({ placing }: GateView, name: ExtraView): number {
  if (name === 'swing' || name === 'exploded') return placing.width
  if (name === 'meeting') return placing.gap
  return placing.leaves[0]?.leaf.width ?? placing.width
}

function turnedByHand(view: GateView, name: ExtraView): Drawing | undefined {
  const bare = drawn(view, name)
  const drawing = bare && withSources(bare, view)
  const side = lookedAt[name]
  if (!drawing || side === 'either') return drawing
  const over = side === 'back' ? view.spec.hung === 'left' : view.spec.hung === 'right'
  return over ? mirror(drawing, turningWidth(view, name)) : drawing
}

/**
 * One further view of a gate, drawn only when it is asked for, so that a key pressed in the form never waits for it: exploded (the layers apart),
 * swing (plan from above), ground (under the closing edge along the swing), notch, meeting (edges of a pair), frameSection (the top rail), ledgeSection (a weathered ledge),
 * settingOut (ordinates of a shaped top). Undefined where a gate has none of it: a level top isn't set out, a flush brace has no notch.
 */
export const extraDrawing = (
  { spec, design, unit }: { spec: GateSpec; design: Design; unit: LengthUnit },
  name: ExtraView,
): Drawing | undefined => turnedByHand(gateView(spec, design, unit), name)

/** Every further view that a gate has. */
export function extraDrawings(spec: GateSpec, design: Design, unit: LengthUnit): ExtraDrawings {
  const view = gateView(spec, design, unit)
  const found: ExtraDrawings = {}
  for (const name of extraViews) {
    const drawing = turnedByHand(view, name)
    if (drawing) found[name] = drawing
  }
  return found
}
