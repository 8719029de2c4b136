import type { Design } from '../gate/designModel.ts'
import type { GateSpec } from '../gate/spec.ts'
import type { Drawing } from './drawing.ts'
import type { FigureText } from './figureText.ts'
import { groundMarks } from './ground.ts'
import { hingeSide } from './hingeSide.ts'
import type { Placing } from './placeLeaves.ts'
import { extentOf, viewEdges, type ViewEdges } from './viewEdges.ts'

/** A gate to be drawn: as entered, as worked out, its leaves in their places, and how figures are written. */
export type GateView = { spec: GateSpec; design: Design; placing: Placing; figures: FigureText }

/** What one elevation adds to the ground and the hinge side that both have. */
type Own = Omit<Drawing, 'extent'>

/** A front view of all leaves before the hand turns it: the ground, what the view shows, and which side hangs. */
export function elevation(
  { spec, design, placing }: GateView,
  view: 'face' | 'back',
  own: (edges: ViewEdges) => Own,
): Drawing {
  const edges = viewEdges({ spec, design }, placing, view)
  const drawn = own(edges)
  return {
    ...drawn,
    extent: extentOf(edges),
    marks: [
      ...(edges.ground ? groundMarks(edges.ground, placing) : []),
      ...drawn.marks,
      ...hingeSide(placing, edges, spec.frame?.horn ?? 0),
    ],
  }
}
