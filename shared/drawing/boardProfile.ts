import type { Board } from '../gate/leaf.ts'
import type { Section } from '../gate/spec.ts'
import type { Point } from '../geometry/point.ts'

/**
 * Sizes of a board's moulded edges for drawing, mm. Tongue and groove are the section's own; the V's chamfer and the tongue's
 * thickness aren't in it and are drawn as usually run (common practice): a third of the thickness, and 3 mm or less on a thin board.
 */
export function boardProfile(section: Section) {
  const tongue = section.tongue ?? 0
  const third = section.thickness / 3
  return {
    tongue,
    groove: tongue > 0 ? (section.groove ?? tongue + 1) : 0,
    chamfer: Math.min(3, section.thickness / 6),
    tongueFrom: third,
    tongueTo: 2 * third,
  }
}

type Edge = 'plain' | 'tongue' | 'groove'

/** Which moulding each edge of a board still carries. */
export function edgesOf(
  board: Board,
  tongues: 'to-closing' | 'to-hanging',
): { hanging: Edge; closing: Edge } {
  const own = {
    hanging: tongues === 'to-closing' ? 'groove' : 'tongue',
    closing: tongues === 'to-closing' ? 'tongue' : 'groove',
  } as const
  return {
    hanging: board.loses.hanging === 'nothing' ? own.hanging : 'plain',
    closing: board.loses.closing === 'nothing' ? own.closing : 'plain',
  }
}

/** One edge from the face to the back: inset is how far a point lies into the board from its face edge (a tongue's are negative). */
function edgePoints(edge: Edge, section: Section): { inset: number; z: number }[] {
  const { tongue, groove, chamfer, tongueFrom, tongueTo } = boardProfile(section)
  const start = [
    { inset: chamfer, z: 0 },
    { inset: 0, z: chamfer },
  ]
  const end = { inset: 0, z: section.thickness }
  const depth = edge === 'tongue' ? -tongue : groove
  if (edge === 'plain' || depth === 0) return [...start, end]
  return [
    ...start,
    { inset: 0, z: tongueFrom },
    { inset: depth, z: tongueFrom },
    { inset: depth, z: tongueTo },
    { inset: 0, z: tongueTo },
    end,
  ]
}

/** A board cut square across, face at z = 0: its outline anticlockwise from the face's hanging side. Points are [x, z], mm. */
export function boardOutline(board: Board, section: Section, tongues: 'to-closing' | 'to-hanging'): Point[] {
  const edges = edgesOf(board, tongues)
  const hanging = edgePoints(edges.hanging, section).map(({ inset, z }): Point => [board.x + inset, z])
  const closing = edgePoints(edges.closing, section).map(({ inset, z }): Point => [
    board.x + board.width - inset,
    z,
  ])
  return [...closing, ...hanging.reverse()]
}
