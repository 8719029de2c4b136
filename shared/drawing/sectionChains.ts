import type { Leaf, Ledge } from '../gate/leaf.ts'
import type { GateSpec } from '../gate/spec.ts'
import type { Chain } from './drawing.ts'
import type { FigureText } from './figureText.ts'

/** What a section cuts through: up to end along the leaf, where it is broken off; depth is boards and ledge together, mm. */
export type Cut = {
  spec: GateSpec
  leaf: Leaf
  end: number
  broken: boolean
  depth: number
  boardThickness: number
}

/** Along the face: boards and the gap between them. */
export function faceChain({ leaf, end }: Cut, figures: FigureText): Chain[] {
  const stops = [0]
  const labels: Chain['labels'] = []
  leaf.boards.forEach((board, i) => {
    const close = board.x + board.width
    const last = stops.at(-1) ?? 0
    if (close > end + 1e-6 || board.x < last - 1e-6) return
    if (board.x - last > 1e-6) {
      stops.push(board.x)
      labels.push({ text: figures.write(board.x - last), part: 'dimension gap' })
    }
    stops.push(close)
    labels.push({ text: figures.write(board.width), part: `dimension board ${i + 1}` })
  })
  const next = leaf.boards[labels.filter((label) => label?.part !== 'dimension gap').length]
  if (next && next.x < end && next.x - (stops.at(-1) ?? 0) > 1e-6) {
    labels.push({ text: figures.write(next.x - (stops.at(-1) ?? 0)), part: 'dimension gap' })
    stops.push(next.x)
  }
  return labels.length === 0
    ? []
    : [{ kind: 'chain', axis: 'x', base: 0, offset: -9, stops, labels, part: 'dimension boards' }]
}

/** The ledge's inset from the hanging edge, along the back. */
export const insetChain = (ledge: Ledge, at: { end: number; depth: number }, figures: FigureText): Chain[] =>
  ledge.x < 1e-6
    ? []
    : [
        {
          kind: 'chain',
          axis: 'x',
          base: at.depth,
          offset: 6,
          stops: [0, ledge.x],
          reach: { before: 0, after: 14 },
          labels: [{ text: figures.write(ledge.x), part: 'dimension hanging inset' }],
          part: 'dimension hanging inset',
        },
      ]

/** The thickness of boards and ledge, up the hanging side. */
export function thicknessChain(boards: number, depth: number, figures: FigureText): Chain {
  const label = (mm: number, part: string) => ({
    text: figures.write(mm),
    part: `dimension ${part} thickness`,
  })
  const ledge = depth - boards
  return {
    kind: 'chain',
    axis: 'y',
    base: 0,
    offset: -9,
    stops: ledge > 0 ? [0, boards, depth] : [0, boards],
    labels: ledge > 0 ? [label(boards, 'board'), label(ledge, 'ledge')] : [label(boards, 'board')],
    reach: { before: 3, after: 9.5 },
    part: 'dimension thickness',
  }
}
