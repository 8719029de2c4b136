import { offcutOf, type Line } from './layOut.ts'
import type { CutLength } from './planModel.ts'
import type { Kind, SectionWork } from './sectionWork.ts'

/** More of a longer part first; then by what is cut from it. */
function compareLines(a: Line, b: Line): number {
  const part = a.counts.findIndex((count, index) => count !== b.counts[index])
  return a.kind - b.kind || (part < 0 ? 0 : (b.counts[part] as number) - (a.counts[part] as number))
}

type Marks = { mark: string | undefined; quantity: number }[]

function nextMark(marks: Marks): string | undefined {
  const first = marks.find(({ quantity }) => quantity > 0)
  if (first) first.quantity -= 1
  return first?.mark
}

/** One length's cuts, longest first, each with the next mark of its length. */
const cutsOf = ({ parts }: SectionWork, counts: readonly number[], marks: Marks[]): CutLength['cuts'] =>
  parts.flatMap(({ length }, part) =>
    Array.from({ length: counts[part] as number }, () => {
      const mark = nextMark(marks[part] ?? [])
      return mark === undefined ? { length: length / 10 } : { length: length / 10, mark }
    }),
  )

const alike = (a: CutLength | undefined, b: CutLength): boolean =>
  JSON.stringify({ ...a, count: 1 }) === JSON.stringify(b)

/** A section's lines as lengths with their cuts in mm: the rack first, then the merchant's longest; parts of one length take their marks in the marks' order. */
export function writeLengths(work: SectionWork, lines: readonly Line[]): CutLength[] {
  const marks = work.parts.map((part) => part.marks.map((one) => ({ ...one })))
  const written: CutLength[] = []
  for (const line of [...lines].sort((a, b) => compareLines(a, b))) {
    const { from, stock, pence } = work.kinds[line.kind] as Kind
    for (let one = 0; one < line.times; one += 1) {
      const now: CutLength = {
        section: work.section,
        from,
        stock: stock / 10,
        pence,
        count: 1,
        cuts: cutsOf(work, line.counts, marks),
        offcut: offcutOf(work, line) / 10,
      }
      const last = written.at(-1)
      if (last && alike(last, now)) last.count += 1
      else written.push(now)
    }
  }
  return written
}
