import type { Point } from '../geometry/point.ts'
import { loadFactor, materialFactor, type LoadDuration } from '../timber/strengthClasses.ts'
import { bearingStressFigure, designBearingFigure } from './bearing.ts'
import { braceLoadChecks } from './braceLoadChecks.ts'
import type { Check } from './checks.ts'
import type { Figure, Figures } from './figures.ts'
import { chooseLength, headSunk } from './fixingLength.ts'
import { braceLoadFigure, braceThrustFigure, ledgeShareFigure, type BraceBurden } from './forces.ts'
import { heldTogetherFigure, type Sheared } from './lateral.ts'
import type { Brace, BraceLoad, Leaf, Ledge } from './leaf.ts'
import type { LeafMass } from './leafWeight.ts'
import { mustPredrill } from './screwRules.ts'
import { sectionStrength } from './sectionStrength.ts'
import type { GateSpec } from './spec.ts'
import { figure, type Worked } from './worked.ts'

/** One brace with the ledge its foot stands on and everything fixed through it. */
type Loaded = { spec: GateSpec; leaf: Leaf; brace: Brace; ledge: Ledge }

/** What a load of a duration comes to on one brace. */
type Case = { duration: LoadDuration; load: Figure; thrust: Figure; share: Figure }

const outdoors = 3

function caseOf(burden: BraceBurden, duration: LoadDuration, angle: number): Case {
  const load = braceLoadFigure(burden)
  const thrust = braceThrustFigure(load.value, angle)
  return { duration, load, thrust, share: ledgeShareFigure(thrust.value, angle) }
}

/** The leaf's own weight for good, or with a person on it for a short while: whichever asks more of the timber. */
function worstCase(burden: BraceBurden, angle: number): Case {
  const own = caseOf({ ...burden, personKg: 0 }, 'permanent', angle)
  if (burden.personKg === 0) return own
  const ridden = caseOf(burden, 'short', angle)
  const asks = ({ load, duration }: Case) => load.value / loadFactor(outdoors, duration)
  return asks(ridden) >= asks(own) ? ridden : own
}

/** What bears on the ledge at the toe: the whole end of a flush brace, the shoulder of a notched one. */
function toeFigures(
  { spec, brace, ledge }: Loaded,
  { thrust, duration }: Case,
): [Figure, Figure] | undefined {
  const timber = sectionStrength(spec, ledge.section)
  if (!timber) return undefined
  const thickness = Math.min(brace.section.thickness, ledge.section.thickness)
  const face = brace.notch === null ? brace.contact : brace.notch.shoulder
  return [
    bearingStressFigure(thrust.value, face, thickness),
    designBearingFigure({ timber, angle: brace.angle, duration }),
  ]
}

/** Shear along the grain between a notch and the end of its ledge, N: length × thickness × k_mod·f_v / γM, at most 8 depths counting. */
function notchHold({ spec, brace, ledge }: Loaded, { duration }: Case): Figure | undefined {
  const timber = sectionStrength(spec, ledge.section)
  if (!timber || brace.notch === null) return undefined
  const [foot] = brace.outline[0] as Point
  const lost = spec.frame ? 0 : (ledge.length - ledge.shortLength) / 2
  const endGrain = Math.max(0, Math.min(foot - ledge.x - lost, 8 * brace.notch.depth))
  const thickness = Math.min(brace.section.thickness, ledge.section.thickness)
  const factor = loadFactor(outdoors, duration)
  const { shear, name } = timber.value
  return figure((factor * shear * endGrain * thickness) / materialFactor, 'N', {
    formula: 'k_mod × fv × end grain × thickness / γM, end grain up to 8 notch depths',
    inputs: { k_mod: factor, fv: shear, 'end grain': endGrain, thickness, γM: materialFactor },
    source: `EN 1995-1-1 §6.1.7 and its German annex, from memory; ${name}: ${timber.source}`,
  })
}

