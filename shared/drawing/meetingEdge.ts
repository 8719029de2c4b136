import type { Point } from '../geometry/point.ts'

/**
 * How an edge is stepped half its thickness deep: reach is how far the half on the opening side stands back from the edge, mm, negative where
 * it stands past it and covers the other leaf.
 */
export type EdgeStep = { reach: number; side: 'face' | 'back' }

/**
 * A stepped meeting edge from the face to the back: distances in from the leaf's own edge and depths from its face, mm. A lap of 15 on the back
 * of a 20 board: [0, 0], [0, 10], [−15, 10], [−15, 20].
 */
export function meetingEdge({ reach, side }: EdgeStep, thickness: number): Point[] {
  const half = thickness / 2
  const [face, back] = side === 'face' ? [reach, 0] : [0, reach]
  return [
    [face, 0],
    [face, half],
    [back, half],
    [back, thickness],
  ]
}
