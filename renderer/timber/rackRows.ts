import type { RackPiece } from '../../shared/ordering/orderModel.ts'

/** Pieces with every one of the words in their section, place, note, job or order. */
export function foundPieces(pieces: readonly RackPiece[], words: string): RackPiece[] {
  const wanted = words
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== '')
  const told = (piece: RackPiece) =>
    [piece.name, piece.species, piece.place, piece.note, piece.jobNumber, piece.keptFor, piece.length]
      .join(' ')
      .toLowerCase()
  return pieces.filter((piece) => wanted.every((word) => told(piece).includes(word)))
}

/** How much timber pieces come to, in metres to a tenth: '13.4 m'. */
export const metresOf = (pieces: readonly RackPiece[]): string =>
  `${(pieces.reduce((sum, { length }) => sum + length, 0) / 1000).toFixed(1)} m`

/** What is walked through in a stock-take: a place, then what should lie there. */
export type CountRow = { kind: 'place'; place: string; ids: number[] } | { kind: 'piece'; piece: RackPiece }

/** Pieces place by place, the places in the order given, those without one last. */
export function countRows(pieces: readonly RackPiece[], places: readonly string[]): CountRow[] {
  return [...places, ''].flatMap((place): CountRow[] => {
    const there = pieces.filter((piece) => piece.place === place)
    if (there.length === 0) return []
    const ids = there.map(({ id }) => id)
    return [{ kind: 'place', place, ids }, ...there.map((piece): CountRow => ({ kind: 'piece', piece }))]
  })
}
