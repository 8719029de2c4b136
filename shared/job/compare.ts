import type { DraftSpec, GateSpec } from '../gate/spec.ts'
import { paperDate } from '../papers/paperDate.ts'
import type { PaperHeader, PaperParts } from './issuedPaper.ts'
import type { Difference, LengthUnit } from './job.ts'
import { partFacts } from './partFacts.ts'
import { specFacts, type Fact } from './specFacts.ts'

/** An issued card, or the job as it stands. parts is null when the gate can't be made as entered, or a size is missing. */
export type ComparedCard = { header: PaperHeader; spec: GateSpec | DraftSpec; parts: PaperParts | null }

/** How a fact is said that holds on one side only. */
const absent = 'none'

const headerFacts = ({ number, customer, title, due, notes }: PaperHeader): Fact[] => [
  ['job number', number],
  ['customer', customer.name],
  ['address', [customer.address, customer.town].filter((line) => line !== '').join(', ')],
  ['phone', customer.phone],
  ['title', title],
  ['date promised', due === null ? absent : paperDate(due)],
  ['notes', notes],
]

/** The facts to compare; the parts only when both sides have them, or every part would seem new. */
function factsOf(card: ComparedCard, unit: LengthUnit, withParts: boolean): Map<string, string> {
  const gate: Fact = ['gate', card.parts === null ? 'can’t be made as entered' : 'can be made']
  const parts = withParts && card.parts !== null ? partFacts(card.parts, unit) : []
  return new Map([...headerFacts(card.header), gate, ...specFacts(card.spec, unit), ...parts])
}

/**
 * What differs between two issues of a card, or a card and the job as it stands, in the joiner's words; empty when nothing that shows does.
 * Lengths in both units, the job's first. A gate that can't be made has no parts: only what was entered is compared then.
 * From a leaf 930 wide to one of 1000: { what: 'leaf width', before: '930 mm · 36 ⅝″', after: '1000 mm · 39 ⅜″' } and the
 * parts that follow from it.
 */
export function compareCards(earlier: ComparedCard, later: ComparedCard, unit: LengthUnit): Difference[] {
  const withParts = earlier.parts !== null && later.parts !== null
  const before = factsOf(earlier, unit, withParts)
  const after = factsOf(later, unit, withParts)
  const names = [...new Set([...before.keys(), ...after.keys()])]
  return names
    .map((what) => ({ what, before: before.get(what) ?? absent, after: after.get(what) ?? absent }))
    .filter((fact) => fact.before !== fact.after)
}
