import { commonPractice, geometry, type Figure, type Figures } from './figures.ts'
import { bareTenonShare, type FrameRoom } from './frameRoom.ts'
import type { FramePart } from './leaf.ts'
import type { LeafPlan } from './leafPlan.ts'
import type { GateSpec } from './spec.ts'
import { figure } from './worked.ts'

/** What a frame's figures are worked from: as entered, the leaf it stands round, and the room it leaves. */
export type FrameSource = {
  frame: NonNullable<GateSpec['frame']>
  plan: LeafPlan
  room: FrameRoom
  ledgeThickness: number
}

const mm = (value: number, formula: string, inputs: Record<string, number>): Figure =>
  figure(value, 'mm', { formula, inputs, source: geometry })

const shoulderOf = ({ plan, room }: FrameSource): Figure =>
  mm(room.shoulder, 'leaf width − 2 × stile width', {
    'leaf width': plan.width,
    'stile width': room.stileWidth,
  })

function railFigures(source: FrameSource, part: FramePart): Record<string, Figure> {
  const { frame } = source
  return {
    length: mm(part.length, 'shoulder length + 2 × tenon', {
      'shoulder length': part.shoulder,
      tenon: frame.tenon,
    }),
    blankWidth: mm(part.blankWidth, 'rail width + rise between the stiles', {
      'rail width': frame.topRail.width,
      'rise between the stiles': part.blankWidth - frame.topRail.width,
    }),
    shoulder: shoulderOf(source),
  }
}

function stileFigures({ frame }: FrameSource, part: FramePart): Record<string, Figure> {
  const inputs = { 'height of the top over it': part.shoulder }
  const lap = part.blankWidth - part.section.width
  const wider = mm(part.blankWidth, 'stile width + lap', { 'stile width': part.section.width, lap })
  return {
    ...(lap > 0 ? { blankWidth: wider } : {}),
    length: {
      ...mm(part.length, 'height of the top over it + 2 × horn', { ...inputs, horn: frame.horn }),
      source: commonPractice,
    },
    shoulder: mm(part.shoulder, 'height of the top over it', inputs),
  }
}

/** Every figure of a frame: 'frame.shoulder', 'frame.hanging-stile.length', 'frame.top-rail.blankWidth' and the like. */
export function frameFigures(source: FrameSource, parts: FramePart[]): Figures {
  const { frame, room, ledgeThickness } = source
  const figures: Figures = {
    'frame.shoulder': shoulderOf(source),
    'frame.railLower': mm(room.railLower, 'lowest point of the top between the stiles − rail width', {
      'lowest point': room.railLower + frame.topRail.width,
      'rail width': frame.topRail.width,
    }),
  }
  figures['frame.tenonThickness'] = {
    ...mm(ledgeThickness * bareTenonShare, 'two thirds of the ledge’s thickness, shouldered on the back', {
      'ledge thickness': ledgeThickness,
    }),
    source: commonPractice,
  }
  for (const part of parts) {
    const own = part.name === 'top rail' ? railFigures(source, part) : stileFigures(source, part)
    for (const [name, made] of Object.entries(own))
      figures[`frame.${part.name.replace(' ', '-')}.${name}`] = made
  }
  return figures
}
