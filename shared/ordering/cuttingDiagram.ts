import { hatchLines } from '../drawing/hatch.ts'
import type { LaidOut, Primitive } from '../drawing/primitives.ts'
import type { Point } from '../geometry/point.ts'
import { onPatch, partLabel } from './barLabels.ts'
import { barPieces, type BarPiece } from './barPieces.ts'
import { air, barHeight, filled, tintOf, type DiagramOf, type Room, type Sheet } from './barSheet.ts'
import { drawPair } from './drawPair.ts'

/** A part that is told by a number in its bar, since its words have no room there. */
export type LegendLine = { number: number; mark: string; length: number }

/** One length to scale in mm of paper, y down; scale is paper mm to a mm of timber. */
export type CuttingDiagram = { bars: LaidOut[]; legend: LegendLine[]; scale: number }

const box = (from: number, to: number): Point[] => [
  [from, air],
  [to, air],
  [to, air + barHeight],
  [from, air + barHeight],
]

const hatched = (points: Point[], angles: number[], spacing: number): Primitive => ({
  kind: 'strokes',
  lines: angles.flatMap((angle) => hatchLines(points, angle, spacing)),
  pen: 'hatch',
})

const roomOf = ({ from, to }: Room, { scale }: Sheet): Room => ({ from: from * scale, to: to * scale })

function drawPiece(piece: BarPiece, sheet: Sheet): Primitive[] {
  const { of } = sheet
  const room = roomOf(piece, sheet)
  const shape = box(room.from, room.to)
  const long = Math.round((piece.to - piece.from) * 10) / 10
  const figures = of.write(long)
  switch (piece.kind) {
    case 'kerf':
      return [filled(shape, 'ink')]
    case 'trim':
      return [filled(shape, 'paper', 'narrow'), hatched(shape, [45, 135], 0.9)]
    case 'kept':
      return [
        filled(shape, 'paper', 'outline'),
        hatched(shape, [45], 2.6),
        ...onPatch(room, [[{ text: 'to the rack' }, { text: figures, bold: true }], [{ text: figures }]]),
      ]
    case 'waste':
      return [
        filled(shape, 'paper', 'narrow'),
        hatched(shape, [45, 135], 1.3),
        ...onPatch(room, [[{ text: 'waste' }, { text: figures }], [{ text: figures }]]),
      ]
    case 'part':
      if (piece.pair) return drawPair(piece, piece.pair, sheet)
      return [
        filled(shape, tintOf(piece.mark, of.numbers), 'outline'),
        ...partLabel(room, { mark: piece.mark, length: long }, sheet),
      ]
  }
}

/**
 * The cutting of a section's lengths, each a bar with its parts named, all to one scale in width mm of paper. A part with no room for its name
 * carries a number, told in the legend.
 */
export function cuttingDiagram(of: DiagramOf, width: number): CuttingDiagram {
  const longest = Math.max(1, ...of.bars.map(({ length }) => length))
  const scale = Math.max(width - 2 * air, 1) / longest
  const legend: LegendLine[] = []
  const numberOf = (mark: string, length: number): number => {
    const known = legend.find((one) => one.mark === mark && one.length === length)
    if (known) return known.number
    legend.push({ number: legend.length + 1, mark, length })
    return legend.length
  }
  const sheet: Sheet = { of, scale, numberOf }
  const bars = of.bars.map((bar): LaidOut => {
    const primitives = barPieces(bar, of.cutting, of.pairs).flatMap((piece) => drawPiece(piece, sheet))
    return { width: bar.length * scale, height: barHeight + 2 * air, scale, primitives }
  })
  return { bars, legend, scale }
}
