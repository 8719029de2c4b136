import { gateDrawings, type GateDrawings } from '../drawing/gateDrawings.ts'
import type { GateSpec } from '../gate/spec.ts'
import { cardBody } from './cardBody.ts'
import { choices, type CardChoice } from './cardChoices.ts'
import { cardFigures } from './cardFigures.ts'
import { cardFirstPage } from './cardFirstPage.ts'
import { headerHeight } from './cardHeader.ts'
import { flow } from './flow.ts'
import { headedPages } from './headedPages.ts'
import type { JobCardInput } from './jobCardInput.ts'
import { plainMeasure } from './measure.ts'
import { margins, paperSizes, type Measure, type PageMark, type PaperDocument } from './page.ts'
import { wholeCardPages } from './wholeCard.ts'

/** Most pages a plain leaf's card may have: past that it no longer lies on one bench. */
const mostPages = 3

/** Whether a gate is one level, unframed leaf of a given size with flush braces: the one whose card keeps to three pages. */
export const isPlainLeaf = ({ leaves, stable, frame, top, foot, braces, size }: GateSpec): boolean =>
  leaves === 1 &&
  !stable &&
  !frame &&
  top.shape === 'level' &&
  foot !== 'follows-ground' &&
  braces?.ends !== 'notched' &&
  size.from === 'leaf'

/**
 * The job card as pages in mm: the back elevation and the figures that matter on page 1; then cut list, rip list, holes, fixings,
 * saw settings, cautions and the order of making. measure reads the faces it will be painted with; without it plain Latin is right.
 * A plain leaf's keeps to three pages: what is given elsewhere as well is set smaller or left out, by `choices`, and its hanging stands on the
 * fitting sheet. Any other gate's goes on through the hanging, with every further drawing that it has.
 */
export function jobCard(input: JobCardInput, measure: Measure = plainMeasure): PaperDocument {
  const drawings = gateDrawings(input.spec, input.design, input.unit)
  const pages = isPlainLeaf(input.spec)
    ? shortEnough((choice) => cardPages({ input, drawings }, choice, measure))
    : wholeCardPages(input, drawings, measure)
  return headedPages(input, { paper: 'job card', pages }, measure)
}

/** The fullest card that keeps within its pages; the shortest there is when none does. */
function shortEnough(make: (choice: CardChoice) => PageMark[][]): PageMark[][] {
  let last: PageMark[][] = []
  for (const choice of choices) {
    last = make(choice)
    if (last.length <= mostPages) return last
  }
  return last
}

/** The marks of every page under its header, for one choice of how full the card is. */
function cardPages(
  { input, drawings }: { input: JobCardInput; drawings: GateDrawings },
  choice: CardChoice,
  measure: Measure,
): PageMark[][] {
  const { spec, design, unit, format } = input
  const leaf = design.leaves[0]
  if (!leaf) throw new RangeError('a design without a leaf has no card')
  const top = margins.top + headerHeight
  const figures = cardFigures(spec, leaf, unit)
  const first = cardFirstPage({ drawings, figures, checks: design.checks, format, top, choice }, measure)
  const sheet = paperSizes[format]
  const later = { x: margins.left, top, bottom: sheet.height - margins.bottom }
  const width = sheet.width - margins.left - margins.right
  const left = (view: 'face' | 'section') => (first.placed.includes(view) ? 'left out' : choice[view])
  const checks = first.cautioned ? [] : design.checks
  const blocks = cardBody(
    { ...choice, face: left('face'), section: left('section'), input, leaf, drawings, width, checks },
    measure,
  )
  return flow(blocks, first.free, later).map((marks, i) => (i === 0 ? [...first.marks, ...marks] : marks))
}
