import { paperSizes, type PaperFormat } from '../page.ts'

export const labelSheets = ['24', '40', 'roll'] as const
/** How labels come: so many to a sheet, or one after another on a roll. */
export type LabelSheet = (typeof labelSheets)[number]

/** Which labels to print on: start is the first free one of a sheet used in part, counted along the rows from 1; a roll has no other. */
export type LabelChoice = { sheet: LabelSheet; start: number }

/** A sheet of labels edge to edge, mm: its own size, and how labels lie on it. left and top are where the first begins. */
export type LabelLayout = {
  page: { width: number; height: number }
  across: number
  down: number
  width: number
  height: number
  left: number
  top: number
}

/** A label of a roll, mm: a common width, as long as the words on it want. */
const roll = { width: 62, height: 38 }

const grids: Record<Exclude<LabelSheet, 'roll'>, { across: number; down: number; height?: number }> = {
  '24': { across: 3, down: 8, height: 37 },
  '40': { across: 4, down: 10 },
}

/**
 * Where labels lie on a sheet. 24 to a sheet of A4 are 70 × 37 mm with half a millimetre over at head and foot, 40 are 52.5 × 29.7 mm; a
 * Letter sheet is divided evenly into as many.
 */
export function labelLayout(sheet: LabelSheet, format: PaperFormat): LabelLayout {
  if (sheet === 'roll') return { page: roll, across: 1, down: 1, ...roll, left: 0, top: 0 }
  const page = paperSizes[format]
  const { across, down, height: own } = grids[sheet]
  const height = (format === 'a4' ? own : undefined) ?? page.height / down
  return {
    ...{ page, across, down },
    width: page.width / across,
    height,
    left: 0,
    top: (page.height - down * height) / 2,
  }
}

const short = (mm: number): string => String(Number(mm.toFixed(1)))

/** What a layout is called: '24 to a sheet: 70 × 37 mm', 'roll: 62 × 38 mm'. */
export function labelSheetName(sheet: LabelSheet, format: PaperFormat): string {
  const { width, height } = labelLayout(sheet, format)
  const size = `${short(width)} × ${short(height)} mm`
  return sheet === 'roll' ? `roll: ${size}` : `${sheet} to a sheet: ${size}`
}

/** How many labels a sheet has; 1 on a roll. */
export const labelsOn = (sheet: LabelSheet): number =>
  sheet === 'roll' ? 1 : grids[sheet].across * grids[sheet].down
