import type { GateSpec } from '../spec.ts'
import { boltSteps, hingesStep, latchSteps, named } from './fittingSteps.ts'
import { degrees, hanging, hungOf, mm, sentences, type Step, type StepSource } from './step.ts'

/** Gaps round a leaf that was entered by its own size, mm: common practice for a side gate. */
const usualGaps = { hangingGap: 6, closingGap: 10, groundGap: 50 }

const gapsOf = ({ size }: GateSpec) => (size.from === 'opening' ? size : usualGaps)

const postsStep = ({ spec, leaves }: StepSource): Step => {
  const sides = leaves.map(
    (leaf) =>
      `${leaves.length > 1 ? `the ${leaf.name}` : 'the gate'} hangs on the ${hungOf(spec, leaf)} seen from the face`,
  )
  const said = spec.stable ? sides.slice(0, 1) : sides
  return hanging(
    'Look at the posts',
    `Plumb both ways, firm, and the opening as it was measured: ${said.join(', ')}. Let new posts set before anything hangs on them.`,
    [
      'Before digging, find out where cables, pipes and drains run; deep holes can fall in.',
      'Public or powered gates, and posts that hold up anything else: follow local codes and use a licensed engineer or installer.',
    ],
  )
}

function pinsStep(source: StepSource): Step {
  const { spec, leaves } = source
  const { groundGap, hangingGap } = gapsOf(spec)
  const { pinInset = 0, pinProud = 0 } = spec.site ?? {}
  const where =
    pinInset === 0
      ? 'on the line of the hanging edge'
      : pinInset > 0
        ? `${mm(pinInset)} in from the hanging edge`
        : `${mm(-pinInset)} beyond the hanging edge`
  const proud =
    pinProud === 0
      ? ''
      : `, ${mm(Math.abs(pinProud))} ${pinProud > 0 ? 'proud of' : 'behind'} the surface that leads`
  const pull = Math.max(...leaves.map(({ hinges }) => Math.max(...hinges.map(({ pullN }) => pullN))))
  return hanging(
    'Set the pins',
    `Stand the leaf in place on ${mm(groundGap)} packers, ${mm(hangingGap)} from the post, and mark the pins through the hinges. Pins upright over each other, ${where}${proud}. The top hinge pulls at the post with about ${Math.round(pull / 10) * 10} N, and any one may carry the whole weight: fix into sound wood or wall.`,
    [
      'Two people: one holds the leaf, tied or propped, until both pins are in. Keep fingers out of the hanging edge.',
    ],
  )
}

function gapsStep({ spec }: StepSource): Step {
  const gaps = gapsOf(spec)
  const shut =
    spec.leaves === 2
      ? `${mm(spec.size.meetingGap ?? 0)} where the leaves meet`
      : `${mm(gaps.closingGap)} at the closing edge`
  const head =
    spec.size.from === 'opening' && spec.size.headGap !== undefined
      ? `, ${mm(spec.size.headGap)} under the head`
      : ''
  const stable = spec.stable ? ` ${mm(spec.stable.gap)} between the halves.` : ''
  const usual =
    spec.size.from === 'opening' ? '' : ' These are usual gaps: the opening was not measured here.'
  return hanging(
    'Set the gaps',
    `${mm(gaps.hangingGap)} at the hanging edge, ${shut}, ${mm(gaps.groundGap)} over the ground${head}. Pack behind the hinges until they run even from top to bottom.${stable}${usual}`,
  )
}

/** Whether the closing edge wants a bevel, by the gap that is there. */
function bevelSteps({ spec, swing }: StepSource): Step[] {
  const first = swing[0]
  if (!first) return []
  const { bevel, closingGap } = first
  const there = spec.leaves === 2 ? (spec.size.meetingGap ?? 0) : gapsOf(spec).closingGap
  const edge = spec.leaves === 2 ? 'meeting edge' : 'closing edge'
  if (there >= closingGap)
    return [
      hanging(
        'Leave the closing edge square',
        `It needs ${mm(closingGap)} to swing past and has ${mm(there)}.`,
      ),
    ]
  const side = spec.opens === 'to-face' ? 'face' : 'back'
  const off = side === 'back' ? 'face' : 'back'
  if (!bevel || bevel.angle === 0)
    return [
      hanging(
        'Ease the closing edge',
        `It needs ${mm(closingGap)} to swing past and has ${mm(there)}: widen the gap before hanging.`,
      ),
    ]
  return [
    hanging(
      'Bevel the lead edge',
      `Plane the ${edge} ${degrees(bevel.angle)} off square, taking most off the ${off} (the ${side} leads); it then needs ${mm(bevel.closingGap)} and has ${mm(there)}.`,
    ),
  ]
}

function swingStep(source: StepSource): Step {
  const { spec, swing } = source
  const openTo = spec.openTo ?? 90
  const way = spec.opens === 'to-face' ? 'face' : 'back'
  const ground = swing.flatMap(({ leaf, ground: found }) =>
    found
      ? [
          `${named(source, leaf)}the ground is highest under it at ${degrees(found.angle)}; it wants ${mm(found.clearance)} there.`,
        ]
      : [],
  )
  const order = spec.leaves === 2 ? 'The first leaf opens first and shuts last.' : ''
  return hanging(
    'Check the swing',
    sentences(
      `Swing slowly to ${degrees(openTo)}, towards the ${way}, and back: it should stay where it is left.`,
      ...ground,
      order,
      'Fit a stop where it would strike something.',
    ),
    [
      'Fingers out of hinges and meeting edges; keep children away until it latches. A gate can swing in the wind.',
    ],
  )
}

const lastStep = ({ leaves }: StepSource): Step => {
  const braced = leaves.some(({ braces }) => braces.length > 0)
  return hanging(
    'A last look',
    sentences(
      braced ? 'Each brace has its foot at the hinge side.' : '',
      `${leaves.length === 1 ? 'The leaf' : 'Both leaves'} level at the head, gaps even, all screws home, sharp points off, cut ends sealed.`,
      'Come back after a season: tighten, ease and seal again.',
    ),
  )
}

/** The order of hanging, once for all leaves. */
export const hangingSteps = (source: StepSource): Step[] => [
  postsStep(source),
  hingesStep(source),
  pinsStep(source),
  gapsStep(source),
  ...bevelSteps(source),
  ...latchSteps(source),
  ...boltSteps(source),
  swingStep(source),
  lastStep(source),
]
