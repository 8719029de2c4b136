import { ovenDryGravity, speciesNamed } from '../timber/species.ts'
import type { Check } from './checks.ts'
import { commonPractice, workshopSetting, type Figures } from './figures.ts'
import { chooseLength, clench, headSunk, pointBehindFace, type ChosenLength } from './fixingLength.ts'
import type { DrillChoice, Hole } from './holes.ts'
import { drillAtLeast, leadHole, nearestDrill } from './leadHole.ts'
import type { Fixing } from './leaf.ts'
import type { GateSpec, Section } from './spec.ts'
import { workshopOf } from './standardSpec.ts'
import { writeShortMm } from '../units/writeLength.ts'
import { figure, type Worked } from './worked.ts'

/** A part that fixings go through, with how many there are. */
type Member = { key: string; name: string; section: Section; quantity: number; field: string }

const isTop = (place: Fixing) => place.member === 'top ledge'

function membersOf(spec: GateSpec, places: Fixing[]): Member[] {
  const { section, topSection } = spec.ledges
  const onLedges = places.filter((place) => place.joins === 'ledge')
  const members: Member[] = [
    {
      key: topSection ? 'lowerLedges' : 'ledges',
      name: topSection ? 'lower ledges' : 'ledges',
      section,
      quantity: onLedges.filter((place) => !topSection || !isTop(place)).length,
      field: 'ledges.section',
    },
  ]
  if (topSection)
    members.push({
      key: 'topLedge',
      name: 'top ledge',
      section: topSection,
      quantity: onLedges.filter(isTop).length,
      field: 'ledges.topSection',
    })
  if (spec.braces)
    members.push({
      key: 'braces',
      name: 'braces',
      section: spec.braces.section,
      quantity: places.length - onLedges.length,
      field: 'braces.section',
    })
  return members
}

function noLengthStop(spec: GateSpec, member: Member): Check {
  const { kind, lengths } = spec.fixings
  const total = member.section.thickness + spec.boards.section.thickness
  const wanted =
    kind === 'screw'
      ? `over ${member.section.thickness - headSunk} and up to ${total - headSunk - pointBehindFace} mm`
      : `${total + clench.least} to ${total + clench.most} mm`
  return {
    id: 'no-fixing-fits',
    level: 'stop',
    message: `No ${kind} in stock fits through the ${member.name}: ${wanted} is wanted, ${lengths.join(', ')} are kept.`,
    figures: [],
    remedy: `Add a ${kind} of that length, or change the thickness of the ${member.name}.`,
    field: 'fixings.lengths',
  }
}

function penetrationChecks(spec: GateSpec, member: Member, chosen: NonNullable<ChosenLength>): Check[] {
  const board = spec.boards.section.thickness
  const { kind, diameter } = spec.fixings
  const figures = [`hole.${member.key}.penetration`]
  const id = `through the ${member.name}`
  if (kind === 'nail')
    return chosen.length > member.section.thickness + board + clench.most
      ? [
          {
            id: 'nail-long',
            level: 'caution',
            field: 'fixings.lengths',
            figures: [`hole.${member.key}.length`],
            message: `The nearest nail ${id} is ${chosen.length} mm and leaves ${writeShortMm(chosen.length - member.section.thickness - board)} mm to clench; ${clench.least} to ${clench.most} mm is usual.`,
            remedy: 'Cut the points back before clenching, or keep a shorter nail.',
          },
        ]
      : []
  if (chosen.penetration < board / 2)
    return [
      {
        id: 'penetration-small',
        level: 'caution',
        field: 'fixings.lengths',
        figures,
        message: `The screw ${id} goes only ${writeShortMm(chosen.penetration)} mm into a board ${board} mm thick.`,
        remedy: 'Keep a longer screw, or use a thinner ledge or brace.',
      },
    ]
  if (chosen.penetration < 6 * diameter)
    return [
      {
        id: 'penetration-structural',
        level: 'note',
        field: 'fixings.lengths',
        figures,
        message: `The screw ${id} goes ${writeShortMm(chosen.penetration)} mm into the board, under the ${writeShortMm(6 * diameter)} mm (6 diameters) asked of a structural screw by EN 1995-1-1 §8.7.2(3).`,
        remedy:
          'Usual for boards this thin: the ledges and the brace carry the leaf, not the pull of the screws.',
      },
    ]
  return []
}

const choice = (exact: number, drill: number | null): DrillChoice => ({ exact, drill })

