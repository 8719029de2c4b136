import { cutFigures } from '../cutting/cutFigures.ts'
import { cutList } from '../cutting/cutList.ts'
import { sawSettings } from '../cutting/sawSettings.ts'
import { isStop, type Check } from './checks.ts'
import { engine, type Design, type DesignOutcome } from './designModel.ts'
import { sizeHoles } from './holeSizes.ts'
import { fitIronmongery } from '../ironmongery/fittings.ts'
import { ironmongeryChecks } from '../ironmongery/ironmongeryChecks.ts'
import { placePieces } from '../ironmongery/placePieces.ts'
import { fixingHold } from './fixingHold.ts'
import { hangLeaf } from './hangLeaf.ts'
import { gapOf, leafMovement } from './leafMovement.ts'
import { leafSwing } from './leafSwing.ts'
import { placedCounts } from './leafWeight.ts'
import { timberChecks } from './timberChecks.ts'
import { layLeaf, type LaidLeaf } from './layLeaf.ts'
import type { Leaf } from './leaf.ts'
import { planLeaves, type LeafPlan } from './leafPlan.ts'
import type { GateSpec } from './spec.ts'
import { writeSteps } from './steps/writeSteps.ts'
import { joined, prefixed, type Worked } from './worked.ts'

const stopped = (checks: Check[]): DesignOutcome => ({ made: false, stopped: { engine, leaves: [], checks } })

/** What was found on a further leaf, saying which; what it only shares with the first is said once. */
function ownChecks(plan: LeafPlan, checks: Check[], first: Check[]): Check[] {
  const said = new Set(first.map(({ id, message }) => `${id}|${message}`))
  const name = `${plan.name[0]?.toUpperCase()}${plan.name.slice(1)}`
  return checks
    .filter(({ id, message }) => !said.has(`${id}|${message}`))
    .map((check) => ({ ...check, message: `${name}: ${check.message}` }))
}

/** Whether a pair's second leaf is of the first's size, foot and top: always, unless their feet follow the ground. */
const sameShape = (first: LeafPlan, other: LeafPlan): boolean =>
  first.name === 'first leaf' &&
  other.name === 'second leaf' &&
  other.height === first.height &&
  first.foot(first.width) === 0 &&
  other.foot(other.width) === 0

/** Every leaf laid out, the first's figures under their own ids and a further one's under its prefix. */
function layLeaves(spec: GateSpec, plans: LeafPlan[], gap: number): LaidLeaf[] {
  const [firstPlan] = plans
  if (!firstPlan) return []
  const first = layLeaf(spec, firstPlan, { gap })
  const others = plans.slice(1).map((plan) => {
    const like = sameShape(firstPlan, plan) ? first.common : undefined
    const one = layLeaf(spec, plan, { gap, like })
    return { ...one, checks: ownChecks(plan, one.checks, first.checks) }
  })
  return [first, ...others]
}

/** The laid leaves with their plans and what was worked out so far; spec with the joint gap as a length. */
type Laid = { spec: GateSpec; plans: LeafPlan[]; leaves: Leaf[]; before: Worked<unknown>[] }

const checksOf = (parts: Worked<unknown>[]): Check[] => parts.flatMap(({ checks }) => checks)

/** Each leaf weighed, hung and swung, with how its boarding moves. */
function hangLeaves({ spec, plans, leaves }: Laid, gap: number) {
  const placed = placePieces(spec, leaves)
  const counts = placedCounts(placed)
  const movement = leafMovement(spec, leaves[0] as Leaf, gap)
  const wettest = movement.value?.wettest.leafWidth
  const hung = plans.map((plan, index) => {
    const leaf = leaves[index] as Leaf
    const own = placed.filter((one) => one.leaf === leaf)
    return prefixed(hangLeaf({ spec, plan, leaf, placed: own }, counts), plan.prefix)
  })
  const swing = plans.map((plan) => {
    const grown = wettest === undefined ? 0 : Math.max(0, wettest - plan.width)
    return prefixed(leafSwing(spec, plan, grown), plan.prefix)
  })
  const said = (worked: Worked<unknown>[]) =>
    worked.map((one, index) =>
      index === 0
        ? one
        : { ...one, checks: ownChecks(plans[index] as LeafPlan, one.checks, worked[0]?.checks ?? []) },
    )
  const weighed = hung.map(({ value: { massKg, centre } }, index) => ({
    leaf: leaves[index] as Leaf,
    weight: { massKg, centreX: centre.x },
  }))
  const fitted = fitIronmongery(spec, leaves, placed)
  return {
    leaves: hung.map(({ value }) => value),
    movement: movement.value,
    swing: swing.flatMap(({ value }) => (value ? [value] : [])),
    fittings: fitted.value,
    worked: [...said(hung), ...said(swing), movement, fitted, ironmongeryChecks(spec, weighed, placed)],
  }
}

/** Everything that is worked out over all leaves once they are laid. */
function finish(laid: Laid, gap: number): DesignOutcome {
  const { spec } = laid
  const places = laid.leaves.flatMap((leaf) => leaf.fixings)
  const holes = sizeHoles(spec, places)
  const before = checksOf([...laid.before, holes])
  if (before.some(isStop)) return stopped(before)
  const hung = hangLeaves(laid, gap)
  const { leaves, movement, swing, fittings } = hung
  const cuts = cutList(spec, leaves)
  const saws = sawSettings(spec, leaves)
  const made: Design = {
    engine,
    leaves,
    cuts,
    holes: holes.value,
    sawSettings: saws.settings,
    movement,
    swing,
    fittings,
    checks: [...before, ...checksOf(hung.worked), ...timberChecks(spec)],
    figures: joined([
      ...laid.before.map(({ figures }) => figures),
      holes.figures,
      fixingHold(spec, holes.value, places),
      saws.figures,
      cutFigures(cuts, leaves),
      ...hung.worked.map(({ figures }) => figures),
    ]),
    steps: writeSteps({ spec, plans: laid.plans, leaves, cuts, holes: holes.value, fittings, swing }),
  }
  return { made: true, design: made }
}

/** The spec with the gap between its boards as a length, which every rule after needs. */
const withGap = (spec: GateSpec, gap: number): GateSpec =>
  spec.boards.gap === gap ? spec : { ...spec, boards: { ...spec.boards, gap } }

/**
 * Works out a gate from a spec that `parseSpec` has let through: every part, hole, cut, load, check, figure and step; or, when it
 * can't be made as entered, the checks alone. The hand changes nothing here: it mirrors the drawing only.
 */
export function design(entered: GateSpec): DesignOutcome {
  const plans = planLeaves(entered)
  if (plans.value.length === 0) return stopped(plans.checks)
  const gap = gapOf(entered)
  const spec = withGap(entered, gap.value)
  const laid = layLeaves(spec, plans.value, gap.value)
  const before = [plans, gap, ...laid]
  const leaves = laid.flatMap(({ value }) => (value ? [value] : []))
  const checks = checksOf(before)
  if (leaves.length < laid.length || checks.some(isStop)) return stopped(checks)
  return finish({ spec, plans: plans.value, leaves, before }, gap.value)
}
