import type { Leaf } from '../gate/leaf.ts'
import type { GateSpec } from '../gate/spec.ts'
import type { Finish, HingeEntry } from './entry.ts'
import { hingeLines, standardHingePlaces, type HingePlace } from './hingeLines.ts'
import { hookAndBandSets } from './hookAndBand.ts'
import { reckonedMass, strapWanted, thirdHinge } from './hingeRules.ts'
import { teeHinges } from './teeHinges.ts'

/** What a leaf weighs with everything on it, kg, and how far its centre is from the hanging edge, mm. */
export type LeafWeight = { massKg: number; centreX: number }

/** How many hinges a leaf gets: three where it is heavy or high and has a middle line for the third, else two. */
export function hingeCount(leaf: Leaf, { massKg }: LeafWeight): 2 | 3 {
  const three = massKg > thirdHinge.overKg || leaf.height > thirdHinge.overHeight
  return three && hingeLines(leaf).length === 3 ? 3 : 2
}

/** Distance between the outer hinges, mm; 0 with fewer than two. */
export function spacingOf(heights: readonly number[]): number {
  return heights.length < 2 ? 0 : Math.max(...heights) - Math.min(...heights)
}

/** Mass to set against a rating with hinges at given heights, kg; the mass itself where there is no spacing to reckon with. */
export function reckonedAt(spec: GateSpec, weight: LeafWeight, heights: readonly number[]): number {
  const spacing = spacingOf(heights)
  const centreOut = weight.centreX - (spec.site?.pinInset ?? 0)
  return spacing > 0 ? reckonedMass({ massKg: weight.massKg, centreOut, spacing }) : weight.massKg
}

/** Whether a strap is long enough for a leaf and no longer than it, and its pair rated for the mass. */
const suits = (hinge: HingeEntry, leafWidth: number, massKg: number): boolean =>
  hinge.strapLength > strapWanted(leafWidth) &&
  hinge.strapLength <= leafWidth &&
  hinge.maxLeafMassKg >= massKg

/** The strongest hinge there is that isn't longer than the leaf, for a leaf that none suits. */
const strongest = (hinges: readonly HingeEntry[], leafWidth: number): HingeEntry | undefined =>
  [...hinges]
    .filter(({ strapLength }) => strapLength <= leafWidth)
    .sort((a, b) => b.maxLeafMassKg - a.maxLeafMassKg)[0]

/** A proposed hinge and where its fellows stand, bottom up. */
export type ProposedHinge = { hinge: HingeEntry; places: HingePlace[] }

/**
 * The shortest listed hinge of a finish that is long enough and rated for a leaf: tee hinges first, then hook-and-band sets. Where none
 * is, the strongest that the leaf is wide enough for. Undefined for a leaf without ledges or narrower than every strap.
 */
export function proposeHinge(
  spec: GateSpec,
  leaf: Leaf,
  { weight, finish }: { weight: LeafWeight; finish: Finish },
): ProposedHinge | undefined {
  const places = standardHingePlaces(leaf, hingeCount(leaf, weight))
  const massKg = reckonedAt(
    spec,
    weight,
    places.map(({ y }) => y),
  )
  const listed = [...teeHinges, ...hookAndBandSets].filter((hinge) => hinge.finish === finish)
  const hinge = listed.find((entry) => suits(entry, leaf.width, massKg)) ?? strongest(listed, leaf.width)
  return hinge && places.length > 0 ? { hinge, places } : undefined
}