function holeOf(spec: GateSpec, member: Member, chosen: NonNullable<ChosenLength>): Worked<Hole> {
  const { kind, diameter, root = (2 / 3) * diameter } = spec.fixings
  const { drills, clearance, leadRule } = workshopOf(spec)
  const boardSpecies = spec.boards.section.species
  const species = speciesNamed(boardSpecies, spec.timbers)
  if (!species) throw new RangeError(`holeOf needs a known species, got ${boardSpecies}`)
  const gravity = ovenDryGravity(species.density)
  const lead = leadHole(leadRule, gravity, { root, shank: diameter })
  const id = `hole.${member.key}`
  const through = member.section.thickness
  const board = spec.boards.section.thickness
  const screw = kind === 'screw'
  const hole: Hole = {
    through: member.name,
    quantity: member.quantity,
    fixing: `${kind} ${diameter} × ${chosen.length}`,
    fixingLength: chosen.length,
    penetration: chosen.penetration,
    clearance: screw ? choice(diameter + clearance, drillAtLeast(diameter + clearance, drills)) : null,
    lead: screw && lead.diameter !== null ? choice(lead.diameter, nearestDrill(lead.diameter, drills)) : null,
    countersink: screw ? choice(2 * diameter, nearestDrill(2 * diameter, drills)) : null,
  }
  const figures: Figures = {
    [`${id}.length`]: screw
      ? figure(chosen.length, 'mm', {
          formula: 'longest in stock up to part + board − head sunk − kept behind the face',
          inputs: { part: through, board, 'head sunk': headSunk, 'kept behind the face': pointBehindFace },
          source: commonPractice,
        })
      : figure(chosen.length, 'mm', {
          formula: 'nearest in stock to part + board + what is clenched',
          inputs: {
            part: through,
            board,
            'clenched at least': clench.least,
            'clenched at most': clench.most,
          },
          source: commonPractice,
        }),
    [`${id}.penetration`]: screw
      ? figure(chosen.penetration, 'mm', {
          formula: 'length + head sunk − part',
          inputs: { length: chosen.length, 'head sunk': headSunk, part: through },
          source: 'plane geometry',
        })
      : figure(chosen.penetration, 'mm', {
          formula: 'right through the part',
          inputs: { part: through },
          source: commonPractice,
        }),
    [`${id}.quantity`]: figure(member.quantity, 'no.', {
      formula: 'places through this part',
      inputs: { places: member.quantity },
      source: 'plane geometry',
    }),
  }
  if (screw) Object.assign(figures, screwFigures(id, { hole, clearance, diameter, root, gravity, lead }))
  return { value: hole, figures, checks: penetrationChecks(spec, member, chosen) }
}

function screwFigures(
  id: string,
  {
    hole,
    clearance,
    diameter,
    root,
    gravity,
    lead,
  }: {
    hole: Hole
    clearance: number
    diameter: number
    root: number
    gravity: number
    lead: ReturnType<typeof leadHole>
  },
): Figures {
  const figures: Figures = {
    [`${id}.clearance`]: figure(diameter + clearance, 'mm', {
      formula: 'shank + allowance, so that the boards can move',
      inputs: { shank: diameter, allowance: clearance },
      source: workshopSetting,
    }),
    [`${id}.countersink`]: figure(2 * diameter, 'mm', {
      formula: '2 × shank',
      inputs: { shank: diameter },
      source: 'flat heads are about twice the shank: production-screw table after ASME B18.6.1',
    }),
    [`${id}.root`]: figure(root, 'mm', {
      formula: 'as entered, else 2/3 × shank',
      inputs: { shank: diameter },
      source: 'Wood Handbook FPL-GTR-190 ch. 8: the root averages about two-thirds of the shank',
    }),
    [`${id}.gravity`]: figure(gravity, '', {
      formula: 'r / (1.12 − 0.108 × r), r = density / 1000',
      inputs: { r: (gravity * 1.12) / (1 + 0.108 * gravity) },
      source: 'NDS relation between density at 12 % moisture and oven-dry specific gravity',
    }),
    [`${id}.lead`]: figure(lead.diameter ?? 0, 'mm', {
      formula: lead.formula,
      inputs: { root, shank: diameter, 'specific gravity': gravity },
      source: lead.source,
    }),
  }
  const drilled: [string, DrillChoice | null, string][] = [
    ['clearanceDrill', hole.clearance, 'the smallest drill of the set not under it'],
    ['leadDrill', hole.lead, 'the drill of the set nearest to it'],
    ['countersinkDrill', hole.countersink, 'the drill of the set nearest to it'],
  ]
  for (const [name, made, formula] of drilled)
    if (made && made.drill !== null)
      figures[`${id}.${name}`] = figure(made.drill, 'mm', {
        formula,
        inputs: { exact: made.exact },
        source: workshopSetting,
      })
  return figures
}

/** The fixing and the holes for every part that fixings go through. */
export function sizeHoles(spec: GateSpec, places: Fixing[]): Worked<Hole[]> {
  const checks: Check[] = []
  const figures: Figures = {}
  const holes: Hole[] = []
  for (const member of membersOf(spec, places)) {
    const chosen = chooseLength(spec.fixings, member.section.thickness, spec.boards.section.thickness)
    if (!chosen) {
      checks.push(noLengthStop(spec, member))
      continue
    }
    const worked = holeOf(spec, member, chosen)
    holes.push(worked.value)
    checks.push(...worked.checks)
    Object.assign(figures, worked.figures)
  }
  return { value: holes, figures, checks }
}
