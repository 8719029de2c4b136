import type { Board } from '../gate/leaf.ts'
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

/** The leaf's own outline, anticlockwise from the foot of its hanging edge. */
export const leafOutline = ({ leaf, plan }: Lines): Point[] => [
  [0, plan.foot(0)],
  [leaf.width, plan.foot(leaf.width)],
  ...topPoints({ plan }, 0, leaf.width),
]

/** What a board shows up to end, the next one's edge; in a frame its head is hidden in the rail's rebate and square. */
export function boardShape({ leaf, plan }: Lines, board: Board, end: number): Point[] {
  const head: Point[] =
    leaf.frame.length > 0
      ? [
          [end, board.heads[1]],
          [board.x, board.heads[0]],
        ]
      : topPoints({ plan }, board.x, end)
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
