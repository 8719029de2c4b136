import { widestEdges, type Boarding } from './boarding.ts'
import { geometry, workshopSetting, type Figure, type Figures } from './figures.ts'
import type { Board } from './leaf.ts'
import { figure, joined } from './worked.ts'

/** What the boards' figures are worked from: the boards themselves and what was put in, mm. */
export type BoardsSource = { boards: Board[]; leafWidth: number; endTrim: number; boarding: Boarding }

type Inputs = Record<string, number>

const mm = (value: number, formula: string, inputs: Inputs): Figure =>
  figure(value, 'mm', { formula, inputs, source: geometry })

const fromWorkshop = (made: Figure): Figure => ({ ...made, source: workshopSetting })

/** A ripped board's width: what the others leave of the leaf, shared between two when both edges are ripped. */
function rippedWidth({ boards, leafWidth, boarding }: BoardsSource, index: number): Figure {
  const { cover, gap } = boarding
  const count = boards.length
  const width = (boards[index] as Board).width
  const other = boards[index === 0 ? count - 1 : 0] as Board
  const inputs = { 'leaf width': leafWidth, count, cover, gap }
  if (other.ripped) return mm(width, '(leaf width − (count − 2) × cover − (count − 1) × gap) / 2', inputs)
  return mm(width, 'leaf width − other edge board − (count − 2) × cover − (count − 1) × gap', {
    ...inputs,
    'other edge board': other.width,
  })
}

function widthFigure(source: BoardsSource, index: number): Figure {
  const { boards, leafWidth, boarding } = source
  const { width, ripped } = boards[index] as Board
  if (boards.length === 1) return mm(width, 'leaf width, one board being enough', { 'leaf width': leafWidth })
  if (ripped) return rippedWidth(source, index)
  const { cover, groove } = boarding
  const widest = widestEdges(boarding)
  const edge = index === 0 ? widest.hanging : index === boards.length - 1 ? widest.closing : cover
  return edge < cover
    ? mm(width, 'cover − groove, which would show at the edge', { cover, groove })
    : fromWorkshop(mm(width, 'cover width of the section', { cover }))
}

function sizeFigures(source: BoardsSource, index: number): Figures {
  const { boards, boarding, endTrim } = source
  const board = boards[index] as Board
  const { gap } = boarding
  return {
    x: mm(board.x, 'start of the boarding + widths of the boards before it + number before it × gap', {
      'start of the boarding': (boards[0] as Board).x,
      'widths of the boards before it': boards.slice(0, index).reduce((sum, { width }) => sum + width, 0),
      'number before it': index,
      gap,
    }),
    width: widthFigure(source, index),
    length: mm(board.length, 'highest point of the top over the board − lowest point of the foot under it', {
      'highest point of the top': board.length + Math.min(...board.feet),
      'lowest point of the foot': Math.min(...board.feet),
    }),
    headHanging: mm(board.heads[0], 'height of the top at the board’s hanging edge', { x: board.x }),
    headClosing: mm(board.heads[1], 'height of the top at the board’s closing edge', {
      x: board.x + board.width,
    }),
    ...(board.feet[0] === 0 && board.feet[1] === 0
      ? {}
      : {
          footHanging: mm(board.feet[0], 'height of the foot’s line at the board’s hanging edge', {
            x: board.x,
          }),
          footClosing: mm(board.feet[1], 'height of the foot’s line at the board’s closing edge', {
            x: board.x + board.width,
          }),
        }),
    blank: fromWorkshop(
      mm(board.blank, 'length over face and tongue + 2 × end trim', {
        'length over face and tongue': board.blank - 2 * endTrim,
        'end trim': endTrim,
      }),
    ),
  }
}

/** The edge of a lapped board that less comes off. */
const lappedEdge = (boards: Board[], { tongues }: Boarding): 'hanging' | 'closing' =>
  boards.length === 1 && tongues === 'to-hanging' ? 'hanging' : 'closing'

/** The fence for an edge board, and what comes off each of its edges. */
function sawFigures({ boards, boarding }: BoardsSource, index: number): Figures {
  const board = boards[index] as Board
  const { cover, tongue, groove } = boarding
  const figures: Figures = {}
  if (board.fence !== null)
    figures['fence'] =
      board.lap === undefined
        ? mm(board.fence, 'face width + kept tongue', {
            'face width': board.width,
            'kept tongue': board.fence - board.width,
          })
        : mm(board.fence, 'face width + lap + kept tongue', {
            'face width': board.width,
            lap: board.lap,
            'kept tongue': board.fence - board.width - board.lap,
          })
  if (board.lap !== undefined)
    figures['widthWithLap'] = mm(board.width + board.lap, 'face width + lap', {
      'face width': board.width,
      lap: board.lap,
    })
  for (const edge of ['hanging', 'closing'] as const) {
    if (board.strip[edge] === 0) continue
    const tongueEdge = (edge === 'closing') === (boarding.tongues === 'to-closing')
    const wide = board.lap !== undefined && edge === lappedEdge(boards, boarding)
    const inputs = { cover, 'face width': board.width, ...(wide ? { lap: board.lap ?? 0 } : {}) }
    const less = wide ? ' − lap' : ''
    const lone = boards.length === 1
    figures[`strip.${edge}`] = !tongueEdge
      ? lone
        ? mm(board.strip[edge], 'groove', { groove })
        : mm(board.strip[edge], `cover − face width${less}`, inputs)
      : lone
        ? mm(board.strip[edge], `tongue + cover − groove − face width${less}`, { ...inputs, tongue, groove })
        : mm(board.strip[edge], `tongue + cover − face width${less}`, { ...inputs, tongue })
  }
  return figures
}

/** Every figure of the boards: 'boards.count', and 'board.3.width' and the like, counted from 1 at the hanging edge. */
export function boardFigures(source: BoardsSource): Figures {
  const { boards, leafWidth, boarding } = source
  const { cover, gap, tongue, groove } = boarding
  const figures = joined([])
  figures['boards.count'] = figure(boards.length, 'no.', {
    formula: 'the least count whose ripped board is no wider than the edge allows',
    inputs: { 'leaf width': leafWidth, cover, gap, groove },
    source: geometry,
  })
  if (tongue > 0)
    figures['boards.tongueReach'] = mm(Math.max(0, tongue - gap), 'tongue − gap, 0 at least', { tongue, gap })
  boards.forEach((_, index) => {
    const prefix = `board.${index + 1}.`
    for (const own of [sizeFigures(source, index), sawFigures(source, index)])
      for (const name in own) figures[prefix + name] = own[name] as Figure
  })
  return figures
}
