import type { GateSpec } from './spec.ts'

type Rip = GateSpec['boards']['rip']
type Tongues = GateSpec['boards']['tongues']

/** The boarding's own sizes: cover, tongue, groove and joint gap in mm, and which way the tongues point. */
export type Boarding = { cover: number; tongue: number; groove: number; gap: number; tongues: Tongues }

/** Widest a ripped edge board may be and still count as meeting its limit, beyond rounding. */
const slack = 1e-9

/**
 * Groove depth q of a board, mm: as given, else one more than the tongue so that the joint closes on its shoulders.
 * A board with no tongue has no groove.
 */
export const grooveDepth = (section: { tongue?: number; groove?: number }): number =>
  section.groove ?? (section.tongue ? section.tongue + 1 : 0)

export const boardingOf = (boards: GateSpec['boards'], gap: number): Boarding => ({
  cover: boards.section.width,
  tongue: boards.section.tongue ?? 0,
  groove: grooveDepth(boards.section),
  gap,
  tongues: boards.tongues,
})

/**
 * Widest face an edge board can show: the one whose groove would show loses it; the one whose tongue would show has it planed
 * off, which costs no cover.
 */
export function widestEdges({ cover, groove, tongues }: Boarding): { hanging: number; closing: number } {
  const grooved = cover - groove
  return tongues === 'to-closing'
    ? { hanging: grooved, closing: cover }
    : { hanging: cover, closing: grooved }
}

/** Least count of boards, from two, whose ripped board comes to at most its limit. */
function leastCount(ripped: (count: number) => number, limit: number): number {
  let count = 2
  while (ripped(count) > limit + slack) count += 1
  return count
}

/**
 * Seen widths of the boards of one leaf in mm, hanging → closing, for the edge that is ripped. A ripped width can come out
 * small or negative: the checks stop such a gate.
 * boardWidths(900, { cover: 112, tongue: 7, groove: 8, gap: 0, tongues: 'to-closing' }, 'closing') is [104, 112 × 7, 12].
 */
export function boardWidths(leafWidth: number, boarding: Boarding, rip: Rip): number[] {
  const { cover, groove, gap } = boarding
  if (leafWidth <= cover - groove + slack) return [leafWidth]
  const widest = widestEdges(boarding)
  const full = (count: number) => Array.from({ length: count - 2 }, () => cover)
  const left = (count: number) => leafWidth - (count - 2) * cover - (count - 1) * gap
  if (rip === 'both') {
    const edge = (count: number) => left(count) / 2
    const count = leastCount(edge, cover - groove)
    return [edge(count), ...full(count), edge(count)]
  }
  if (rip === 'hanging') {
    const edge = (count: number) => left(count) - widest.closing
    const count = leastCount(edge, widest.hanging)
    return [edge(count), ...full(count), widest.closing]
  }
  const edge = (count: number) => left(count) - widest.hanging
  const count = leastCount(edge, widest.closing)
  return [widest.hanging, ...full(count), edge(count)]
}
