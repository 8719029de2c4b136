import { groundRiseAt, type GroundSwing } from '../gate/groundSwing.ts'
import type { LeafSwing } from '../gate/leafSwing.ts'
import type { GateSpec } from '../gate/spec.ts'
import { toRadians } from '../units/angle.ts'
import type { Point } from '../geometry/point.ts'
import type { Drawing, Mark } from './drawing.ts'
import type { GateView } from './elevation.ts'
import type { PlacedLeaf } from './placeLeaves.ts'

/** How much larger heights are drawn than lengths where they would hardly show, and the share of the length below which they wouldn't. */
const [enlarged, hardlySeen] = [5, 0.08]

/** The ground under one leaf's closing edge unrolled along its arc. gap: the foot over the ground at the pin, mm. */
type Profile = { ground: GroundSwing; swing: LeafSwing; gap: number; times: number; name: string }

/** The leaf that has the least room over the ground. */
function worstOf({ spec, design, placing }: GateView): { placed: PlacedLeaf; swing: LeafSwing } | undefined {
  const found = placing.leaves.flatMap((placed) => {
    const swing = design.swing.find(({ leaf, ground }) => leaf === placed.leaf.name && ground !== null)
    return swing && spec.site ? [{ placed, swing }] : []
  })
  return found.sort((a, b) => (b.swing.ground?.clearance ?? 0) - (a.swing.ground?.clearance ?? 0))[0]
}

/** A level foot keeps the ground gap over the highest ground that it shuts over, so over rising ground it stands higher at the pin. */
function gapAtPin(spec: GateSpec, ground: GroundSwing, clearance: number): number {
  if (spec.size.from !== 'opening') return clearance
  return spec.size.groundGap + (ground.followsGround ? 0 : Math.max(0, ground.width * ground.slope.along))
}

function profileOf(view: GateView): Profile | undefined {
  const { spec } = view
  const worst = worstOf(view)
  if (!worst?.swing.ground) return undefined
  const { placed, swing } = worst
  const ground: GroundSwing = {
    width: placed.leaf.width,
    openTo: spec.openTo ?? 90,
    slope: { along: placed.plan.groundSlope, across: spec.site?.slopeAcross ?? 0 },
    followsGround: spec.foot === 'follows-ground',
  }
  const gap = gapAtPin(spec, ground, swing.ground?.clearance ?? 0)
  const rises = heights(ground).map(([, rise]) => rise)
  const seen = Math.max(...rises, gap) - Math.min(...rises, 0)
  const times = seen < arcTo(ground, ground.openTo) * hardlySeen ? enlarged : 1
  return { ground, swing, gap, times, name: placed.leaf.name }
}

/** How far the closing edge has gone at an opening angle, along its arc, mm. */
const arcTo = ({ width }: GroundSwing, angle: number): number => width * toRadians(angle)

/** Rise of the ground at each step of the opening: [angle, rise]. */
function heights(ground: GroundSwing): [number, number][] {
  const steps = 36
  return Array.from({ length: steps + 1 }, (_, i): [number, number] => {
    const angle = (ground.openTo * i) / steps
    return [angle, groundRiseAt(ground, angle)]
  })
}

/**
 * The ground along the swing: what the closing edge passes over as the leaf opens, unrolled along its arc, with the leaf's foot over it and the gap
 * where it is least. Heights are drawn five times as large where they would hardly show, and the notes say so. Undefined over level ground.
 */
export function groundProfile(view: GateView): Drawing | undefined {
  const profile = profileOf(view)
  if (!profile) return undefined
  const { ground, gap, times, swing, name } = profile
  const line = heights(ground).map(([angle, rise]): Point => [arcTo(ground, angle), (rise - gap) * times])
  const length = arcTo(ground, ground.openTo)
  const lowest = Math.min(...line.map(([, y]) => y))
  const depth = length * 0.03
  const whose = name === 'leaf' ? 'the closing edge' : `the ${name}’s closing edge`
  return {
    title: name === 'leaf' ? 'Ground along the swing' : `Ground, ${name}’s swing`,
    description: `The ground under ${whose} from shut to ${ground.openTo} degrees, worst at ${swing.ground?.angle.toFixed(0)} degrees`,
    extent: { minX: 0, minY: lowest - depth, maxX: length, maxY: Math.max(0, ...line.map(([, y]) => y)) },
    margin: { left: 14, right: 14, top: 14, bottom: 9 },
    notes: [
      'Under the closing edge as it opens',
      ...(times === 1 ? [] : ['Heights drawn five times as large']),
    ],
    marks: [
      {
        kind: 'polygon',
        points: [...line, [length, lowest - depth], [0, lowest - depth]],
        fill: 'none',
        hatch: { angle: 45, spacing: 1.5 },
        part: 'ground',
      },
      { kind: 'polyline', points: line, pen: 'visible', part: 'ground' },
      { kind: 'line', from: [0, 0], to: [length, 0], pen: 'outline', part: 'foot' },
      ...words(profile, { length, floor: lowest - depth }),
      ...least(profile, view),
    ],
  }
}

function words({ ground, swing }: Profile, { length, floor }: { length: number; floor: number }): Mark[] {
  const under = (x: number, text: string, anchor: 'start' | 'end'): Mark => ({
    kind: 'text',
    at: [x, floor],
    dy: -5,
    text,
    size: 'figure',
    anchor,
  })
  const late = (swing.ground?.angle ?? 0) < ground.openTo / 2
  return [
    under(0, 'shut', 'start'),
    under(length, `open ${ground.openTo}°`, 'end'),
    {
      kind: 'text',
      at: [late ? length : 0, 0],
      dy: 1.2,
      text: 'foot of the leaf',
      size: 'small',
      anchor: late ? 'end' : 'start',
      part: 'foot',
    },
  ]
}

/** The gap where the ground is highest, between foot and ground. */
function least({ ground, swing, gap, times }: Profile, { figures }: GateView): Mark[] {
  const angle = swing.ground?.angle ?? 0
  const x = arcTo(ground, angle)
  const rise = Math.max(0, groundRiseAt(ground, angle))
  const clear = gap - rise
  if (clear <= 0) return []
  return [
    {
      kind: 'chain',
      axis: 'y',
      base: x,
      offset: 5,
      stops: [-clear * times, 0],
      labels: [{ text: figures.write(clear), part: 'dimension ground gap' }],
      part: 'dimension ground gap',
    },
  ]
}
