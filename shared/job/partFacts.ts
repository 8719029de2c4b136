import type { Hole } from '../gate/holes.ts'
import type { Board, Brace, Leaf, Ledge } from '../gate/leaf.ts'
import { writeBoth } from '../units/writeLength.ts'
import type { PaperParts } from './issuedPaper.ts'
import type { LengthUnit } from './job.ts'
import type { Fact } from './specFacts.ts'

/** An angle as it is set on a saw or bevel, to a tenth of a degree. */
const degrees = (angle: number): string => `${Math.round(angle * 10) / 10}°`

function boardFacts(boards: Board[], unit: LengthUnit): Fact[] {
  return [
    ['boards', String(boards.length)],
    ...boards.map((board, index): Fact => [`board ${index + 1} width`, writeBoth(board.width, unit)]),
    ...boards.map((board, index): Fact => [`board ${index + 1} length`, writeBoth(board.length, unit)]),
  ]
}

const ledgePartFacts = (ledge: Ledge, unit: LengthUnit): Fact[] => [
  [`${ledge.name} ledge length`, writeBoth(ledge.length, unit)],
  [`${ledge.name} ledge short face or edge`, writeBoth(ledge.shortLength, unit)],
  [`${ledge.name} ledge height from the foot`, writeBoth(ledge.y, unit)],
]

function bracePartFacts(brace: Brace, unit: LengthUnit): Fact[] {
  const name = brace.name === 'single' ? 'brace' : `${brace.name} brace`
  return [
    [`${name} length`, writeBoth(brace.length, unit)],
    [`${name} angle`, degrees(brace.angle)],
    [`${name} saw setting`, degrees(brace.sawSetting)],
  ]
}

const drillOf = (choice: Hole['lead']): string =>
  choice === null ? 'none' : choice.drill === null ? 'no drill in the set' : `${choice.drill} mm`

const holeFacts = (hole: Hole): Fact[] => [
  [`fixing through the ${hole.through}`, hole.fixing],
  [`clearance hole, ${hole.through}`, drillOf(hole.clearance)],
  [`lead hole, ${hole.through}`, drillOf(hole.lead)],
]

function fixingCount(leaf: Leaf): Fact {
  return ['fixings in all', String(leaf.fixings.length)]
}

/** What came out for a gate, part by part. */
export const partFacts = ({ leaves, holes, checks }: PaperParts, unit: LengthUnit): Fact[] => [
  ...leaves.flatMap((leaf) => [
    ...boardFacts(leaf.boards, unit),
    ...leaf.ledges.flatMap((ledge) => ledgePartFacts(ledge, unit)),
    ...leaf.braces.flatMap((brace) => bracePartFacts(brace, unit)),
    fixingCount(leaf),
  ]),
  ...holes.flatMap(holeFacts),
  ...checks
    .filter((check) => check.level === 'caution')
    .map((check): Fact => [`caution: ${check.message}`, 'on the card']),
]