/** How one fixing crosses brace and board; undefined where no length fits or a timber's strength isn't known. */
function shearedOf({ spec, brace }: Loaded): Sheared | undefined {
  const { kind, diameter, root = (2 / 3) * diameter } = spec.fixings
  const board = spec.boards.section
  const chosen = chooseLength(spec.fixings, brace.section.thickness, board.thickness)
  const [inBrace, inBoard] = [brace.section, board].map((one) => sectionStrength(spec, one)?.value.densityLow)
  if (!chosen || inBrace === undefined || inBoard === undefined) return undefined
  const screw = kind === 'screw'
  const head = screw
    ? { depth: brace.section.thickness - headSunk, densityLow: inBrace }
    : { depth: board.thickness, densityLow: inBoard }
  const point = screw
    ? { depth: chosen.penetration, densityLow: inBoard }
    : { depth: brace.section.thickness, densityLow: inBrace }
  if (!(head.depth > 0)) return undefined
  return {
    diameter: screw ? 1.1 * root : diameter,
    predrilled: screw || mustPredrill(Math.max(inBrace, inBoard), diameter),
    head,
    point,
  }
}

/** How many fixings stand in the lower half of a brace: those that can hold its foot back. */
function fixingsAtFoot({ leaf, brace }: Loaded): number {
  const ys = brace.outline.map(([, y]) => y)
  const middle = (Math.min(...ys) + Math.max(...ys)) / 2
  return leaf.fixings.filter(({ member, y }) => member === `${brace.name} brace` && y <= middle).length
}

function holdOf(loaded: Loaded, worst: Case): { held: BraceLoad['heldBy']; how: Figure | undefined } {
  if (loaded.brace.notch !== null) {
    const how = notchHold(loaded, worst)
    return { held: { by: 'notch', count: 1, holdN: how?.value ?? null }, how }
  }
  const count = fixingsAtFoot(loaded)
  const sheared = shearedOf(loaded)
  const how =
    sheared &&
    heldTogetherFigure(sheared, {
      count,
      loadFactor: loadFactor(outdoors, worst.duration),
      materialFactor,
    })
  return { held: { by: 'fixings', count, holdN: how?.value ?? null }, how }
}

function loadOf(loaded: Loaded, burden: BraceBurden): Worked<BraceLoad> {
  const { brace } = loaded
  const worst = worstCase(burden, brace.angle)
  const toe = toeFigures(loaded, worst)
  const { held, how } = holdOf(loaded, worst)
  const id = `brace.${brace.name}`
  const figures: Figures = {
    [`${id}.load`]: worst.load,
    [`${id}.thrust`]: worst.thrust,
    [`${id}.alongLedge`]: worst.share,
    ...(toe ? { [`${id}.toeStress`]: toe[0], [`${id}.toeAllowed`]: toe[1] } : {}),
    ...(how ? { [`${id}.hold`]: how } : {}),
  }
  const load: BraceLoad = {
    name: brace.name,
    loadN: worst.load.value,
    thrustN: worst.thrust.value,
    alongLedgeN: worst.share.value,
    toe: toe ? { stress: toe[0].value, allowed: toe[1].value } : null,
    heldBy: held,
  }
  return { value: load, figures, checks: braceLoadChecks(load, loaded.ledge) }
}

/**
 * What each brace of a leaf carries, each checked as if it held the whole load alone: half the leaf's weight, the ironmongery at the closing
 * edge and a person on the end where one is reckoned with.
 */
export function braceLoads(spec: GateSpec, leaf: Leaf, mass: LeafMass): Worked<BraceLoad[]> {
  const burden = {
    leafKg: mass.massKg,
    closingKg: mass.closingKg,
    personKg: spec.site?.personKg ?? 0,
  }
  const worked = leaf.braces.flatMap((brace, index) => {
    const ledge = leaf.ledges[index]
    return ledge ? [loadOf({ spec, leaf, brace, ledge }, burden)] : []
  })
  const checks: Check[] = worked.flatMap((one) => one.checks)
  return {
    value: worked.map(({ value }) => value),
    figures: Object.assign({}, ...worked.map(({ figures }) => figures)) as Figures,
    checks,
  }
}
