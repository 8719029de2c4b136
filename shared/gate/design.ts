import { cutFigures } from '../cutting/cutFigures.ts'
import { cutList } from '../cutting/cutList.ts'
import { sawSettings } from '../cutting/sawSettings.ts'
import { isStop, type Check } from './checks.ts'
import { engine, type Design, type DesignOutcome } from './designModel.ts'
import type { Figures } from './figures.ts'
import { sizeHoles } from './holeSizes.ts'
import { layLeaf, prefixed, type LaidLeaf } from './layLeaf.ts'
import type { Leaf } from './leaf.ts'
import { planLeaves, type LeafPlan } from './leafPlan.ts'
import type { GateSpec } from './spec.ts'
import { writeSteps } from './steps.ts'
import { gather } from './worked.ts'

const stopped = (checks: Check[]): DesignOutcome => ({ made: false, stopped: { engine, leaves: [], checks } })

/** The gap between boards, mm, as entered. */
function jointGap(spec: GateSpec): number {
  if (spec.boards.gap === 'auto') throw new RangeError("jointGap takes a gap in mm; 'auto' is refused before")
  return spec.boards.gap
}

/** What was found on a further leaf, saying which; what it only shares with the first is said once. */
function ownChecks(plan: LeafPlan, checks: Check[], first: Check[]): Check[] {
  const said = new Set(first.map(({ id, message }) => `${id}|${message}`))
  const name = `${plan.name[0]?.toUpperCase()}${plan.name.slice(1)}`
  return checks
    .filter(({ id, message }) => !said.has(`${id}|${message}`))
    .map((check) => ({ ...check, message: `${name}: ${check.message}` }))
}

/** Every leaf laid out, the first's figures under their own ids and a further one's under its prefix. */
function layLeaves(spec: GateSpec, plans: LeafPlan[], gap: number): LaidLeaf[] {
  const laid = plans.map((plan) => prefixed(layLeaf(spec, plan, gap), plan.prefix))
  const first = laid[0]?.checks ?? []
  return laid.map((one, index) =>
    index === 0 ? one : { ...one, checks: ownChecks(plans[index] as LeafPlan, one.checks, first) },
  )
}

/** Everything that is worked out over all leaves once they are laid. */
function finish(
  spec: GateSpec,
  leaves: Leaf[],
  before: { figures: Figures; checks: Check[] },
): DesignOutcome {
  const holes = sizeHoles(
    spec,
    leaves.flatMap((leaf) => leaf.fixings),
  )
  const checks = [...before.checks, ...holes.checks]
  if (checks.some(isStop)) return stopped(checks)
  const cuts = cutList(spec, leaves)
  const saws = sawSettings(spec, leaves)
  const made: Design = {
    engine,
    leaves,
    cuts,
    holes: holes.value,
    sawSettings: saws.settings,
    checks,
    figures: { ...before.figures, ...holes.figures, ...saws.figures, ...cutFigures(cuts, leaves) },
    steps: writeSteps({ spec, leaves, cuts, holes: holes.value }),
  }
  return { made: true, design: made }
}

/**
 * Works out a gate from a spec that `parseSpec` has let through: every part, hole, cut, check, figure and step; or, when it
 * can't be made as entered, the checks alone. The hand changes nothing here: it mirrors the drawing only.
 */
export function design(spec: GateSpec): DesignOutcome {
  const plans = planLeaves(spec)
  if (plans.value.length === 0) return stopped(plans.checks)
  const laid = layLeaves(spec, plans.value, jointGap(spec))
  const before = gather([plans, ...laid])
  const leaves = laid.flatMap(({ value }) => (value ? [value] : []))
  if (leaves.length < laid.length || before.checks.some(isStop)) return stopped(before.checks)
  return finish(spec, leaves, before)
}
