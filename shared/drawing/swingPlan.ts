import type { LeafSwing } from '../gate/leafSwing.ts'
import type { GateSpec } from '../gate/spec.ts'
import { farCorners, type Swing } from '../gate/swing.ts'
import type { Point } from '../geometry/point.ts'
import { box } from './box.ts'
import { withoutNoughts } from './dimensions.ts'
import type { Drawing, Mark } from './drawing.ts'
import type { GateView } from './elevation.ts'
import type { FigureText } from './figureText.ts'
import { placeOn, setDown, type PlacedLeaf, type Placing } from './placeLeaves.ts'

/** Side of a post as it is drawn, mm: its true size isn't asked for. */
const post = 100

/** Gaps at the posts where no opening was measured, mm: common practice. */
const usual = { hangingGap: 6, closingGap: 10 }

/** One leaf seen from above with its pin: x from its hanging edge, y from the face to the back, mm; turn its opening in degrees. */
type Plan = {
  placed: PlacedLeaf
  pin: Point
  turn: number
  boards: number
  depth: number
  ledge: [number, number]
}

function planOf(spec: GateSpec, placed: PlacedLeaf): Plan {
  const { pinInset = 0, pinProud = 0 } = spec.site ?? {}
  const boards = spec.boards.section.thickness
  const depth = boards + spec.ledges.section.thickness
  const toBack = spec.opens !== 'to-face'
  const ledge = placed.leaf.ledges[0]
  const { width } = placed.leaf
  return {
    placed,
    pin: [pinInset, toBack ? depth + pinProud : -pinProud],
    turn: (toBack ? 1 : -1) * (spec.openTo ?? 90),
    boards,
    depth,
    ledge: spec.frame || !ledge ? [0, width] : [ledge.x, ledge.x + ledge.length],
  }
}

const turned = ({ pin, turn }: Plan, [x, y]: Point, share = 1): Point => {
  const angle = (turn * share * Math.PI) / 180
  const [dx, dy] = [x - pin[0], y - pin[1]]
  return [
    pin[0] + dx * Math.cos(angle) - dy * Math.sin(angle),
    pin[1] + dx * Math.sin(angle) + dy * Math.cos(angle),
  ]
}

/** The two boxes that a leaf is from above: its boards and its ledges. */
const bodies = ({
  placed,
  boards,
  depth,
  ledge,
}: Plan): { points: Point[]; part: string; fill: 'board' | 'ledge' }[] => [
  { points: box([0, 0], [placed.leaf.width, boards]), part: 'boards', fill: 'board' },
  { points: box([ledge[0], boards], [ledge[1], depth]), part: 'ledges', fill: 'ledge' },
]

/** The corner that comes nearest to the other post as the leaf opens. */
function farCorner(spec: GateSpec, { placed, pin, boards, depth }: Plan): Point {
  const swing: Swing = {
    width: placed.leaf.width,
    pinInset: spec.site?.pinInset ?? 0,
    pinProud: spec.site?.pinProud ?? 0,
    boards,
    ledges: depth - boards,
    closingInset: spec.ledges.closingInset,
    opens: spec.opens ?? 'to-back',
  }
  const far = farCorners(swing).reduce((a, b) =>
    Math.hypot(b.out, b.behind) > Math.hypot(a.out, a.behind) ? b : a,
  )
  const side = spec.opens === 'to-face' ? 1 : -1
  return [pin[0] + far.out, pin[1] + side * far.behind]
}

/** The arc that the far corner sweeps. */
function sweep(spec: GateSpec, plan: Plan): Mark {
  const { pin, turn } = plan
  const [x, y] = farCorner(spec, plan)
  const start = (Math.atan2(y - pin[1], x - pin[0]) * 180) / Math.PI
  const radius = Math.hypot(x - pin[0], y - pin[1])
  const [from, to] = turn > 0 ? [start, start + turn] : [start + turn, start]
  return { kind: 'arc', centre: pin, radius, start: from, end: to, pen: 'centre', part: 'swing' }
}

function leafMarks(spec: GateSpec, plan: Plan): Mark[] {
  const { pin, turn } = plan
  const shut = bodies(plan)
  return [
    sweep(spec, plan),
    ...shut.map(({ points, part }): Mark => ({
      kind: 'polyline',
      points: [...points, points[0] ?? pin].map((point) => turned(plan, point)),
      pen: 'hidden',
      part: `open ${part}`,
    })),
    ...shut.map(({ points, part, fill }): Mark => ({ kind: 'polygon', points, fill, pen: 'visible', part })),
    { kind: 'symbol', at: pin, shape: 'nail', part: 'pin' },
    {
      kind: 'badge',
      at: [-gapsOf(spec).hangingGap - post, plan.depth / 2],
      dx: -5,
      text: 'H',
      part: 'hinge line',
    },
    {
      kind: 'angle',
      apex: pin,
      start: turn > 0 ? 0 : turn,
      end: turn > 0 ? turn : 0,
      radius: 16,
      room: { x: 1e6, y: 1e6 },
      text: `${Math.abs(turn)}°`,
      over: 'paper',
      aside: { at: pin, dx: 4, dy: 0, anchor: 'start', height: 0, least: Infinity, text: '' },
      part: 'dimension opening',
    },
  ]
}

