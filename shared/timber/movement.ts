import type { Certainty } from './fact.ts'

/**
 * How a timber moves in one direction across the grain. coefficient per 1 % of moisture (a fraction of the width at 10 %),
 * shrinkage green to oven-dry in %, start the moisture content in % at which shrinking starts. source and certainty are those
 * of the less sure of the values.
 */
export type CrossGrain = {
  coefficient: number
  shrinkage: number
  start: number
  source: string
  certainty: Certainty
}

/** Moisture contents in %, before and after. */
export type MoistureChange = { from: number; to: number }

/** The span of moisture contents in %, ends included, in which the coefficient form holds: Wood Handbook FPL-GTR-190 p. 13-17. */
export const coefficientSpan = { least: 6, most: 14 }

export type MovementForm = 'coefficient' | 'shrinkage'

/** Which form a change is worked by: the coefficient when both ends lie in 6 to 14 %, else the shrinkage for the whole change. */
export const movementForm = ({ from, to }: MoistureChange): MovementForm =>
  Math.min(from, to) >= coefficientSpan.least && Math.max(from, to) <= coefficientSpan.most
    ? 'coefficient'
    : 'shrinkage'

function checkChange(width: number, { from, to }: MoistureChange): void {
  if (!(width >= 0) || !(from >= 0) || !(to >= 0))
    throw new RangeError(
      `a width and moisture contents from 0 up were expected, got ${width}, ${from} and ${to}`,
    )
}

/**
 * Change of a width in mm by the coefficient: ΔD = D·C·(Mf − Mi), positive for swelling. Wood Handbook FPL-GTR-190 eq. 13-2.
 * White fir 232 wide with 0.00245 from 8 to 11 % grows 1.705.
 */
export function coefficientChange(width: number, coefficient: number, change: MoistureChange): number {
  checkChange(width, change)
  return width * coefficient * (change.to - change.from)
}

/**
 * Change of a width in mm by the whole shrinkage: ΔD = D·(Mf − Mi) / (30·100/S − 30 + Mi), with the timber's own start in
 * place of 30 where it differs. Wetter than the start counts as the start, since timber swells no further. There and back
 * returns the width. Wood Handbook FPL-GTR-190 eq. 13-3. White fir (S 7.0) 232 wide from 8 to 11 % grows 1.712.
 * Timber that doesn't shrink (S 0) doesn't move.
 */
export function shrinkageChange(
  width: number,
  { shrinkage, start }: Pick<CrossGrain, 'shrinkage' | 'start'>,
  change: MoistureChange,
): number {
  checkChange(width, change)
  if (!(shrinkage >= 0 && shrinkage < 100) || !(start > 0))
    throw new RangeError(
      `a shrinkage from 0 to 100 and a start over 0 were expected, got ${shrinkage} and ${start}`,
    )
  if (shrinkage === 0) return 0
  const from = Math.min(change.from, start)
  const to = Math.min(change.to, start)
  return (width * (to - from)) / ((start * 100) / shrinkage - start + from)
}

/** Change of a width in mm, positive for swelling, by whichever form fits the change. */
export const widthChange = (width: number, grain: CrossGrain, change: MoistureChange): number =>
  movementForm(change) === 'coefficient'
    ? coefficientChange(width, grain.coefficient, change)
    : shrinkageChange(width, grain, change)

/** Slack for what binary numbers lose, in half millimetres. */
const slack = 1e-9

/**
 * The gap in mm to leave at each joint so that boards of a cover still fit when they have swollen: what one board gains from
 * the shop to the wettest, rounded up to the next 0.5. 0 where it gains nothing.
 * A cover of 112 in redcedar (shrinkage 5.0, start 22) from 12 to 18 % gains 1.563: leave 2.
 */
export function autoGap(cover: number, change: MoistureChange, grain: CrossGrain): number {
  return Math.max(0, Math.ceil(widthChange(cover, grain, change) * 2 - slack)) / 2
}

/** What is left of a joint gap in mm once the boards have moved; under 0 they press on one another. */
export const jointGap = (gap: number, cover: number, moved: { grain: CrossGrain; change: MoistureChange }) =>
  gap - widthChange(cover, moved.grain, moved.change)

/** How far a tongue must still reach into its groove at the driest, mm: common practice. */
export const leastTongueReach = 3

/** How far a tongue reaches into its groove across a joint gap, mm: 0 or less means that it has left it. */
export const tongueReach = (tongue: number, gap: number): number => tongue - gap
