import { fittingScale, paperScales, sizeAt } from '../drawing/fitScale.ts'
import type { GateDrawings } from '../drawing/gateDrawings.ts'
import type { Drawing } from '../drawing/drawing.ts'
import type { Check } from '../gate/checks.ts'
import { stacked, type Frame } from './flow.ts'
import { cautionBlocks } from './stepBlocks.ts'
import type { CardChoice } from './cardChoices.ts'
import { figureHeight, figureMarks, type CardFigure } from './cardFigures.ts'
import { margins, paperSizes, type Measure, type PageMark, type PaperFormat } from './page.ts'

/** Width of the column of figures beside the drawing, with the space before it, mm. */
const columnWidth = 45

type Room = { x: number; y: number; width: number; height: number }

/** Figures in rows of up to six across the sheet. */
function strip(figures: CardFigure[], room: Room, measure: Measure): { height: number; marks: PageMark[] } {
  const across = Math.min(figures.length, 4)
  const width = room.width / across
  return {
    height: Math.ceil(figures.length / across) * figureHeight,
    marks: figures.flatMap((figure, i) =>
      figureMarks(
        figure,
        {
          x: room.x + (i % across) * width,
          y: room.y + Math.floor(i / across) * figureHeight,
          width: width - 4,
        },
        measure,
      ),
    ),
  }
}

const column = (figures: CardFigure[], room: Room, measure: Measure): PageMark[] =>
  figures.flatMap((figure, i) =>
    figureMarks(figure, { x: room.x, y: room.y + i * figureHeight, width: room.width }, measure),
  )

/** The marks of page 1, which views stand on it, whether the cautions do, and what is left free. */
export type FirstPage = { marks: PageMark[]; placed: (keyof GateDrawings)[]; cautioned: boolean; free: Frame }

/** What of a card's choice page 1 asks for. */
export type PageChoice = Pick<CardChoice, 'face' | 'section' | 'coarser'>

/** A scale so many steps smaller than another. */
const coarserScale = (scale: number, steps: number): number =>
  steps === 0 ? scale : (paperScales[paperScales.indexOf(scale) + steps] ?? scale)

/** Drawings one under another in a room: the back as large as it goes, then the others where height is left. */
function drawingsIn(drawings: GateDrawings, room: Room, choice: PageChoice): FirstPage {
  const scale = coarserScale(fittingScale(drawings.back, room), choice.coarser)
  const marks: PageMark[] = []
  const placed: (keyof GateDrawings)[] = []
  let y = room.y
  const put = (name: keyof GateDrawings, drawing: Drawing, at: number) => {
    const { height } = sizeAt(drawing, at)
    marks.push({ kind: 'drawing', x: room.x, y, width: room.width, height, scale: at, drawing })
    placed.push(name)
    y += height + 3
  }
  put('back', drawings.back, scale)
  const sectionScale = fittingScale(drawings.section, { width: room.width, height: 82 })
  const free = () => room.y + room.height - y
  if (choice.face !== 'left out' && sizeAt(drawings.face, scale).height <= free())
    put('face', drawings.face, scale)
  if (choice.section !== 'left out' && sizeAt(drawings.section, sectionScale).height <= free())
    put('section', drawings.section, sectionScale)
  return {
    marks,
    placed,
    cautioned: false,
    free: { x: room.x, top: y + 3, bottom: room.y + room.height },
  }
}

/** What page 1 is made of below its header; top is where that ends, mm. */
export type FirstPageInput = {
  drawings: GateDrawings
  figures: CardFigure[]
  checks: Check[]
  format: PaperFormat
  top: number
  choice: PageChoice
}

/** The figures in a column beside the drawing, with the cautions under them where they fit. */
function figuresBeside(input: FirstPageInput, whole: Room, measure: Measure): FirstPage {
  const { drawings, figures, checks, choice } = input
  const beside: Room = { ...whole, width: whole.width - columnWidth }
  const views = drawingsIn(drawings, beside, choice)
  const room = { ...whole, x: whole.x + beside.width + 5, width: columnWidth - 5, y: whole.y + 2 }
  const cautions = stacked(cautionBlocks(checks, room.width, measure))
  const under = room.y + figures.length * figureHeight + 5
  const cautioned = cautions.height > 0 && under + cautions.height <= whole.y + whole.height
  return {
    ...views,
    cautioned,
    free: { ...views.free, top: Math.max(views.free.top, cautioned ? under + cautions.height + 4 : under) },
    marks: [
      ...views.marks,
      ...column(figures, room, measure),
      ...(cautioned ? cautions.marks(room.x, under) : []),
    ],
  }
}

/** The figures in rows above the drawing, which then has the sheet's whole width. */
function figuresAbove(
  { drawings, figures, choice }: FirstPageInput,
  whole: Room,
  measure: Measure,
): FirstPage {
  const rows = strip(figures, whole, measure)
  const room = { ...whole, y: whole.y + rows.height + 4, height: whole.height - rows.height - 4 }
  const views = drawingsIn(drawings, room, choice)
  return { ...views, marks: [...rows.marks, ...views.marks] }
}

/** Whether the drawing comes out at least as large with the figures beside it, and they fit there. */
function besideIsLarger({ drawings, figures }: FirstPageInput, whole: Room, measure: Measure): boolean {
  const beside = { width: whole.width - columnWidth, height: whole.height }
  const below = { width: whole.width, height: whole.height - strip(figures, whole, measure).height - 4 }
  return (
    fittingScale(drawings.back, beside) <= fittingScale(drawings.back, below) &&
    figures.length * figureHeight <= whole.height
  )
}

/**
 * Page 1 below its header: the back elevation as large as the sheet allows with the figures that matter beside it, or over it
 * where that leaves the drawing larger; at the foot the line to check the printer by.
 */
export function cardFirstPage(input: FirstPageInput, measure: Measure): FirstPage {
  const sheet = paperSizes[input.format]
  const whole: Room = {
    x: margins.left,
    y: input.top,
    width: sheet.width - margins.left - margins.right,
    height: sheet.height - margins.bottom - 7 - input.top,
  }
  const laid = besideIsLarger(input, whole, measure)
    ? figuresBeside(input, whole, measure)
    : figuresAbove(input, whole, measure)
  return { ...laid, marks: [...laid.marks, ...checkLine(margins.left, sheet.height - margins.bottom)] }
}

/** A line exactly 100 mm long between ticks, so that a printer that shrinks pages is found out before timber is cut. */
function checkLine(x: number, y: number): PageMark[] {
  const tick = (at: number): PageMark => ({
    kind: 'line',
    x1: at,
    y1: y - 2.2,
    x2: at,
    y2: y - 0.2,
    width: 0.25,
    ink: 'black',
  })
  return [
    { kind: 'line', x1: x, y1: y - 1.2, x2: x + 100, y2: y - 1.2, width: 0.25, ink: 'black' },
    tick(x),
    tick(x + 100),
    {
      kind: 'text',
      x: x + 103,
      y,
      text: 'This line is 100 mm: measure it.',
      size: 11,
      weight: 'regular',
      ink: 'black',
      anchor: 'start',
    },
  ]
}
