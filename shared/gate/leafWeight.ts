import type { PlacedPiece } from '../ironmongery/placePieces.ts'
import { densityFigure, densityFrom, listedMoisture } from '../timber/density.ts'
import { sourceWords } from '../timber/fact.ts'
import { equilibriumMoisture } from '../timber/moisture.ts'
import { timberNamed } from '../timber/species.ts'
import { signedArea } from '../geometry/polygon.ts'
import { geometry, workshopSetting, type Figures } from './figures.ts'
import type { Leaf } from './leaf.ts'
import { leafPieces, type Piece, type PieceKind } from './leafPieces.ts'
import type { LeafPlan } from './leafPlan.ts'
import { massFigures, massOf, type Mass, type PointMass } from './massOf.ts'
import type { GateSpec, Section } from './spec.ts'
import { figure, type Worked } from './worked.ts'

/** A leaf before it is weighed: how it was planned, its parts, and the ironmongery placed on it. */
export type Weighed = { spec: GateSpec; plan: LeafPlan; leaf: Leaf; placed: readonly PlacedPiece[] }

/** A leaf's mass and its centre, and what of it is ironmongery at the closing edge, kg. */
export type LeafMass = Mass & { closingKg: number }

/** The moisture content in % that a gate is weighed at: midway between its wettest and driest, else that of the listed densities. */
export const expectedMoisture = ({ climate }: Pick<GateSpec, 'climate'>): number =>
  climate ? (equilibriumMoisture(climate.wettest) + equilibriumMoisture(climate.driest)) / 2 : listedMoisture

/** Density in kg/m³ of a section's timber at a moisture content in %. */
function densityAtMoisture(spec: GateSpec, section: Section, moisture: number) {
  const timber = timberNamed(section.species, spec.timbers)
  if (!timber) throw new RangeError(`a known species was expected, got ${section.species}`)
  const { value } = timber.density
  return {
    density: moisture === listedMoisture ? value : densityFrom(value, moisture),
    how: densityFigure(value, moisture, sourceWords(timber.density)),
    listed: figure(value, 'kg/m³', {
      formula: 'density as listed',
      inputs: { 'density at 12 %': value },
      source: sourceWords(timber.density),
    }),
  }
}

type Density = ReturnType<typeof densityAtMoisture>

/** The densities of every section that the pieces are of, each looked up once. */
function densitiesOf(spec: GateSpec, pieces: Piece[]): Map<Section, Density> {
  const moisture = expectedMoisture(spec)
  const found = new Map<Section, Density>()
  for (const { section } of pieces)
    if (!found.has(section)) found.set(section, densityAtMoisture(spec, section, moisture))
  return found
}

const volumeOf = ({ outline, thickness }: Piece): number => Math.abs(signedArea(outline)) * thickness

/** Volume in mm³ and mass in kg of one kind of part. */
function totalOf(pieces: Piece[], densities: Map<Section, Density>) {
  return pieces.reduce(
    (sum, piece) => {
      const volume = volumeOf(piece)
      return {
        volume: sum.volume + volume,
        massKg: sum.massKg + (volume * (densities.get(piece.section)?.density ?? 0)) / 1e9,
      }
    },
    { volume: 0, massKg: 0 },
  )
}

const kinds: readonly PieceKind[] = ['boards', 'ledges', 'braces', 'frame']

/** Each kind's volume and mass as worked figures, and the density that goes with it. */
function kindFigures(spec: GateSpec, pieces: Piece[], densities: Map<Section, Density>) {
  const figures: Figures = {}
  const byPart: Record<string, number> = {}
  for (const kind of kinds) {
    const own = pieces.filter((piece) => piece.kind === kind)
    const first = own[0]
    if (!first) continue
    const { volume, massKg } = totalOf(own, densities)
    const density = densities.get(first.section) as Density
    byPart[kind] = massKg
    figures[`weight.${kind}.density`] =
      expectedMoisture(spec) === listedMoisture ? density.listed : density.how
    figures[`weight.${kind}`] = figure(massKg, 'kg', {
      formula: 'volume × density, each piece by its own',
      inputs: { 'volume m³': volume / 1e9, 'mean density kg/m³': (massKg * 1e9) / volume },
      source: `${geometry}; densities as entered or listed, each with a figure of its own`,
    })
  }
  return { figures, byPart }
}

/** How many of each entry of the ironmongery have found a place: an entry's whole mass is shared among them. */
export function placedCounts(placed: readonly PlacedPiece[]): Map<number, number> {
  const counts = new Map<number, number>()
  for (const { entry } of placed) counts.set(entry, (counts.get(entry) ?? 0) + 1)
  return counts
}

/** The mass of one placed piece, kg: its entry's whole mass shared among those of it that are placed. */
const massOfPiece = ({ piece, entry }: PlacedPiece, counts: Map<number, number>): number =>
  ((piece.massKg ?? 0) * piece.quantity) / (counts.get(entry) ?? 1)

/** A piece as one mass at its middle; a strap longer than the leaf is wide counts at the leaf's own middle. */
function pieceMass(placed: PlacedPiece, leaf: Leaf, counts: Map<number, number>): PointMass {
  const { x, width } = placed.rectangle
  const from = Math.max(0, x)
  return {
    at: [(from + Math.max(from, Math.min(x + width, leaf.width))) / 2, placed.height],
    massKg: massOfPiece(placed, counts),
  }
}

/** The ironmongery at each edge as worked figures. */
function metalFigures(placed: readonly PlacedPiece[], points: PointMass[]) {
  const figures: Figures = {}
  const byPart: Record<string, number> = {}
  const at = { hanging: 0, closing: 0 }
  placed.forEach(({ side }, index) => (at[side] += points[index]?.massKg ?? 0))
  for (const side of ['hanging', 'closing'] as const) {
    if (at[side] === 0) continue
    byPart[`ironmongery at the ${side} side`] = at[side]
    figures[`weight.ironmongery.${side}`] = figure(at[side], 'kg', {
      formula: 'sum of quantity × mass of each',
      inputs: { pieces: placed.filter((one) => one.side === side).length, 'mass kg': at[side] },
      source: workshopSetting,
    })
  }
  return { figures, byPart, closingKg: at.closing }
}

/**
 * Mass and centre of one leaf as it hangs, ± 10 %: timber by volume and density at the expected moisture, ironmongery where it is placed.
 * counts: how many of each entry of the ironmongery are placed on all leaves.
 */
export function weighLeaf(weighed: Weighed, counts: Map<number, number>): Worked<LeafMass> {
  const { spec, plan, leaf, placed } = weighed
  const pieces = leafPieces(spec, plan, leaf)
  const densities = densitiesOf(spec, pieces)
  const points = placed.map((one) => pieceMass(one, leaf, counts))
  const mass = massOf(
    pieces.map(({ outline, thickness, section }) => ({
      outline,
      thickness,
      density: densities.get(section)?.density ?? 0,
    })),
    points,
  )
  const timber = kindFigures(spec, pieces, densities)
  const metal = metalFigures(placed, points)
  const whole = massFigures(mass, { ...timber.byPart, ...metal.byPart })
  return {
    value: { ...mass, closingKg: metal.closingKg },
    figures: {
      ...timber.figures,
      ...metal.figures,
      'leaf.mass': whole.mass,
      'leaf.centreX': whole.x,
      'leaf.centreY': whole.y,
    },
    checks: [],
  }
}
