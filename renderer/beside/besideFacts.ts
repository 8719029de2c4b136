import type { Design } from '../../shared/gate/designModel.ts'
import type { GateSpec } from '../../shared/gate/spec.ts'
import { compareCards } from '../../shared/job/compare.ts'
import type { Difference, LengthUnit } from '../../shared/job/job.ts'
import { boardsTogether } from '../differences.ts'
import { writeAngle } from '../format.ts'
import { sizeText } from '../jobs/sizeText.ts'

/** A gate with all that was worked out for it. */
export type Worked = { spec: GateSpec; design: Design }

/** A figure of both gates, to be read from across the bench. differs: the two aren't the same. part lights in both drawings. */
export type Pair = { name: string; one: string; other: string; differs: boolean; part: string }

const header = {
  ...{ workshop: '', number: '', title: '', due: null, notes: '', revision: 1, issuedAt: null },
  customer: { name: '', address: '', town: '', phone: '', email: '' },
}

/** What differs between two gates: what was entered first, then what followed from it; neighbouring boards that changed alike once. */
export const differencesOf = (one: Worked, other: Worked, unit: LengthUnit): Difference[] =>
  boardsTogether(
    compareCards(
      { header, spec: one.spec, parts: one.design },
      { header, spec: other.spec, parts: other.design },
      unit,
    ),
  )

const size = ({ design }: Worked, unit: LengthUnit): string => {
  const leaf = design.leaves[0]
  return leaf ? sizeText(leaf, unit) : ''
}

const braceOf = ({ design }: Worked): string => {
  const brace = design.leaves[0]?.braces[0]
  return brace ? writeAngle(brace.angle) : 'none'
}

const massOf = ({ design }: Worked): string =>
  `${Math.round(design.leaves.reduce((sum, { massKg }) => sum + massKg, 0) * 10) / 10} kg`

const boardsOf = ({ design }: Worked): string =>
  String(design.leaves.reduce((sum, { boards }) => sum + boards.length, 0))

/** The figures that two gates are first held against each other by: leaf, boards, brace, weight. */
export function besideFigures(one: Worked, other: Worked, unit: LengthUnit): Pair[] {
  const pair = (name: string, part: string, of: (worked: Worked) => string): Pair => {
    const [mine, theirs] = [of(one), of(other)]
    return { name, one: mine, other: theirs, differs: mine !== theirs, part }
  }
  return [
    pair('Leaf', 'dimension width, dimension height', (worked) => size(worked, unit)),
    pair('Boards', 'board', boardsOf),
    pair('Brace angle', 'brace', braceOf),
    pair('Weight', '', massOf),
  ]
}

/** Beginnings of what differs, and the part of the drawing they speak of; the first that fits holds. */
const parts: readonly (readonly [RegExp, (found: RegExpExecArray) => string])[] = [
  [/^boards? (\d+)(?: to (\d+))? /, (found) => boardNames(Number(found[1]), Number(found[2] ?? found[1]))],
  [/^(bottom|middle|top) ledge (?!section|timber|thickness)/, (found) => `${found[1]} ledge`],
  [/^ledge|^number of ledges|^weathering|^top ledge/, () => 'ledge'],
  [/^(lower|upper) brace/, (found) => `${found[1]} brace`],
  [/^brace/, () => 'brace'],
  [/^leaf width|^opening width|^(hanging|closing) gap/, () => 'dimension width'],
  [/^leaf height|^opening height|^(ground|head) gap/, () => 'dimension height'],
  [/^meeting gap/, () => 'dimension meeting gap'],
  [/^ironmongery/, () => 'hinge, latch, lock, bolt, handle'],
  [/^fixing/, () => 'fixings'],
  [/^hung|^opens/, () => 'hinge line'],
  [/^board|^gap between|^tongues|^trim/, () => 'board'],
]

const boardNames = (from: number, to: number): string =>
  Array.from({ length: to - from + 1 }, (_, index) => `board ${from + index}`).join(', ')

/** The part of a drawing that a difference speaks of, or null where it speaks of none. */
export function partOfDifference({ what }: Pick<Difference, 'what'>): string | null {
  for (const [pattern, part] of parts) {
    const found = pattern.exec(what)
    if (found) return part(found)
  }
  return null
}
