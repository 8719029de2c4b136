import type { LeafPlan } from './leafPlan.ts'
import type { GateSpec } from './spec.ts'

export type Frame = NonNullable<GateSpec['frame']>

/** How far a framed gate's bottom ledge stands off the foot, mm. Source: L. Goring, Manual of Purpose-Made Woodworking Joinery, p. 85 (40 to 50). */
export const framedLedgeMargin = 45

/** Share of a ledge's thickness that its bare-faced tenon keeps, shouldered on the back: two thirds, common practice. */
export const bareTenonShare = 2 / 3

/**
 * Where a frame leaves room, mm: shoulder the clear width between the stiles, railLower the top rail's lower edge, boards what the
 * boarding fills (into the rebates at both sides and at the rail).
 */
export type FrameRoom = {
  shoulder: number
  stileWidth: number
  railLower: number
  boards: { from: number; width: number; top: number }
}

/** The room inside the frame of one leaf. */
export function frameRoom(frame: Frame, plan: LeafPlan): FrameRoom {
  const stileWidth = frame.stile.width
  const shoulder = plan.width - 2 * stileWidth
  const railLower = plan.top.lowest(stileWidth, plan.width - stileWidth) - frame.topRail.width
  return {
    shoulder,
    stileWidth,
    railLower,
    boards: {
      from: stileWidth - frame.rebate,
      width: shoulder + 2 * frame.rebate,
      top: railLower + frame.rebate,
    },
  }
}