const gapsOf = ({ size }: GateSpec) => (size.from === 'opening' ? size : usual)

/** A post, on the line of the leaf's middle. */
function postMarks(x: number, away: -1 | 1, depth: number): Mark {
  const far = x + away * post
  const foot = (depth - post) / 2
  return {
    kind: 'polygon',
    points: away < 0 ? box([far, foot], [x, foot + post]) : box([x, foot], [far, foot + post]),
    fill: 'none',
    pen: 'outline',
    hatch: { angle: 45, spacing: 2.4 },
    part: 'post',
  }
}

/**
 * The gate from above, first leaf at the left, face at the foot of the sheet: each leaf shut and, dashed, at its full opening; the arc of the
 * corner that comes nearest to the other post; posts, pins and gaps. The notes give the gaps that the swing needs and the bevel that helps.
 */
export function swingPlan({ spec, design, placing, figures }: GateView): Drawing {
  // A stable door's halves swing alike, so the lower one stands for both.
  const leaves = placing.kind === 'stable' ? placing.leaves.slice(0, 1) : placing.leaves
  const plans = leaves.map((placed) => planOf(spec, { ...placed, at: [placed.at[0], 0] }))
  const marks = plans.flatMap((plan) => setDown(plan.placed, leafMarks(spec, plan)))
  const { hangingGap, closingGap } = gapsOf(spec)
  const depth = plans[0]?.depth ?? 0
  const right = placing.width + (placing.kind === 'pair' ? hangingGap : closingGap)
  const posts = [postMarks(-hangingGap, -1, depth), postMarks(right, 1, depth)]
  const reach = reachOf(plans, { left: -hangingGap - post, right: right + post, depth })
  return {
    title: `Swing, from above: opens to the ${spec.opens === 'to-face' ? 'face' : 'back'}`,
    description: `The ${placing.kind === 'pair' ? 'leaves' : 'leaf'} from above, shut and opened ${spec.openTo ?? 90} degrees to the ${spec.opens === 'to-face' ? 'face' : 'back'}`,
    extent: reach,
    margin: { left: 14, right: 14, top: 14, bottom: 22 },
    notes: notesOf(spec, design.swing, figures),
    marks: [...posts, ...marks, ...gapChain(spec, placing, { hangingGap, right, base: reach.minY, figures })],
  }
}

type Reach = { left: number; right: number; depth: number }

/** The box about the leaves, shut, opening and open, and the posts. */
function reachOf(plans: Plan[], { left, right, depth }: Reach): Drawing['extent'] {
  const shares = Array.from({ length: 25 }, (_, i) => i / 24)
  const points = plans.flatMap((plan) => {
    const { width } = plan.placed.leaf
    const corners: Point[] = [
      [0, 0],
      [width, 0],
      [width, plan.depth],
      [0, plan.depth],
    ]
    return shares.flatMap((share) =>
      corners.map((corner) => placeOn(plan.placed)(turned(plan, corner, share))),
    )
  })
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)]
  return {
    minX: Math.min(left, ...xs),
    maxX: Math.max(right, ...xs),
    minY: Math.min((depth - post) / 2, ...ys),
    maxY: Math.max((depth + post) / 2, ...ys),
  }
}

type Gaps = { hangingGap: number; right: number; base: number; figures: FigureText }

/** From post to post: gaps and leaves. Gaps are said only where the opening was measured, so are a pair's between its leaves. */
function gapChain(spec: GateSpec, placing: Placing, { hangingGap, right, base, figures }: Gaps): Mark[] {
  const { kind, gap, width, leaves } = placing
  const leaf = leaves[0]?.leaf.width ?? width
  const measured = spec.size.from === 'opening'
  const middle = kind === 'pair' ? [leaf, leaf + gap] : []
  const stops = [-hangingGap, 0, ...middle, width, right]
  const labels = stops.slice(1).map((stop, i) => {
    const length = stop - (stops[i] ?? 0)
    const atPost = i === 0 || i === stops.length - 2
    return atPost && !measured ? null : { text: figures.write(length), part: 'dimension swing' }
  })
  const shown = withoutNoughts(stops, labels)
  return [{ kind: 'chain', axis: 'x', base, offset: -8, ...shown, part: 'dimension swing' }]
}

function notesOf(spec: GateSpec, swings: LeafSwing[], figures: FigureText): string[] {
  const [swing] = swings
  const { pinInset = 0, pinProud = 0 } = spec.site ?? {}
  const leading = spec.opens === 'to-face' ? 'face' : 'back'
  const pin =
    pinInset < 0
      ? `${figures.write(-pinInset)} beyond the hanging edge`
      : `${figures.write(pinInset)} in from the hanging edge`
  const lines = [`Pin ${pin}, ${figures.write(pinProud)} proud of the ${leading}`]
  if (!swing) return lines
  const bevel = swing.bevel
    ? `; ${swing.bevel.closingGap < 0.05 ? 'none' : exact(swing.bevel.closingGap)} with it bevelled ${swing.bevel.angle.toFixed(1)}°`
    : ''
  return [...lines, `Least gap at the closing edge ${exact(swing.closingGap)} mm${bevel}`]
}

/** A gap of the swing to the tenth of a millimetre: half millimetres would say too little of it. */
const exact = (mm: number): string => (Math.ceil(mm * 10 - 1e-9) / 10).toFixed(1)
