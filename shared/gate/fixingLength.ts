import type { GateSpec } from './spec.ts'

type Fixings = GateSpec['fixings']

/** How far a screw's head is sunk and how far its point stays behind the face, mm: common practice. */
export const headSunk = 2
export const pointBehindFace = 3

/** How much of a nail is turned over on the back, least and most, mm: common practice. */
export const clench = { least: 8, most: 15 }

/** The chosen length and how far the point goes into the board, mm; undefined where none in stock fits. */
export type ChosenLength = { length: number; penetration: number } | undefined

/**
 * The longest screw in stock that stays 3 mm behind the face with its head sunk 2 mm, through a member and into a board.
 * Through a 28 ledge into a 20 board: at most 43, so 40 of [30, 40, 45, 50], 14 mm into the board.
 */
export function screwLength(lengths: number[], member: number, board: number): ChosenLength {
  const most = member + board - headSunk - pointBehindFace
  const length = Math.max(...lengths.filter((stock) => stock <= most))
  const penetration = length + headSunk - member
  return penetration > 0 ? { length, penetration } : undefined
}

/**
 * The nail in stock nearest to boards + ledge + 8 to 15 mm, clenched on the back; one that leaves less than 8 mm to turn
 * over doesn't fit. It passes right through, so its penetration is the member's whole thickness.
 */
export function nailLength(lengths: number[], member: number, board: number): ChosenLength {
  const length = Math.min(...lengths.filter((stock) => stock >= member + board + clench.least))
  return Number.isFinite(length) ? { length, penetration: member } : undefined
}

export const chooseLength = (fixings: Fixings, member: number, board: number): ChosenLength =>
  fixings.kind === 'screw'
    ? screwLength(fixings.lengths, member, board)
    : nailLength(fixings.lengths, member, board)
