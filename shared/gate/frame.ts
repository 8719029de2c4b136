import { lengthTolerance, type Point } from '../geometry/point.ts'
import { writeShortMm } from '../units/writeLength.ts'
import type { Check } from './checks.ts'
import { frameFigures } from './frameFigures.ts'
import { frameRoom, type Frame, type FrameRoom } from './frameRoom.ts'
import type { FramePart } from './leaf.ts'
import type { LeafPlan } from './leafPlan.ts'
import { lapAdded } from './meeting.ts'
import type { GateSpec } from './spec.ts'
import type { Worked } from './worked.ts'

/** A stile's outline under the top: straight sides, its head following the top where that is shaped. */
function stileOutline(plan: LeafPlan, from: number, to: number): Point[] {
  return [[from, plan.foot(from)], [to, plan.foot(to)], ...headLine(plan, from, to)]
}

/** The top between two places from closing to hanging, in short steps where it curves. */
export function headLine(plan: LeafPlan, from: number, to: number): Point[] {
  const steps = plan.top.radius === null ? 1 : Math.max(1, Math.ceil((to - from) / 10))
  return Array.from({ length: steps + 1 }, (_, i): Point => {
    const x = to - ((to - from) * i) / steps
    return [x, plan.top.heightAt(x)]
  })
}

/** A stile; lap is what it is left wider by for a rebated meeting, mm. */
function stile(
  name: 'hanging stile' | 'closing stile',
  { frame, plan, lap }: { frame: Frame; plan: LeafPlan; lap: number },
): FramePart {
  const width = frame.stile.width
  const from = name === 'hanging stile' ? 0 : plan.width - width
  const height = plan.top.highest(from, from + width) - Math.min(plan.foot(from), plan.foot(from + width))
  return {
    name,
    length: height + 2 * frame.horn,
    shoulder: height,
    section: frame.stile,
    blankWidth: width + lap,
    outline: stileOutline(plan, from, from + width),
  }
}

function topRail(frame: Frame, plan: LeafPlan, room: FrameRoom): FramePart {
  const [from, to] = [room.stileWidth, plan.width - room.stileWidth]
  const rise = plan.top.highest(from, to) - plan.top.lowest(from, to)
  return {
    name: 'top rail',
    length: room.shoulder + 2 * frame.tenon,
    shoulder: room.shoulder,
    section: frame.topRail,
    blankWidth: frame.topRail.width + rise,
    outline: [[from, room.railLower], [to, room.railLower], ...headLine(plan, from, to)],
  }
}

/** Stiles and rail must be as thick as ledge and board together, so that face and back both come flush. */
function thicknessStops(spec: GateSpec, frame: Frame): Check[] {
  const wanted = spec.ledges.section.thickness + spec.boards.section.thickness
  const parts = [
    ['stiles', frame.stile.thickness, 'frame.stile.thickness'],
    ['top rail', frame.topRail.thickness, 'frame.topRail.thickness'],
  ] as const
  return parts
    .filter(([, thickness]) => Math.abs(thickness - wanted) > lengthTolerance)
    .map(([name, thickness, field]) => ({
      id: 'frame-thickness',
      level: 'stop',
      message: `The ${name} ${name === 'stiles' ? 'are' : 'is'} ${writeShortMm(thickness)} mm thick; ledge and board together are ${writeShortMm(wanted)} mm.`,
      figures: [],
      remedy: `Plane to ${writeShortMm(wanted)} mm, or choose ledges and boards that add up to ${writeShortMm(thickness)} mm.`,
      field,
    }))
}

function roomStops(room: FrameRoom): Check[] {
  const checks: Check[] = []
  if (!(room.shoulder > 0))
    checks.push({
      id: 'part-no-size',
      level: 'stop',
      figures: ['frame.shoulder'],
      field: 'frame.stile.width',
      message: `The stiles leave ${writeShortMm(room.shoulder)} mm between them.`,
      remedy: 'Use narrower stiles or make the leaf wider.',
    })
  if (!(room.railLower > 0))
    checks.push({
      id: 'shape-eats-rail',
      level: 'stop',
      figures: ['frame.railLower'],
      field: 'top.rise',
      message: `The top rail’s lower edge would be ${writeShortMm(room.railLower)} mm above the foot.`,
      remedy: 'Lessen the rise or the rail width, or make the leaf higher.',
    })
  return checks
}

/** A closing stile that is wider than its section by a lap. */
function lapNotes(parts: FramePart[]): Check[] {
  return parts
    .filter(({ name, blankWidth, section }) => name === 'closing stile' && blankWidth > section.width)
    .map(({ blankWidth, section }) => ({
      id: 'lap-over-stile',
      level: 'note',
      message: `The first leaf’s closing stile is ${writeShortMm(blankWidth)} mm wide with its lap; the section is ${writeShortMm(section.width)} mm.`,
      figures: ['meeting.lap', 'frame.closing-stile.blankWidth'],
      remedy: 'Get one stile from wider stuff, or meet under a strip.',
      field: 'meeting.lap',
    }))
}

/** Stiles and top rail of a framed leaf. */
export function layFrame(spec: GateSpec, frame: Frame, plan: LeafPlan): Worked<FramePart[]> {
  const room = frameRoom(frame, plan)
  const ledgeThickness = spec.ledges.section.thickness
  const stops = [...thicknessStops(spec, frame), ...roomStops(room)]
  if (!(room.shoulder > 0))
    return { value: [], figures: frameFigures({ frame, plan, room, ledgeThickness }, []), checks: stops }
  const parts = [
    stile('hanging stile', { frame, plan, lap: 0 }),
    stile('closing stile', { frame, plan, lap: lapAdded(spec, plan.name) }),
    topRail(frame, plan, room),
  ]
  return {
    value: parts,
    figures: frameFigures({ frame, plan, room, ledgeThickness }, parts),
    checks: [...stops, ...lapNotes(parts)],
  }
}
