import type { Board } from '../gate/leaf.ts'
import { lapHead } from '../gate/meeting.ts'
import type { Point } from '../geometry/point.ts'
import type { PlacedLeaf } from './placeLeaves.ts'

/** Longest straight step in which a curve is drawn, mm: on a radius of 1 m it strays 0.11 mm from the true line. */
const step = 30

type Lines = Pick<PlacedLeaf, 'leaf' | 'plan'>

/** The top between two places, from closing to hanging, in short steps where it curves. */
export function topPoints({ plan }: Pick<Lines, 'plan'>, from: number, to: number): Point[] {
  const steps = plan.top.radius === null ? 1 : Math.max(1, Math.ceil((to - from) / step))
  return Array.from({ length: steps + 1 }, (_, i): Point => {
    const x = i === steps ? from : to - ((to - from) * i) / steps
    return [x, plan.top.heightAt(x)]
  })
}

/** Where the meeting or closing edge of a leaf is seen on one side, mm: at its width, or as far past or short of it as its lap. */
export const closingEdge = ({ leaf, reach }: PlacedLeaf, view: 'face' | 'back'): number =>
  Math.max(0, leaf.width + reach[view])

/** The top from a leaf's closing edge as it is seen back to a place on it. */
function headTo({ plan }: Pick<Lines, 'plan'>, from: number, to: number): Point[] {
  if (to <= plan.width) return topPoints({ plan }, from, to)
  return [[to, lapHead(plan, to)], ...topPoints({ plan }, from, plan.width)]
}

/** The leaf's own outline as it is seen on one side, anticlockwise from the foot of its hanging edge. */
export function leafOutline(placed: PlacedLeaf, view: 'face' | 'back'): Point[] {
  const end = closingEdge(placed, view)
  return [[0, placed.plan.foot(0)], [end, placed.plan.foot(end)], ...headTo(placed, 0, end)]
}

/** Where the last board is seen to end: at the leaf's edge, or in the rebate of the closing stile. */
export function lastEnd(placed: PlacedLeaf, view: 'face' | 'back'): number {
  const { boards, frame } = placed.leaf
  const last = boards.at(-1)
  return frame.length > 0 && last ? last.x + last.width : closingEdge(placed, view)
}

/** A closing stile's outline as it is seen on one side, wider or narrower by the lap of a rebated meeting. */
export function stileSeen(placed: PlacedLeaf, outline: Point[], view: 'face' | 'back'): Point[] {
  if (placed.reach[view] === 0) return outline
  const from = Math.min(...outline.map(([x]) => x))
  const end = closingEdge(placed, view)
  return [[from, placed.plan.foot(from)], [end, placed.plan.foot(end)], ...headTo(placed, from, end)]
}

/** What a board shows up to end, the next one's edge; in a frame its head is hidden in the rail's rebate and square. */
export function boardShape({ leaf, plan }: Lines, board: Board, end: number): Point[] {
  const head: Point[] =
    leaf.frame.length > 0
      ? [
          [end, board.heads[1]],
          [board.x, board.heads[0]],
        ]
      : headTo({ plan }, board.x, end)
  return [[board.x, plan.foot(board.x)], [end, plan.foot(end)], ...head]
}

/** The foot and the head of a joint between boards at x. */
export const jointEnds = ({ leaf, plan }: Lines, x: number, board: Board): [Point, Point] => [
  [x, plan.foot(x)],
  [x, leaf.frame.length > 0 ? board.heads[0] : plan.top.heightAt(x)],
]

/** How far the stiles reach in from each edge, mm: 0 on a leaf without a frame. */
export const stileWidth = ({ leaf }: Pick<Lines, 'leaf'>): number => leaf.frame[0]?.section.width ?? 0

/** The lower edge of a framed leaf's top rail. */
export const railLower = ({ leaf }: Pick<Lines, 'leaf'>): number | undefined =>
  leaf.frame.find(({ name }) => name === 'top rail')?.outline[0]?.[1]

/** The foot's lowest and highest point. */
export function footReach({ leaf, plan }: Lines): [number, number] {
  const ends = [plan.foot(0), plan.foot(leaf.width)]
  return [Math.min(...ends), Math.max(...ends)]
}
