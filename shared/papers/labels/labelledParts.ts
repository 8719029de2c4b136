import type { CutRow } from '../../cutting/cutList.ts'
import { figureText } from '../../drawing/figureText.ts'
import { writeShortMm } from '../../units/writeLength.ts'
import { withoutIsolation } from '../isolateNames.ts'
import type { JobCardInput } from '../jobCardInput.ts'

/** What one label says of its piece: length as it is cut, in the job's unit; section as the cut list has it, mm. */
export type LabelledPart = { mark: string; length: string; section: string }

/** On a label a lone brace is 'brace', as on the drawings. */
const markWords = (mark: string): string => mark.replace(/\bsingle brace$/, 'brace')

const sectionWords = ({ thickness, width }: CutRow): string =>
  `${writeShortMm(thickness)} × ${writeShortMm(width)}`

/** Every piece of the cut list with what its label says, in the list's order. key is its mark on the drawings. */
export function labelledParts({
  design,
  unit,
}: Pick<JobCardInput, 'design' | 'unit'>): (LabelledPart & { key: string })[] {
  const { write } = figureText(unit)
  return design.cuts.flatMap((row) =>
    row.marks.map((key) => ({
      key,
      mark: markWords(key),
      length: write(row.length),
      section: sectionWords(row),
    })),
  )
}

/** What a label's square holds: the job's number, or its title where it has none, and the piece's mark, as plain words. */
export const scannedWords = ({ number, title }: JobCardInput['header'], mark: string): string =>
  withoutIsolation([number === '' ? title : number, mark].filter((words) => words !== '').join(' '))
