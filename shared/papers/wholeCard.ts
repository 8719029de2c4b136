import type { GateDrawings } from '../drawing/gateDrawings.ts'
import { cardFirstPage } from './cardFirstPage.ts'
import { headerHeight } from './cardHeader.ts'
import { flow } from './flow.ts'
import type { JobCardInput } from './jobCardInput.ts'
import { margins, paperSizes, type Measure, type PageMark } from './page.ts'
import { wholeBody, type WholeBody } from './wholeBody.ts'
import { wholeFigures } from './wholeFigures.ts'

/** How full the card may be, the fullest first: the drawings show where fixings go, the table the heights of a top. */
const fullness: Pick<WholeBody, 'places' | 'face' | 'settingOut' | 'swing'>[] = [
  { places: 'all', face: true, settingOut: true, swing: 92 },
  { places: 'on ledges', face: true, settingOut: true, swing: 92 },
  { places: 'counted', face: true, settingOut: true, swing: 92 },
  { places: 'all', face: true, settingOut: true, swing: 78 },
  { places: 'counted', face: true, settingOut: true, swing: 78 },
  { places: 'on ledges', face: false, settingOut: true, swing: 78 },
  { places: 'counted', face: false, settingOut: true, swing: 78 },
  { places: 'counted', face: false, settingOut: false, swing: 78 },
]

/** The marks of every page of a whole gate's card under its header: the fullest that needs no page more than the shortest. */
export function wholeCardPages(input: JobCardInput, drawings: GateDrawings, measure: Measure): PageMark[][] {
  const { design, format } = input
  const top = margins.top + headerHeight
  const choice = { face: 'left out', section: 'left out', coarser: 0 } as const
  const figures = wholeFigures(input)
  const first = cardFirstPage({ drawings, figures, checks: design.checks, format, top, choice }, measure)
  const sheet = paperSizes[format]
  const later = { x: margins.left, top, bottom: sheet.height - margins.bottom }
  const width = sheet.width - margins.left - margins.right
  const checks = first.cautioned ? [] : design.checks
  const made = fullness.map((full) => {
    const blocks = wholeBody(
      { input, drawings, placed: first.placed, checks, width, frames: { first: first.free, later }, ...full },
      measure,
    )
    return flow(blocks, first.free, later)
  })
  const least = Math.min(...made.map((pages) => pages.length))
  const chosen = made.find((pages) => pages.length === least) ?? []
  return chosen.map((marks, i) => (i === 0 ? [...first.marks, ...marks] : marks))
}
