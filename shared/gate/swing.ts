import { toDegrees } from '../units/angle.ts'

/**
 * A leaf seen from above where its closing edge passes the post. width is the leaf's; pinInset how far in from the hanging
 * edge the pin stands (negative beyond it); pinProud how far it stands proud of the surface that leads; boards and ledges the
 * two thicknesses; closingInset how far the ledges stop short of the closing edge (0 where a full-thickness stile or rail ends
 * at it). mm.
 */
export type Swing = {
  width: number
  pinInset: number
  pinProud: number
  boards: number
  ledges: number
  closingInset: number
  opens: 'to-back' | 'to-face'
}

/** A corner of the leaf at its closing edge: out from the pin along the shut leaf, and behind it, away from the opening. mm. */
export type Corner = { out: number; behind: number }

/** Distance in mm from the pin to the leaf's closing edge. */
export function reachOf({ width, pinInset, boards, ledges }: Swing): number {
  const reach = width - pinInset
  if (!(reach > 0) || !(boards > 0) || !(ledges >= 0))
    throw new RangeError(`a pin short of the closing edge and a leaf with thickness were expected`)
  return reach
}

/**
 * The corners that come nearest to the post. Opening to the back it is the face corner, the leaf's whole thickness behind the
 * leading surface; to the face, the back of the boards at the edge and the back of the ledges at their ends.
 */
export function farCorners(swing: Swing): Corner[] {
  const reach = reachOf(swing)
  const { boards, ledges, pinProud, closingInset } = swing
  if (swing.opens === 'to-back') return [{ out: reach, behind: boards + ledges + pinProud }]
  return [
    { out: reach, behind: boards + pinProud },
    { out: reach - closingInset, behind: boards + ledges + pinProud },
  ]
}

/**
 * How far a corner swings past the shut leaf's edge at its farthest, mm: it does so as it crosses the line through the pin, so
 * one that starts in front of that line only draws away.
 */
const excess = ({ out, behind }: Corner, reach: number): number =>
  behind > 0 ? Math.max(0, Math.hypot(out, behind) - reach) : 0

/**
 * The least gap in mm at the closing edge in which a square-edged leaf clears its post:
 * √((W − p)² + (D + a)²) − (W − p) for the far corner, the worse of two when opening to the face.
 * W − p 950, D 47, a 15, to the back: 2.021.
 */
export function leastClosingGap(swing: Swing): number {
  const reach = reachOf(swing)
  return Math.max(...farCorners(swing).map((corner) => excess(corner, reach)))
}

/** A lead-edge bevel: its angle off square in degrees, the thickness it is planed over and what it takes off the far corner, mm. */
export type Bevel = { angle: number; over: number; takesOff: number }

/** The thickness that stands at the closing edge, where a bevel can be planed. */
const edgeThickness = ({ opens, boards, ledges, closingInset }: Swing): number =>
  opens === 'to-back' || closingInset === 0 ? boards + ledges : boards

/**
 * The bevel on the closing edge that lets the far corner swing no farther than the leading one:
 * atan((W − p − √((W − p)² + a² − (D + a)²)) / D). A pin sunk behind the leading surface (a under 0) counts as flush with it,
 * since the leading corner then only draws away. W − p 950, D 47, a 15: 2.323°.
 * Undefined where the leaf is too thick for its width to clear by any bevel.
 */
export function leadEdgeBevel(swing: Swing): Bevel | undefined {
  const reach = reachOf(swing)
  const over = edgeThickness(swing)
  const behind = over + swing.pinProud
  if (behind <= 0) return { angle: 0, over, takesOff: 0 }
  const lead = Math.max(0, swing.pinProud)
  const left = reach * reach + lead * lead - behind * behind
  if (left < 0) return undefined
  const takesOff = reach - Math.sqrt(left)
  return { angle: toDegrees(Math.atan2(takesOff, over)), over, takesOff }
}

/**
 * The least closing gap in mm that a bevelled leaf still needs: √((W − p)² + a²) − (W − p) for its leading corner, or what the
 * ends of the ledges need where that is more. W − p 950, a 15: 0.118.
 */
export function bevelledClosingGap(swing: Swing): number {
  const reach = reachOf(swing)
  const corners: Corner[] = [{ out: reach, behind: Math.max(0, swing.pinProud) }]
  if (edgeThickness(swing) < swing.boards + swing.ledges) corners.push(...farCorners(swing).slice(1))
  return Math.max(...corners.map((corner) => excess(corner, reach)))
}
