import { geometry, type Figures } from '../gate/figures.ts'
import type { Leaf } from '../gate/leaf.ts'
import { figure } from '../gate/worked.ts'
import type { CutRow } from './cutList.ts'

/** A piece's worked length and blank before rounding, mm, by its mark in the cut list ('board 3', 'top ledge', 'lower brace'). */
function workedLengths(leaf: Leaf): Map<string, { length: number; blank: number }> {
  const uncut = (length: number) => ({ length, blank: length })
  return new Map([
    ...leaf.boards.map(({ length, blank }, index) => [`board ${index + 1}`, { length, blank }] as const),
    ...leaf.ledges.map((ledge) => [`${ledge.name} ledge`, uncut(ledge.length)] as const),
    ...leaf.braces.map((brace) => [`${brace.name} brace`, uncut(brace.length)] as const),
  ])
}

const rounded = (value: number, worked: number) =>
  figure(value, 'mm', {
    formula: 'worked length to the nearest half millimetre, a quarter going up',
    inputs: { 'worked length': worked },
    source: geometry,
  })

/** Each number of the cut list answers for itself too: 'cut.1.length', 'cut.1.blank', 'cut.1.quantity', rows counted from 1. */
export function cutFigures(cuts: CutRow[], leaf: Leaf): Figures {
  const worked = workedLengths(leaf)
  return Object.fromEntries(
    cuts.flatMap((row, index) => {
      const piece = worked.get(row.marks[0] ?? '')
      if (!piece) throw new RangeError(`cutFigures needs pieces of the leaf, got '${row.marks[0]}'`)
      return [
        [`cut.${index + 1}.length`, rounded(row.length, piece.length)],
        [`cut.${index + 1}.blank`, rounded(row.blank, piece.blank)],
        [
          `cut.${index + 1}.quantity`,
          figure(row.quantity, 'no.', {
            formula: 'pieces alike in section, length and ends',
            inputs: { pieces: row.marks.length },
            source: geometry,
          }),
        ],
      ]
    }),
  )
}
