import type { Board, Brace, Leaf } from '../gate/leaf.ts'
import type { GateSpec } from '../gate/spec.ts'
import { figureText, type FigureText } from '../drawing/figureText.ts'
import type { LengthUnit } from '../job/job.ts'
import type { Measure, PageMark, PageText } from './page.ts'
import { fitWords } from './words.ts'

/** A figure that matters at the bench: what it is, its value large, and what goes with it in small. */
export type CardFigure = { label: string; value: string; second: string }

/** What an edge board is made to, and how: 'board 8 to 110'. */
export function edgeBoard(board: Board, number: number, figures: FigureText): CardFigure[] {
  const lost = (['hanging', 'closing'] as const)
    .map((edge) => board.loses[edge])
    .find((what) => what !== 'nothing')
  if (lost === undefined) return []
  const label = board.ripped ? `Rip board ${number} to` : `Board ${number}, ${lost} off, to`
  return [{ label, value: figures.write(board.width), second: figures.other(board.width) }]
}

/** Braces that are cut alike are spoken of together. */
export function braceFigures(braces: Brace[], figures: FigureText): CardFigure[] {
  const alike = new Map<string, Brace[]>()
  for (const brace of braces) {
    const key = `${brace.angle.toFixed(1)} ${figures.write(brace.length)}`
    alike.set(key, [...(alike.get(key) ?? []), brace])
  }
  return [...alike.values()].flatMap((same): CardFigure[] => {
    const [brace] = same
    if (!brace) return []
    const name =
      brace.name === 'single'
        ? 'Brace'
        : same.length > 1
          ? 'Both braces'
          : `${brace.name === 'lower' ? 'Lower' : 'Upper'} brace`
    return [
      {
        label: name,
        value: `${brace.angle.toFixed(1)}°`,
        second: `saw ${brace.sawSetting.toFixed(1)}° off square`,
      },
      {
        label: 'between long points',
        value: figures.write(brace.length),
        second: figures.other(brace.length),
      },
    ]
  })
}

/** The handful of figures that page 1 sets large: leaf, hand, boards, edge boards, braces. */
export function cardFigures(spec: GateSpec, leaf: Leaf, unit: LengthUnit): CardFigure[] {
  const figures = figureText(unit)
  const size = (write: (mm: number) => string) => `${write(leaf.width)} × ${write(leaf.height)}`
  const second = size(figures.other).replace(' mm ×', ' ×')
  const last = leaf.boards.length - 1
  return [
    { label: 'Leaf', value: size(figures.write), second },
    { label: 'Hung', value: spec.hung, second: 'seen from the face' },
    { label: 'Boards', value: String(leaf.boards.length), second: spec.boards.section.name },
    ...leaf.boards.flatMap((board, i) => (i === 0 || i === last ? edgeBoard(board, i + 1, figures) : [])),
    ...braceFigures(leaf.braces, figures),
  ]
}

/** Height one figure takes in a column or strip, mm. */
export const figureHeight = 20.5

/** One figure with its label over it and its second line under it, in a column of this width. */
export function figureMarks(
  figure: CardFigure,
  at: { x: number; y: number; width: number },
  measure: Measure,
): PageMark[] {
  const label = fitWords(figure.label, { width: at.width, most: 11, least: 11, weight: 'regular' }, measure)
  const value = fitWords(figure.value, { width: at.width, most: 22, least: 12, weight: 'semibold' }, measure)
  const second = fitWords(figure.second, { width: at.width, most: 11, least: 11, weight: 'regular' }, measure)
  const line = (
    y: number,
    words: { text: string; size: number },
    look: Pick<PageText, 'weight' | 'ink'>,
  ): PageText => ({
    kind: 'text',
    x: at.x,
    y: at.y + y,
    ...words,
    ...look,
    anchor: 'start',
  })
  return [
    line(4, label, { weight: 'regular', ink: 'grey' }),
    line(11.5, value, { weight: 'semibold', ink: 'black' }),
    line(16.3, second, { weight: 'regular', ink: 'black' }),
  ]
}
