import { extraDrawing } from '../drawing/extraDrawings.ts'
import { headerHeight } from './cardHeader.ts'
import { closelyPacked, flow } from './flow.ts'
import { hangingParts } from './hangingBlocks.ts'
import { headedPages } from './headedPages.ts'
import type { JobCardInput } from './jobCardInput.ts'
import { plainMeasure } from './measure.ts'
import { margins, paperSizes, type Measure, type PaperDocument } from './page.ts'
import { stepBlocks } from './stepBlocks.ts'

/** The fitting sheet, to take to where the gate hangs: opening and gaps, ironmongery and what to drill, weight, swing, and the order of hanging. */
export function fittingSheet(input: JobCardInput, measure: Measure = plainMeasure): PaperDocument {
  const { spec, design, unit, format } = input
  const sheet = paperSizes[format]
  const width = sheet.width - margins.left - margins.right
  const later = { x: margins.left, top: margins.top + headerHeight, bottom: sheet.height - margins.bottom }
  const first = { ...later }
  const drawn = (name: 'swing' | 'ground') => {
    const drawing = extraDrawing({ spec, design, unit }, name)
    return drawing ? { [name]: drawing } : {}
  }
  const views = { ...drawn('swing'), ...drawn('ground') }
  const made = [92, 78].map((swing) => {
    const blocks = [
      ...closelyPacked(hangingParts(input, { views, width, swing }, measure), [], { first, later }),
      ...stepBlocks(design.steps, { stage: 'hanging', unit, width }, measure),
    ]
    return flow(blocks, first, later)
  })
  const least = Math.min(...made.map((pages) => pages.length))
  const pages = made.find((one) => one.length === least) ?? []
  return headedPages(input, { paper: 'fitting sheet', pages }, measure)
}
