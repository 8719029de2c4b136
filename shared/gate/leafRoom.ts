import { frameRoom, type FrameRoom } from './frameRoom.ts'
import type { LeafPlan } from './leafPlan.ts'
import type { GateSpec } from './spec.ts'
import type { TopLine } from './topShape.ts'

/** What the boarding of one leaf fills: from where, how wide, and between which foot and top lines, mm. */
export type BoardsFill = {
  from: number
  width: number
  top: Pick<TopLine, 'heightAt' | 'highest'>
  foot: (x: number) => number
}

/** The room that the ledges of one leaf have: how wide and high, the foot's and top's limits over the leaf, and the frame round it if any. */
export type LedgeRoom = {
  width: number
  height: number
  footHighest: (from: number, to: number) => number
  topLowest: (from: number, to: number) => number
  frame: (FrameRoom & { tenon: number }) | null
}

/** What boards and ledges of one leaf may fill: the whole leaf, or what its frame leaves. */
export function leafRoom(spec: GateSpec, plan: LeafPlan): { boards: BoardsFill; ledges: LedgeRoom } {
  const { width, height, top, foot } = plan
  const ledges = {
    width,
    height,
    footHighest: (from: number, to: number) => Math.max(foot(from), foot(to)),
    topLowest: top.lowest,
  }
  if (!spec.frame) return { boards: { from: 0, width, top, foot }, ledges: { ...ledges, frame: null } }
  const room = frameRoom(spec.frame, plan)
  const flat = () => room.boards.top
  return {
    boards: { ...room.boards, top: { heightAt: flat, highest: flat }, foot },
    ledges: { ...ledges, frame: { ...room, tenon: spec.frame.tenon } },
  }
}
