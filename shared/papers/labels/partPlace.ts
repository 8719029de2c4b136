import type { Drawing, Mark, Polygon } from '../../drawing/drawing.ts'
import { gateDrawings } from '../../drawing/gateDrawings.ts'
import type { JobCardInput } from '../jobCardInput.ts'

type Gate = Pick<JobCardInput, 'spec' | 'design' | 'unit'>

const isPolygon = (mark: Mark): mark is Polygon => mark.kind === 'polygon'

/** Boards that many still show one by one in a small picture. */
const mostBoards = 12

/** Other boards are only wanted about a board: ledges and braces would be lost among them. */
const isBoard = (part: string): boolean => /(^| )board \d+$/.test(part)

/** An H outside the gate at each edge that it hangs by, at half height. */
function hingeLetters(
  { placing, hung }: { placing: 'pair' | 'single'; hung: 'left' | 'right' },
  extent: Drawing['extent'],
): Mark[] {
  const middle = (extent.minY + extent.maxY) / 2
  const letter = (side: 'left' | 'right'): Mark => ({
    kind: 'text',
    at: [side === 'left' ? extent.minX : extent.maxX, middle],
    dx: side === 'left' ? -0.7 : 0.7,
    dy: -1,
    text: 'H',
    size: 'small',
    anchor: side === 'left' ? 'end' : 'start',
  })
  // A pair hangs by its outer edges and needs no telling. Seen from the back, a left-hung gate has its hinges at the right.
  if (placing === 'pair') return []
  return [letter(hung === 'left' ? 'right' : 'left')]
}

function extentOf(shapes: readonly Polygon[]): Drawing['extent'] {
  const xs = shapes.flatMap(({ points }) => points.map(([x]) => x))
  const ys = shapes.flatMap(({ points }) => points.map(([, y]) => y))
  return { minX: Math.min(...xs), minY: Math.min(...ys), maxX: Math.max(...xs), maxY: Math.max(...ys) }
}

/**
 * Small pictures of where each piece sits in its gate, seen from the back as it lies on the bench, H at the hinges: the gate's outline with that
 * piece filled. Given a piece's mark on the cut list, its picture. fine: whether there is room to show boards beside the one that is filled.
 */
export function partPlaces({ spec, design, unit }: Gate, fine: boolean): (mark: string) => Drawing {
  const { back } = gateDrawings(spec, design, unit)
  const marks = new Set(design.cuts.flatMap((row) => row.marks))
  const shapes = back.marks.filter(isPolygon)
  const outlines = shapes.filter(({ part, fill }) => part === undefined && fill === 'none')
  const parts = shapes.filter(({ part }) => part !== undefined && marks.has(part))
  const extent = extentOf([...outlines, ...parts])
  const pair = spec.leaves === 2
  const letters = hingeLetters({ placing: pair ? 'pair' : 'single', hung: spec.hung }, extent)
  const boards = parts.filter(({ part = '' }) => isBoard(part)).length
  const fellowsOf = (mark: string): Polygon[] => {
    if (!isBoard(mark)) return parts.filter(({ part = '' }) => !isBoard(part) && part !== 'meeting strip')
    return fine && boards <= mostBoards ? parts.filter(({ part = '' }) => isBoard(part)) : []
  }
  const side = pair ? 0.4 : 3.4
  const line = ({ points }: Polygon): Mark => ({ kind: 'polygon', points, fill: 'none', pen: 'narrow' })
  return (mark) => ({
    title: '',
    description: `Where ${mark} sits in the gate, seen from the back.`,
    extent,
    margin: { left: side, right: side, top: 0.4, bottom: 0.4 },
    marks: [
      ...fellowsOf(mark)
        .filter(({ part }) => part !== mark)
        .map(line),
      ...outlines.map(line),
      ...parts
        .filter(({ part }) => part === mark)
        .map(({ points }): Mark => ({ kind: 'polygon', points, fill: 'ink' })),
      ...letters,
    ],
    notes: [],
  })
}
