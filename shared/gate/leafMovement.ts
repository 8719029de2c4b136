import { equilibriumMoisture, moistureFigure, type Air } from '../timber/moisture.ts'
import {
  autoGap,
  jointGap,
  tongueReach,
  widthChange,
  type CrossGrain,
  type MoistureChange,
} from '../timber/movement.ts'
import { autoGapFigure, changeFigure, jointGapFigure, tongueReachFigure } from '../timber/movementFigures.ts'
import { crossGrain, timberNamed } from '../timber/species.ts'
import { commonPractice, geometry, type Figure, type Figures } from './figures.ts'
import type { Leaf } from './leaf.ts'
import type { InAir, MonthInAir, Movement } from './movement.ts'
import { movementChecks, unknownMovement } from './movementChecks.ts'
import type { GateSpec, Section } from './spec.ts'
import { figure, type Worked } from './worked.ts'

type Climate = NonNullable<GateSpec['climate']>

const grainOf = (spec: GateSpec, section: Section): CrossGrain | undefined => {
  const timber = timberNamed(section.species, spec.timbers)
  return timber && crossGrain(timber)
}

const fromShop = (climate: Climate, air: Air): MoistureChange => ({
  from: equilibriumMoisture(climate.shop),
  to: equilibriumMoisture(air),
})

/**
 * The gap at each joint, mm: as entered, or what a board swells from the shop to the wettest, rounded up to the next 0.5.
 * Throws RangeError where that can't be worked out, which the reader of specs refuses.
 */
export function gapOf(spec: GateSpec): Worked<number> {
  const { gap, section } = spec.boards
  if (gap !== 'auto') return { value: gap, figures: {}, checks: [] }
  const grain = grainOf(spec, section)
  if (!spec.climate || !grain)
    throw new RangeError("gapOf needs a climate and a timber whose movement is known for a gap of 'auto'")
  const change = fromShop(spec.climate, spec.climate.wettest)
  return {
    value: autoGap(section.width, change, grain),
    figures: { 'boards.gap': autoGapFigure(section.width, change, grain) },
    checks: [],
  }
}

/** What the leaf is made of when its movement is worked out; the stiles' grain on a framed leaf. */
type Moving = { spec: GateSpec; leaf: Leaf; gap: number; grain: CrossGrain; stile: CrossGrain | undefined }

/**
 * Width of the leaf over all. Boards are held at their middles, so the outer halves of the edge boards move the edges, and a joint that has
 * closed pushes on. On a framed leaf the stiles move its edges.
 */
function widthFigure({ spec, leaf, gap, stile }: Moving, change: MoistureChange, boards: number[]): Figure {
  if (spec.frame) {
    const own = stile ? widthChange(spec.frame.stile.width, stile, change) : 0
    return figure(leaf.width + 2 * own, 'mm', {
      formula: 'leaf width + 2 × change of a stile',
      inputs: { 'leaf width': leaf.width, 'change of a stile': own },
      source: geometry,
    })
  }
  const edges = ((boards[0] ?? 0) + (boards.at(-1) ?? 0)) / 2
  const pushed = boards
    .slice(1)
    .reduce((sum, own, i) => sum + Math.max(0, (own + (boards[i] ?? 0)) / 2 - gap), 0)
  return figure(leaf.width + edges + pushed, 'mm', {
    formula: 'leaf width + half the change of each edge board + what closed joints push',
    inputs: {
      'leaf width': leaf.width,
      'half the change of each edge board': edges,
      'what closed joints push': pushed,
    },
    source: `${geometry}; each board held at its middle: ${commonPractice}`,
  })
}

function inAir(moving: Moving, climate: Climate, at: { air: Air; id: string }): Worked<InAir> {
  const { spec, leaf, gap, grain } = moving
  const { width: cover, tongue = 0 } = spec.boards.section
  const change = fromShop(climate, at.air)
  const boards = leaf.boards.map(({ width }) => widthChange(width, grain, change))
  const width = widthFigure(moving, change, boards)
  const joint = jointGap(gap, cover, { grain, change })
  const reach = tongue > 0 ? tongueReach(tongue, Math.max(0, joint)) : null
  const figures: Figures = {
    [`${at.id}.moisture`]: moistureFigure(at.air),
    [`${at.id}.boardChange`]: changeFigure(cover, grain, change),
    [`${at.id}.leafWidth`]: width,
    [`${at.id}.jointGap`]: jointGapFigure(gap, cover, { grain, change }),
    ...(reach === null ? {} : { [`${at.id}.tongueReach`]: tongueReachFigure(tongue, Math.max(0, joint)) }),
  }
  leaf.boards.forEach((board, index) => {
    figures[`${at.id}.board.${index + 1}`] = changeFigure(board.width, grain, change)
  })
  return {
    value: {
      moisture: change.to,
      boardChange: widthChange(cover, grain, change),
      boards,
      leafWidth: width.value,
      jointGap: joint,
      tongueReach: reach,
    },
    figures,
    checks: [],
  }
}

/** The twelve months: only what is drawn of them. */
function monthsOf(moving: Moving, climate: Climate): Worked<MonthInAir[]> {
  const { leaf, gap, grain, spec } = moving
  const figures: Figures = {}
  const value = (climate.months ?? []).map((air, index): MonthInAir => {
    const change = fromShop(climate, air)
    const boards = leaf.boards.map(({ width }) => widthChange(width, grain, change))
    const width = widthFigure(moving, change, boards)
    const joint = jointGapFigure(gap, spec.boards.section.width, { grain, change })
    const id = `movement.month.${index + 1}`
    figures[`${id}.moisture`] = moistureFigure(air)
    figures[`${id}.leafWidth`] = width
    figures[`${id}.jointGap`] = joint
    return { moisture: change.to, leafWidth: width.value, jointGap: joint.value }
  })
  return { value, figures, checks: [] }
}

/** How the boarding of a leaf moves between shop, wettest and driest and through the year; null without a climate. */
export function leafMovement(spec: GateSpec, leaf: Leaf, gap: number): Worked<Movement | null> {
  const { climate } = spec
  if (!climate) return { value: null, figures: {}, checks: [] }
  const { section } = spec.boards
  const grain = grainOf(spec, section)
  if (!grain) return { value: null, figures: {}, checks: [unknownMovement(section.species)] }
  const stile = spec.frame && grainOf(spec, spec.frame.stile)
  const moving: Moving = { spec, leaf, gap, grain, stile }
  const [shop, wettest, driest] = (['shop', 'wettest', 'driest'] as const).map((name) =>
    inAir(moving, climate, { air: climate[name], id: `movement.${name}` }),
  ) as [Worked<InAir>, Worked<InAir>, Worked<InAir>]
  const months = monthsOf(moving, climate)
  const movement: Movement = {
    species: section.species,
    gap,
    shop: shop.value,
    wettest: wettest.value,
    driest: driest.value,
    months: months.value,
  }
  return {
    value: movement,
    figures: { ...shop.figures, ...wettest.figures, ...driest.figures, ...months.figures },
    checks: movementChecks(movement, section.tongue ?? 0),
  }
}
