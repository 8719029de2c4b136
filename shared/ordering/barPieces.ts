import type { BracePair, CuttingSettings } from './orderModel.ts'

/** A length with what is cut from it, mm; cuts in the order they are sawn. */
export type CutBar = {
  from: 'merchant' | 'rack'
  length: number
  cuts: readonly { length: number; mark?: string }[]
}

/**
 * A stretch of a length, from and to in mm from the end that is squared first. trim: sawn off in squaring; kerf: lost at a cut; kept: goes back
 * to the rack; waste: too short for it. pair: the braces in a part that is cut in two on the slant.
 */
export type BarPiece = { from: number; to: number } & (
  { kind: 'trim' | 'kerf' | 'kept' | 'waste' } | { kind: 'part'; mark: string; pair?: PairCut }
)

/** Where two braces part, mm: marks and lengths of both, long point to long point. */
export type PairCut = { marks: [string, string]; lengths: [number, number] }

const tenth = (mm: number): number => Math.round(mm * 10) / 10

/** The pair that a part stands for, by its mark and length. */
function pairOf({ length, mark }: CutBar['cuts'][number], pairs: readonly BracePair[]): PairCut | undefined {
  const pair = pairs.find((one) => one.mark === mark && one.length === length)
  return pair && { marks: pair.of, lengths: pair.lengths }
}

/**
 * What a length is sawn into, end to end without a gap: end trim (a merchant's length), each part with the cut behind it, and what is left. A last
 * cut that meets the end takes only what is there. Of 3000 with 20 trimmed and a kerf of 4: part 1830 lies from 20 to 1850, its cut to 1854,
 * and 1146 are left.
 */
export function barPieces(
  { from, length, cuts }: CutBar,
  { kerf, endTrim, leastOffcut }: CuttingSettings,
  pairs: readonly BracePair[] = [],
): BarPiece[] {
  const pieces: BarPiece[] = []
  let at = 0
  const add = (long: number, piece: (place: { from: number; to: number }) => BarPiece) => {
    const to = Math.min(length, tenth(at + long))
    if (to > at) pieces.push(piece({ from: at, to }))
    at = Math.max(at, to)
  }
  if (from === 'merchant') add(endTrim, (place) => ({ ...place, kind: 'trim' }))
  for (const cut of cuts) {
    const pair = pairOf(cut, pairs)
    add(cut.length, (place) => ({ ...place, kind: 'part', mark: cut.mark ?? '', ...(pair && { pair }) }))
    add(kerf, (place) => ({ ...place, kind: 'kerf' }))
  }
  const left = tenth(length - at)
  add(left, (place) => ({ ...place, kind: left >= leastOffcut ? 'kept' : 'waste' }))
  return pieces
}
