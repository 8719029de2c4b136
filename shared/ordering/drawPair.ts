import type { Primitive } from '../drawing/primitives.ts'
import type { Point } from '../geometry/point.ts'
import { partLabel } from './barLabels.ts'
import type { PairCut } from './barPieces.ts'
import { air, barHeight, filled, tintOf, type Room, type Sheet } from './barSheet.ts'

type Stretch = readonly [from: number, to: number]

/**
 * How far the shared cut of two braces reaches along the board, and the saw cut itself measured along it, mm. Both lengths overlap in the piece
 * by the reach less the cut: 3063 of parts in 3006.4 with a kerf of 4 at 120 wide overlap by 56.6, the reach of 61.1 less 4.5.
 */
export function slantOf(
  { lengths: [first, second] }: PairCut,
  { long, kerf, width }: { long: number; kerf: number; width?: number },
): { reach: number; cut: number } {
  const overlap = Math.max(0, first + second - long)
  let cut = kerf
  for (let turn = 0; width !== undefined && turn < 20; turn += 1)
    cut = kerf * Math.sqrt(1 + ((overlap + cut) / width) ** 2)
  return { reach: overlap + cut, cut }
}

/** Two braces in one piece, place in mm of timber: parted by their one slanting cut, their outer ends dashed where they are cut later. */
export function drawPair(place: Room, pair: PairCut, sheet: Sheet): Primitive[] {
  const { of, scale } = sheet
  const { kerf } = of.cutting
  const width = of.sectionWidth
  const long = place.to - place.from
  const { reach, cut } = slantOf(pair, { long, kerf, ...(width !== undefined && { width }) })
  const [top, foot] = [air, air + barHeight]
  const at = (mm: number) => (place.from + mm) * scale
  const parting = pair.lengths[0]
  const ends = (from: number): [Point, Point] => [
    [at(from), top],
    [at(from + reach), foot],
  ]
  const cutTop = [at(parting - reach), at(parting - reach + cut)] as const
  const cutFoot = [at(parting), at(parting + cut)] as const
  const [first, second] = pair.marks
  const slanting = (a: Stretch, b: Stretch): Point[] => [
    [a[0], top],
    [a[1], top],
    [b[1], foot],
    [b[0], foot],
  ]
  const shapes: Primitive[] = [
    filled(slanting([at(0), cutTop[0]], [at(0), cutFoot[0]]), tintOf(first, of.numbers), 'outline'),
    filled(slanting([cutTop[1], at(long)], [cutFoot[1], at(long)]), tintOf(second, of.numbers), 'outline'),
    filled(slanting(cutTop, cutFoot), 'ink'),
    { kind: 'strokes', lines: [0, long - reach].map(ends), pen: 'hidden' },
  ]
  const rooms: Room[] = [
    { from: at(reach), to: at(parting - reach) },
    { from: at(parting + cut), to: at(long - reach) },
  ]
  const labels = rooms.flatMap((room, brace) =>
    partLabel(room, { mark: pair.marks[brace] ?? '', length: pair.lengths[brace] ?? 0 }, sheet),
  )
  return [...shapes, ...labels]
}
