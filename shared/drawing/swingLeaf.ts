import type { GateSpec } from '../gate/spec.ts'
import { farCorners, type Swing } from '../gate/swing.ts'
import type { Point } from '../geometry/point.ts'
import { box } from './box.ts'
import type { Mark } from './drawing.ts'
import type { PlacedLeaf } from './placeLeaves.ts'

/** Side of a post as it is drawn, mm: its true size isn't asked for. */
export const post = 100

/** Gaps at the posts where no opening was measured, mm: common practice. */
const usual = { hangingGap: 6, closingGap: 10 }

/** One leaf seen from above with its pin: x from its hanging edge, y from the face to the back, mm; turn its opening in degrees. */
export type Plan = {
  placed: PlacedLeaf
  pin: Point
  turn: number
  boards: number
  depth: number
  ledge: [number, number]
}

/** A leaf as it is seen from above. */
export function planOf(spec: GateSpec, placed: PlacedLeaf): Plan {
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

/** Where a point of the shut leaf comes as it opens: share of the whole opening. */
export const turned = ({ pin, turn }: Plan, [x, y]: Point, share = 1): Point => {
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

/** A leaf shut and open with its arc, its pin, its letter and the angle, in leaf coordinates. */
export function leafMarks(spec: GateSpec, plan: Plan): Mark[] {
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

/** The gaps at the posts, mm. */
export const gapsOf = ({ size }: GateSpec) => (size.from === 'opening' ? size : usual)
