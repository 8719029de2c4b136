import type { CutRow } from '../cutting/cutList.ts'
import type { Design } from '../gate/designModel.ts'
import type { GateSpec, Section } from '../gate/spec.ts'
import { writeShortMm } from '../units/writeLength.ts'
import { coatedArea } from './coatedArea.ts'
import type { FixingNeed, IronmongeryNeed, Needs, TimberNeed } from './needs.ts'
import { workCounts } from './workCounts.ts'

type Made = Pick<Design, 'leaves' | 'cuts' | 'holes'>
type Sized = { section: Section; use: TimberNeed['use']; sawnToShape?: true; wide?: number }

/** The section a piece is cut from by its mark ('first leaf board 3', 'top ledge'), and what it is used for. */
function sectionOf(spec: GateSpec, { leaves }: Made): Map<string, Sized> {
  const found = new Map<string, Sized>()
  for (const leaf of leaves) {
    const mark = (part: string) => (leaf.name === 'leaf' ? part : `${leaf.name} ${part}`)
    leaf.boards.forEach((_, index) =>
      found.set(mark(`board ${index + 1}`), { section: spec.boards.section, use: 'boards' }),
    )
    for (const { name, section } of leaf.ledges) found.set(mark(`${name} ledge`), { section, use: 'ledges' })
    for (const { name, section } of leaf.braces) found.set(mark(`${name} brace`), { section, use: 'braces' })
    for (const { name, section, blankWidth } of leaf.frame)
      found.set(
        mark(name),
        blankWidth > section.width + 0.5 ? shapedBlank(section, blankWidth) : { section, use: 'frame' },
      )
  }
  return found
}

/** A rail under a shaped top starts from a wider blank than it ends as: any section of its thickness at least so wide will do. */
function shapedBlank(section: Section, blankWidth: number): Sized {
  const width = Math.ceil(blankWidth)
  const name = `${section.name}, blank ${writeShortMm(width)} wide`
  return { section: { ...section, name, width }, use: 'frame', sawnToShape: true }
}

/** A meeting strip is ripped from as many of the boards as it is wide. */
const stripFrom = (spec: GateSpec, { width }: CutRow): Sized => ({
  section: spec.boards.section,
  use: 'boards',
  wide: Math.ceil(width / spec.boards.section.width - 1e-9),
})

/** Whether two sections are bought as one: the same name, timber and sizes. */
export const sameSection = (a: Section, b: Section): boolean =>
  a.name === b.name &&
  a.species === b.species &&
  a.thickness === b.thickness &&
  a.width === b.width &&
  (a.tongue ?? 0) === (b.tongue ?? 0)

/** Timber by section and use, each piece as the blank that is cut first. */
function timberOf(spec: GateSpec, design: Made): TimberNeed[] {
  const sections = sectionOf(spec, design)
  const needs: TimberNeed[] = []
  for (const row of design.cuts) {
    const first = row.marks[0] ?? ''
    const sized = first === 'meeting strip' ? stripFrom(spec, row) : sections.get(first)
    if (!sized) throw new RangeError(`needsOf needs the design of this spec, got a piece '${first}'`)
    const { section, use, sawnToShape, wide = 1 } = sized
    const own = needs.find((need) => need.use === use && sameSection(need.section, section))
    const need: TimberNeed = own ?? {
      kind: 'timber',
      section,
      use,
      pieces: [],
      ...(sawnToShape && { sawnToShape }),
    }
    if (!own) needs.push(need)
    need.pieces.push({ mark: row.part, length: row.blank, quantity: row.quantity * wide })
  }
  return needs
}

/** Fixings by the size that the design chose for each part they go through. */
function fixingsOf(spec: GateSpec, { holes }: Made): FixingNeed[] {
  const counts = new Map<number, number>()
  for (const { fixingLength, quantity } of holes)
    counts.set(fixingLength, (counts.get(fixingLength) ?? 0) + quantity)
  const { kind: form, diameter } = spec.fixings
  return [...counts]
    .filter(([, count]) => count > 0)
    .sort(([a], [b]) => a - b)
    .map(([length, count]) => ({ kind: 'fixing', form, diameter, length, count }))
}

function ironmongeryOf({ ironmongery }: GateSpec): IronmongeryNeed[] {
  const needs: IronmongeryNeed[] = []
  for (const { id, name, quantity } of ironmongery) {
    const own = needs.find((need) => need.piece === id && need.name === name)
    if (own) own.count += quantity
    else needs.push({ kind: 'ironmongery', piece: id, name, count: quantity })
  }
  return needs
}

/**
 * Everything a gate takes, from its spec and its design alone: timber as blanks by section, fixings by size, ironmongery, the area to
 * coat (to 0.01 m²) and every operation counted. The design must be the spec's own: else RangeError.
 */
export function needsOf(spec: GateSpec, design: Made): Needs {
  const areaM2 = Math.round(coatedArea(spec, design) * 100) / 100
  return {
    timber: timberOf(spec, design),
    fixings: fixingsOf(spec, design),
    ironmongery: ironmongeryOf(spec),
    finish: { kind: 'finish', areaM2 },
    work: workCounts(spec, design, areaM2),
  }
}
