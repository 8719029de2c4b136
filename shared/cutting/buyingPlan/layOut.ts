import type { Bought } from './cuttingProblem.ts'
import type { Normalised } from './normalise.ts'
import type { SectionWork } from './sectionWork.ts'

/** Lengths of one kind cut alike: how often each of the section's parts, and how many lengths. */
export type Line = { kind: number; counts: number[]; times: number }

/** Room taken by a line's parts with a kerf on each, tenths. */
export const filledBy = ({ parts, kerf }: SectionWork, counts: readonly number[]): number =>
  parts.reduce((total, { length }, part) => total + (length + kerf) * (counts[part] as number), 0)

/** What remains of a length after end trim and kerfs, tenths; the last cut may meet the end. */
export const offcutOf = (work: SectionWork, { kind, counts }: Pick<Line, 'kind' | 'counts'>): number => {
  const { room } = work.kinds[kind] as { room: number }
  return Math.max(0, room - work.kerf - filledBy(work, counts))
}

/** Length bought less parts and an offcut worth keeping, tenths; nothing where nothing is cut. */
export function wasteOf(work: SectionWork, line: Pick<Line, 'kind' | 'counts'>): number {
  if (line.counts.every((count) => count === 0)) return 0
  const offcut = offcutOf(work, line)
  const cut = work.parts.reduce(
    (total, { length }, part) => total + length * (line.counts[part] as number),
    0,
  )
  const { stock } = work.kinds[line.kind] as { stock: number }
  return stock - cut - (offcut >= work.leastOffcut ? offcut : 0)
}

/** Lengths cut alike are of one kind, or one stock. */
type Alike = { kind?: number; stock?: number; counts: number[] }
export const keyOf = ({ kind, stock, counts }: Alike): string => `${kind ?? stock}:${counts.join()}`

/** Like lengths counted together, in the order they came. */
export function gathered<Some extends Alike & { times: number }>(lines: readonly Some[]): Some[] {
  const known = new Map<string, Some>()
  for (const line of lines) {
    const same = known.get(keyOf(line))
    if (same) same.times += line.times
    else if (line.times > 0 && line.counts.some((count) => count > 0)) known.set(keyOf(line), { ...line })
  }
  return [...known.values()]
}

/** A plan of the normalised problem as lines of the section's own parts and kinds, no kind taken more often than it is to be had. */
export function layOut(work: SectionWork, normalised: Normalised, plan: readonly Bought[]): Line[] {
  const left = work.kinds.map(({ most }) => most)
  const lines: Line[] = []
  for (const { stock, counts, times } of plan) {
    const own = new Array<number>(work.parts.length).fill(0)
    normalised.parts.forEach((of, part) => (own[of[0] as number] = counts[part] as number))
    let wanted = times
    for (const kind of normalised.stocks[stock] ?? []) {
      const taken = Math.min(wanted, left[kind] as number)
      if (taken > 0) lines.push({ kind, counts: own, times: taken })
      left[kind] = (left[kind] as number) - taken
      wanted -= taken
    }
  }
  return gathered(lines)
}
