import { lengthTolerance } from '../geometry/point.ts'
import { writeShortMm } from '../units/writeLength.ts'
import type { Check } from './checks.ts'
import { geometry, type Figures } from './figures.ts'
import { worthSaying, type LeafSize, type Opening } from './opening.ts'
import { secondHeight } from './pairOnSlope.ts'
import type { GateSpec } from './spec.ts'
import { figure, type Worked } from './worked.ts'

const posts = ['hanging', 'closing'] as const

/** How high the gate stands over the ground gap at each post, mm: the tops run level while the feet follow the ground. */
function heightsThere(spec: GateSpec, size: LeafSize): [number, number] {
  const slope = spec.site?.slopeAlong ?? 0
  const closing = spec.leaves === 2 ? secondHeight(spec, size) : size.height - slope * size.width
  return [size.height, closing]
}

function roomFigures({ heights, groundGap }: Opening, there: [number, number]): Figures {
  const figures: Figures = {}
  posts.forEach((post, index) => {
    const [height, leaf] = [heights[index] ?? 0, there[index] ?? 0]
    figures[`opening.headRoom.${post}`] = figure(height - groundGap - leaf, 'mm', {
      formula: `height at the ${post} post − ground gap − height of the leaf there`,
      inputs: {
        [`height at the ${post} post`]: height,
        'ground gap': groundGap,
        'height of the leaf there': leaf,
      },
      source: geometry,
    })
  })
  return figures
}

/** What is said of one post: too little room over the leaf there, or under a head far more than was wanted. */
function postCheck(
  post: (typeof posts)[number],
  { room, headGap, height }: { room: number; headGap: number | undefined; height: number },
): Check[] {
  const wanted = headGap ?? 0
  const found = { figures: [`opening.headRoom.${post}`], field: 'size.heights' }
  const short = wanted - room
  if (short > lengthTolerance)
    return [
      {
        id: 'opening-head-room',
        level: 'caution',
        message:
          room < 0
            ? `At the ${post} post the gate comes out ${writeShortMm(-room)} mm higher than the height measured there.`
            : `At the ${post} post ${writeShortMm(room)} mm are left over the gate; ${writeShortMm(wanted)} mm are wanted under the head.`,
        remedy: `Measure both heights and the slope again, or give the leaf’s own size: ${writeShortMm(height - short)} mm high fits.`,
        ...found,
      },
    ]
  if (headGap === undefined || -short <= worthSaying) return []
  return [
    {
      id: 'opening-head-wide',
      level: 'note',
      message: `At the ${post} post ${writeShortMm(room)} mm are left over the gate, ${writeShortMm(-short)} mm more than wanted.`,
      remedy: 'Measure both heights and the slope again, or give the leaf’s own size.',
      ...found,
    },
  ]
}

/**
 * A gate whose feet follow sloping ground, its tops level, held against the heights measured at both posts: the room left over it at each, mm. Nothing for
 * any other gate. A leaf of 1780 at the hanging post that falls 0.02 over 1906 is 1818.12 high at the other, so it wants that and the gaps there.
 */
export function headRoom(spec: GateSpec, leaf: LeafSize): Worked<null> {
  const { size } = spec
  const slopes = spec.foot === 'follows-ground' && (spec.site?.slopeAlong ?? 0) !== 0
  if (size.from !== 'opening' || !slopes) return { value: null, figures: {}, checks: [] }
  const there = heightsThere(spec, leaf)
  const figures = roomFigures(size, there)
  const checks = posts.flatMap((post) =>
    postCheck(post, {
      room: figures[`opening.headRoom.${post}`]?.value ?? 0,
      headGap: size.headGap,
      height: leaf.height,
    }),
  )
  return { value: null, figures, checks }
}
