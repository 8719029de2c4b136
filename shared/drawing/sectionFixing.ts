import type { Design } from '../gate/designModel.ts'
import type { Leaf, Ledge } from '../gate/leaf.ts'
import type { GateSpec } from '../gate/spec.ts'
import type { Point } from '../geometry/point.ts'
import type { Mark } from './drawing.ts'

/** How far a screw's head is sunk below the back, mm: common practice. */
const headSunk = 2

/** A leaf with the gate it belongs to, as entered and as worked out. */
export type DrawnLeaf = { spec: GateSpec; design: Design; leaf: Leaf }

type Place = { ledge: Ledge; end: number; depth: number }

/**
 * The fixings that the cut passes, at their places along the ledge: the first in full (a screw from the back with its head sunk, or a
 * nail from the face clenched on the back), the others by their centre lines.
 */
export function sectionFixing({ spec, design, leaf }: DrawnLeaf, place: Place): Mark[] {
  const hole = design.holes.find((row) => row.through.includes('ledge'))
  const along = leaf.fixings
    .filter(
      (fixing) =>
        fixing.joins === 'ledge' && fixing.member.includes(place.ledge.name) && fixing.x < place.end - 12,
    )
    .map((fixing) => fixing.x)
    .sort((a, b) => a - b)
  const [first, ...others] = along
  if (first === undefined || !hole) return []
  const at = { x: first, depth: place.depth, length: hole.fixingLength, diameter: spec.fixings.diameter }
  const part = 'fixings ledge'
  return [
    ...(spec.fixings.kind === 'screw' ? screw(at) : clenchedNail(at)).map((mark): Mark => ({
      ...mark,
      part,
    })),
    ...others.map((x): Mark => ({
      kind: 'line',
      from: [x, -0.12 * place.depth],
      to: [x, 1.12 * place.depth],
      pen: 'centre',
      part,
    })),
  ]
}

type Fixed = { x: number; depth: number; length: number; diameter: number }

/** A countersunk screw: the sunk hole, the head, the shank through the ledge, the threaded part to its point. */
function screw({ x, depth, length, diameter: d }: Fixed): Mark[] {
  const top = depth - headSunk
  const point = top - length
  const both = (half: number, z: number): [Point, Point] => [
    [x - half, z],
    [x + half, z],
  ]
  const [headLeft, headRight] = both(d, top)
  const [neckLeft, neckRight] = both(d / 2, top - d / 2)
  const [tipLeft, tipRight] = both(d / 2, point + d)
  const turns = Math.max(2, Math.floor((length * 0.55) / (d * 0.55)))
  const thread = Array.from({ length: turns }, (_, i): Mark => {
    const z = point + d + i * d * 0.55
    return { kind: 'line', from: [x - d / 2, z], to: [x + d / 2, z + d * 0.28], pen: 'dimension' }
  })
  return [
    {
      kind: 'polygon',
      points: [[x - d, depth], headLeft, headRight, [x + d, depth]],
      fill: 'paper',
      pen: 'outline',
    },
    {
      kind: 'polygon',
      points: [headLeft, neckLeft, tipLeft, [x, point], tipRight, neckRight, headRight],
      fill: 'paper',
      pen: 'outline',
    },
    ...thread,
  ]
}

/** A nail through from the face, its point turned over along the back. */
function clenchedNail({ x, depth, length, diameter: d }: Fixed): Mark[] {
  const over = Math.max(0, length - depth)
  const half = d / 2
  return [
    {
      kind: 'polygon',
      points: [
        [x - d, 0],
        [x + d, 0],
        [x + d, 1],
        [x + half, 1],
        [x + half, depth],
        [x + over, depth],
        [x + over, depth + half],
        [x - half, depth + half],
        [x - half, 1],
        [x - d, 1],
      ],
      fill: 'ink',
      pen: 'narrow',
    },
  ]
}
