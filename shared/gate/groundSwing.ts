import { toDegrees, toRadians } from '../units/angle.ts'

/**
 * How the ground rises, rise over run: along the opening, positive away from the hanging side; across it, positive towards the
 * side the gate opens to.
 */
export type GroundSlope = { along: number; across: number }

/** A leaf of a width in mm that opens to an angle in degrees; followsGround when its foot is cut to the ground it shuts over. */
export type GroundSwing = { width: number; openTo: number; slope: GroundSlope; followsGround: boolean }

/** The most the ground rises under the closing edge as the leaf opens, mm (never under 0), and the angle in degrees at which. */
export type GroundRise = { rise: number; angle: number }

/** The ground as the second leaf of a pair meets it, hung from the other side. */
export const secondLeafSlope = ({ along, across }: GroundSlope): GroundSlope => ({
  along: along === 0 ? 0 : -along,
  across,
})

/**
 * Rise of the ground under the closing edge at an opening angle in degrees, against the foot, mm; under 0 where it falls away:
 * W·(m₁·cos α + m₂·sin α), less W·m₁ where the foot follows the ground.
 */
export function groundRiseAt({ width, slope, followsGround }: GroundSwing, angle: number): number {
  const turned = toRadians(angle)
  const start = followsGround ? slope.along : 0
  return width * (slope.along * Math.cos(turned) + slope.across * Math.sin(turned) - start)
}

/**
 * The angle in degrees at which ground of a slope is highest under a leaf turning right round: atan2(m₂, m₁), from 0 to 360.
 */
function steepestAngle({ along, across }: GroundSlope): number {
  const angle = toDegrees(Math.atan2(across, along))
  return angle < 0 ? angle + 360 : angle
}

/**
 * The greatest rise under the closing edge over the whole opening, exactly: the ends and, where the leaf reaches it, the angle
 * at which the ground is steepest. 1000 wide over 0.03 along and 0.04 across to 90°: 50 at 53.130°.
 * Throws RangeError unless width and angle are over 0, the angle up to 360.
 */
export function greatestRise(swing: GroundSwing): GroundRise {
  const { width, openTo, slope } = swing
  if (!(width > 0) || !(openTo > 0 && openTo <= 360))
    throw new RangeError(
      `a width over 0 and an opening up to 360 degrees were expected, got ${width} and ${openTo}`,
    )
  const steepest = steepestAngle(slope)
  const angles = steepest < openTo ? [steepest, openTo] : [openTo]
  return angles.reduce<GroundRise>(
    (worst, angle) => {
      const rise = groundRiseAt(swing, angle)
      return rise > worst.rise ? { rise, angle } : worst
    },
    { rise: Math.max(0, groundRiseAt(swing, 0)), angle: 0 },
  )
}

/** The gap in mm to leave under the closing edge: the greatest rise and the least gap wanted anywhere. */
export const groundClearance = (swing: GroundSwing, leastGap: number): number =>
  greatestRise(swing).rise + leastGap
