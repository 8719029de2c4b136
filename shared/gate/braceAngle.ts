import { toDegrees, type Radians } from '../units/angle.ts'

/** Clear height of the bay between ledge edges, run between setbacks, width of the brace: all mm. */
export type BraceBay = { clearHeight: number; run: number; width: number }

/**
 * Slope of a brace from the horizontal, in radians, so that both its ends sit flush on the ledges: from
 * clearHeight·cos θ + width = run·sin θ. Undefined where no slope below upright does it: the brace is too wide for the run.
 * Throws RangeError unless height and width are positive.
 */
export function braceSlope({ clearHeight, run, width }: BraceBay): Radians | undefined {
  if (!(clearHeight > 0) || !(width > 0))
    throw new RangeError(
      `braceSlope needs a clear height and a width over 0, got ${clearHeight} and ${width}`,
    )
  if (!(run > 0)) return undefined
  const share = width / Math.hypot(clearHeight, run)
  if (share > 1) return undefined
  const slope = Math.atan2(clearHeight, run) + Math.asin(share)
  return slope < Math.PI / 2 ? (slope as Radians) : undefined
}

/** One brace's figures: angle and sawSetting in degrees, the rest mm. */
export type BraceFigures = {
  angle: number
  sawSetting: number
  edgeLength: number
  length: number
  contact: number
}

/**
 * What a brace at a slope comes to over the height it spans: edge length H / sin θ, long point to long point
 * H / sin θ + b / tan θ, length of each end along its ledge b / sin θ, saw setting off square 90° − θ.
 * A bay 1310 high over a run of 802 with a 120 brace: 63.00525°, saw 26.99475°, edge 1470.1787, long points 1531.3079.
 */
export function braceFigures(slope: Radians, height: number, width: number): BraceFigures {
  const angle = toDegrees(slope)
  const edgeLength = height / Math.sin(slope)
  return {
    angle,
    sawSetting: 90 - angle,
    edgeLength,
    length: edgeLength + width / Math.tan(slope),
    contact: width / Math.sin(slope),
  }
}
