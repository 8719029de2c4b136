import { barPieces, type CutBar } from './barPieces.ts'
import type { BracePair, CuttingSettings } from './orderModel.ts'

/** A bar in words, for whoever doesn't see it: '3000 long: 2026-014 ledge 910.5, 2026-014 ledge 910.5; 1146 back to the rack'. */
export function barWords(
  bar: CutBar,
  of: { cutting: CuttingSettings; pairs: readonly BracePair[]; write: (mm: number) => string },
): string {
  const parts: string[] = []
  let left = ''
  for (const piece of barPieces(bar, of.cutting, of.pairs)) {
    const long = Math.round((piece.to - piece.from) * 10) / 10
    if (piece.kind === 'part' && piece.pair) {
      const [first, second] = piece.pair.lengths
      parts.push(
        `${piece.pair.marks[0]} ${of.write(first)} and ${piece.pair.marks[1]} ${of.write(second)} parted on the slant`,
      )
    } else if (piece.kind === 'part') parts.push(`${piece.mark} ${of.write(long)}`)
    else if (piece.kind === 'kept') left = `; ${of.write(long)} back to the rack`
    else if (piece.kind === 'waste') left = `; ${of.write(long)} waste`
  }
  return `${of.write(bar.length)} long: ${parts.join(', ')}${left}`
}
