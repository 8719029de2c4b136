import { geometry, type Figures } from '../gate/figures.ts'
import type { Leaf } from '../gate/leaf.ts'
import { figure } from '../gate/worked.ts'
import { markOf, type CutRow } from './cutList.ts'

/** A piece's worked length and blank before rounding, mm, by its mark in the cut list ('board 3', 'top ledge', 'lower brace'). */
function workedLengths(leaf: Leaf): [string, { length: number; blank: number }][] {
  const uncut = (length: number) => ({ length, blank: length })
  return [
    ...leaf.frame.map((part) => [markOf(leaf, part.name), uncut(part.length)] as const),
    ...leaf.boards.map(
      ({ length, blank }, index) => [markOf(leaf, `board ${index + 1}`), { length, blank }] as const,
    ),
    ...leaf.ledges.map((ledge) => [markOf(leaf, `${ledge.name} ledge`), uncut(ledge.length)] as const),
    ...leaf.braces.map((brace) => [markOf(leaf, `${brace.name} brace`), uncut(brace.length)] as const),
  ].map(([mark, lengths]) => [mark, lengths])
}

const rounded = (value: number, worked: number) =>
  figure(value, 'mm', {
    formula: 'worked length to the nearest half millimetre, a quarter going up',
    inputs: { 'worked length': worked },
    source: geometry,
  })

/** Each number of the cut list answers for itself too: 'cut.1.length', 'cut.1.blank', 'cut.1.quantity', rows counted from 1. */
export function cutFigures(cuts: CutRow[], leaves: Leaf[]): Figures {
  const worked = new Map(leaves.flatMap(workedLengths))
  return Object.fromEntries(
    cuts.flatMap((row, index) => {
      const mark = row.marks[0] ?? ''
      // The meeting strip is as long as the leaf's highest head and belongs to no one leaf.
      const piece = mark === 'meeting strip' ? { length: row.length, blank: row.blank } : worked.get(mark)
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
