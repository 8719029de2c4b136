import type { FramePart } from '../gate/leaf.ts'
import { lowerEdge, upperEdge } from '../gate/ledges.ts'
import type { GateSpec } from '../gate/spec.ts'
import type { Point } from '../geometry/point.ts'
import type { Mark } from './drawing.ts'
import { footReach, railLower, stileSeen, stileWidth } from './leafLines.ts'
import type { PlacedLeaf } from './placeLeaves.ts'

type Frame = NonNullable<GateSpec['frame']>

const framePart = (placed: PlacedLeaf, { name, outline }: FramePart, view: 'face' | 'back'): Mark => ({
  kind: 'polygon',
  points: name === 'closing stile' ? stileSeen(placed, outline, view) : outline,
  fill: 'ledge',
  pen: 'visible',
  part: name,
})

/** A share of the rail's width that its tenon keeps, the rest being haunched: two thirds, common practice. */
const railTenonShare = 2 / 3

/** A tenon hidden in a stile: three sides, the fourth being the shoulder. */
function tenon(part: string, x: { shoulder: number; end: number }, [low, high]: Point): Mark {
  return {
    kind: 'polyline',
    points: [
      [x.shoulder, low],
      [x.end, low],
      [x.end, high],
      [x.shoulder, high],
    ],
    pen: 'hidden',
    part,
  }
}

function tenons(frame: Frame, placed: PlacedLeaf): Mark[] {
  const { leaf } = placed
  const [left, right] = [stileWidth(placed), leaf.width - stileWidth(placed)]
  const rail = railLower(placed)
  const members: { part: string; heights: Point }[] = leaf.ledges.map((ledge) => ({
    part: `${ledge.name} ledge`,
    heights: [lowerEdge(ledge), upperEdge(ledge)],
  }))
  if (rail !== undefined)
    members.push({ part: 'top rail', heights: [rail, rail + frame.topRail.width * railTenonShare] })
  return members.flatMap(({ part, heights }) => [
    tenon(part, { shoulder: left, end: left - frame.tenon }, heights),
    tenon(part, { shoulder: right, end: right + frame.tenon }, heights),
  ])
}

/** The horns that a stile has until it is together, dashed past foot and head. */
function horns(frame: Frame, placed: PlacedLeaf): Mark[] {
  if (frame.horn === 0) return []
  const { leaf } = placed
  const [low] = footReach(placed)
  return leaf.frame
    .filter(({ name }) => name !== 'top rail')
    .flatMap(({ name, outline, shoulder }): Mark[] => {
      const [footLeft, footRight, headRight] = outline
      const headLeft = outline.at(-1)
      if (!footLeft || !footRight || !headRight || !headLeft) return []
      const base = Math.min(footLeft[1], footRight[1])
      // Between the halves of a stable door the other half stands in their place, so there they are left out.
      const ends = [
        ...(leaf.name === 'upper half'
          ? []
          : [{ from: footLeft, to: footRight, y: Math.min(base, low) - frame.horn }]),
        ...(leaf.name === 'lower half'
          ? []
          : [{ from: headLeft, to: headRight, y: base + shoulder + frame.horn }]),
      ]
      return ends.map(({ from, to, y }) => ({
        kind: 'polyline',
        points: [from, [from[0], y], [to[0], y], to],
        pen: 'hidden',
        part: name,
      }))
    })
}

/** Round the boarding of a framed leaf: up its hanging edge, along under the rail, down its closing edge. */
function roundBoards({ leaf, plan }: PlacedLeaf): Point[] | undefined {
  const [first, last] = [leaf.boards[0], leaf.boards.at(-1)]
  if (!first || !last) return undefined
  const [left, right] = [first.x, last.x + last.width]
  return [
    [left, plan.foot(left)],
    [left, first.heads[0]],
    [right, first.heads[0]],
    [right, plan.foot(right)],
  ]
}

/** Where the boards lie hidden in the rebates of stiles and rail, dashed. */
function rebates(frame: Frame, placed: PlacedLeaf): Mark[] {
  const points = roundBoards(placed)
  if (!points || frame.rebate === 0) return []
  return [{ kind: 'polyline', points, pen: 'hidden', part: 'rebate' }]
}

/** Stiles and rail from the back with what is hidden in them: tenons, rebates; and the horns still to be cut off. */
export function frameFromBack(spec: GateSpec, placed: PlacedLeaf): Mark[] {
  const { frame } = spec
  if (!frame) return []
  return [
    ...placed.leaf.frame.map((part) => framePart(placed, part, 'back')),
    ...rebates(frame, placed),
    ...tenons(frame, placed),
    ...horns(frame, placed),
  ]
}

/** Stiles and rail from the face; the boards lie over their rebates. */
export const frameFromFace = (spec: GateSpec, placed: PlacedLeaf): Mark[] =>
  spec.frame
    ? [...placed.leaf.frame.map((part) => framePart(placed, part, 'face')), ...horns(spec.frame, placed)]
    : []

/** The boarding's outer edge within a frame, seen from the face. */
export function boardingEdge(placed: PlacedLeaf): Mark[] {
  const points = roundBoards(placed)
  if (!points || placed.leaf.frame.length === 0) return []
  return [{ kind: 'polyline', points, pen: 'visible' }]
}

/**
 * The stiles named: the hanging one high in its top bay, the closing one low in its bottom bay, where no brace comes near them.
 */
export function stileNames(placed: PlacedLeaf): Mark[] {
  const { leaf } = placed
  const { ledges } = leaf
  const [low, last] = [ledges[0], ledges.at(-1)]
  const rail = railLower(placed)
  if (!low || !last || rail === undefined) return []
  const above = ledges[1] ? lowerEdge(ledges[1]) : rail
  const bays = {
    'closing stile': { from: upperEdge(low), room: above - upperEdge(low), share: 0.3 },
    'hanging stile': { from: upperEdge(last), room: rail - upperEdge(last), share: 0.7 },
  }
  return leaf.frame.flatMap(({ name, section }): Mark[] => {
    if (name === 'top rail') return []
    const { from, room, share } = bays[name]
    const half = section.width / 2
    return [
      {
        kind: 'text',
        at: [name === 'hanging stile' ? half : leaf.width - half, from + room * share],
        dx: 1.1,
        text: name,
        size: 'small',
        anchor: 'middle',
        angle: 90,
        over: 'ledge',
        within: section.width,
        height: { model: room * 0.6, least: 20 },
        part: name,
      },
    ]
  })
}
