import type { LeafSwing } from '../gate/leafSwing.ts'
import type { GateSpec } from '../gate/spec.ts'
import type { Point } from '../geometry/point.ts'
import { box } from './box.ts'
import { withoutNoughts } from './dimensions.ts'
import type { Drawing, Mark } from './drawing.ts'
import type { GateView } from './elevation.ts'
import type { FigureText } from './figureText.ts'
import { placeOn, setDown, type Placing } from './placeLeaves.ts'
import { gapsOf, leafMarks, planOf, post, turned, type Plan } from './swingLeaf.ts'

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
    title: `Swing from above, to the ${spec.opens === 'to-face' ? 'face' : 'back'}`,
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

/** Where the pin stands, or what was taken because nobody has measured it. */
function pinNotes({ site, opens }: GateSpec, figures: FigureText): string[] {
  const { pinInset, pinProud } = site ?? {}
  const leading = opens === 'to-face' ? 'face' : 'back'
  if (pinInset === undefined && pinProud === undefined)
    return [`Pin taken at the hanging edge, flush with the ${leading}`]
  const [inset, proud] = [pinInset ?? 0, pinProud ?? 0]
  return [
    `Pin ${figures.write(Math.abs(inset))} ${inset < 0 ? 'beyond' : 'in from'} the hanging edge`,
    `Pin ${figures.write(Math.abs(proud))} ${proud < 0 ? 'behind' : 'proud of'} the ${leading}`,
  ]
}

function notesOf(spec: GateSpec, swings: LeafSwing[], figures: FigureText): string[] {
  const [swing] = swings
  const lines = pinNotes(spec, figures)
  if (!swing) return lines
  const least = `Least gap at the closing edge ${exact(swing.closingGap)} mm`
  if (!swing.bevel) return [...lines, least]
  const { angle, closingGap } = swing.bevel
  const left = closingGap < 1e-6 ? 'None' : `${exact(closingGap)} mm`
  return [...lines, least, `${left} with that edge bevelled ${angle.toFixed(1)}°`]
}

/** A gap of the swing to the tenth of a millimetre: half millimetres would say too little of it. */
const exact = (mm: number): string => (Math.ceil(mm * 10 - 1e-9) / 10).toFixed(1)
