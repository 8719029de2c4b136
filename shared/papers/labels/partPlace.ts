import type { Drawing, Mark, Polygon } from '../../drawing/drawing.ts'
import { gateDrawings } from '../../drawing/gateDrawings.ts'
import type { GateSpec } from '../../gate/spec.ts'
import type { JobCardInput } from '../jobCardInput.ts'

type Gate = Pick<JobCardInput, 'spec' | 'design' | 'unit'>

const isPolygon = (mark: Mark): mark is Polygon => mark.kind === 'polygon'

/** Boards that many still show one by one in a small picture. */
const mostBoards = 12

/** Other boards are only wanted about a board: ledges and braces would be lost among them. */
const isBoard = (part: string): boolean => /(^| )board \d+$/.test(part)

type Extent = Drawing['extent']
type Side = 'left' | 'right'

/** An H outside the shapes shown, at half height, on the side that they hang by. */
function hingeLetter(side: Side, { minX, minY, maxX, maxY }: Extent): Mark {
  const left = side === 'left'
  return {
    kind: 'text',
    at: [left ? minX : maxX, (minY + maxY) / 2],
    dx: left ? -0.7 : 0.7,
    dy: -1,
    text: 'H',
    size: 'small',
    anchor: left ? 'end' : 'start',
  }
}

function extentOf(shapes: readonly Polygon[]): Extent {
  const xs = shapes.flatMap(({ points }) => points.map(([x]) => x))
  const ys = shapes.flatMap(({ points }) => points.map(([, y]) => y))
  return { minX: Math.min(...xs), minY: Math.min(...ys), maxX: Math.max(...xs), maxY: Math.max(...ys) }
}

/** What a picture is drawn from: the outlines of the leaves and the shapes of the pieces. */
type Shapes = { outlines: Polygon[]; parts: Polygon[] }

const leafOf = (part: string): string => /^(?:first|second) leaf|^(?:lower|upper) half/.exec(part)?.[0] ?? ''

/** The one leaf that a piece is of, where there are several and room for one only; all of them for a piece of no one leaf. */
function ownLeaf({ outlines, parts }: Shapes, mark: string): Shapes {
  const leaf = leafOf(mark)
  if (leaf === '') return { outlines, parts }
  const own = parts.filter(({ part = '' }) => leafOf(part) === leaf)
  const { minX, minY, maxX, maxY } = extentOf(own)
  const [x, y] = [(minX + maxX) / 2, (minY + maxY) / 2]
  const about = outlines.filter((outline) => {
    const box = extentOf([outline])
    return x > box.minX && x < box.maxX && y > box.minY && y < box.maxY
  })
  return { outlines: about, parts: own }
}

/** Pieces that are drawn beside the one that is filled. */
function fellows({ parts }: Shapes, mark: string, fine: boolean): Polygon[] {
  const others = parts.filter(({ part }) => part !== mark && part !== 'meeting strip')
  if (!isBoard(mark)) return others.filter(({ part = '' }) => !isBoard(part))
  const boards = parts.filter(({ part = '' }) => isBoard(part)).length
  return fine && boards <= mostBoards ? others.filter(({ part = '' }) => isBoard(part)) : []
}

const line = ({ points }: Polygon): Mark => ({ kind: 'polygon', points, fill: 'none', pen: 'narrow' })
const filled = ({ points }: Polygon): Mark => ({ kind: 'polygon', points, fill: 'ink' })

/** The outlines and pieces of a gate as its back elevation shows them. */
function shapesOf({ spec, design, unit }: Gate): Shapes {
  const marks = new Set(design.cuts.flatMap((row) => row.marks))
  const shapes = gateDrawings(spec, design, unit).back.marks.filter(isPolygon)
  return {
    outlines: shapes.filter(({ part, fill }) => part === undefined && fill === 'none'),
    parts: shapes.filter(({ part }) => part !== undefined && marks.has(part)),
  }
}

/**
 * The side that what is shown hangs by, seen from the back: a left-hung leaf has its hinges at the right there, a pair's leaf outside. undefined
 * for a whole pair, which hangs by both sides and needs no telling.
 */
function hingeSide({ leaves, hung }: GateSpec, shown: Extent, whole: Extent): Side | undefined {
  if (leaves === 1) return hung === 'left' ? 'right' : 'left'
  if (shown.maxX - shown.minX > (whole.maxX - whole.minX) * 0.75) return undefined
  return shown.minX + shown.maxX > whole.minX + whole.maxX ? 'right' : 'left'
}

/**
 * Small pictures of where each piece sits in its gate, seen from the back as it lies on the bench, H at the hinges: the gate's outline with that
 * piece filled. Given a piece's mark on the cut list, its picture. fine: whether there is room to show all leaves, and boards one by one.
 */
export function partPlaces(gate: Gate, fine: boolean): (mark: string) => Drawing {
  const all = shapesOf(gate)
  const whole = extentOf([...all.outlines, ...all.parts])
  return (mark) => {
    const shown = fine ? all : ownLeaf(all, mark)
    const extent = extentOf([...shown.outlines, ...shown.parts])
    const side = hingeSide(gate.spec, extent, whole)
    const margin = (at: Side): number => (side === at ? 3.4 : 0.4)
    return {
      title: '',
      description: `Where ${mark} sits in the gate, seen from the back.`,
      extent,
      margin: { left: margin('left'), right: margin('right'), top: 0.4, bottom: 0.4 },
      marks: [
        ...fellows(shown, mark, fine).map(line),
        ...shown.outlines.map(line),
        ...shown.parts.filter(({ part }) => part === mark).map(filled),
        ...(side === undefined ? [] : [hingeLetter(side, extent)]),
      ],
      notes: [],
    }
  }
}
