import { extraDrawing } from '../drawing/extraDrawings.ts'
import { headerHeight } from './cardHeader.ts'
import { boltHoles } from './fitting/boltHoles.ts'
import { handedOver } from './fitting/handedOver.ts'
import { toolBlocks, toolWords } from './fitting/toolsToBring.ts'
import { closelyPacked, flow, type Block } from './flow.ts'
import { hangingParts } from './hangingBlocks.ts'
import { headedPages } from './headedPages.ts'
import type { JobCardInput } from './jobCardInput.ts'
import { plainMeasure } from './measure.ts'
import { margins, paperSizes, type Measure, type PaperDocument } from './page.ts'
import { stepBlocks } from './stepBlocks.ts'

/** How full the sheet may be, the fullest first: the height that the swing is kept to, mm, and whether what to bring has boxes to tick. */
const fullness = [
  { swing: 92, tools: 'ticked' },
  { swing: 78, tools: 'ticked' },
  { swing: 78, tools: 'told' },
  { swing: 66, tools: 'told' },
] as const

type Choice = { width: number; measure: Measure; tools: (typeof fullness)[number]['tools'] }

/** What the hanging needs, with what to bring before it and where bolts shoot to under the ironmongery. */
function fittingParts(
  input: JobCardInput,
  [opening = [], pieces = [], ...others]: Block[][],
  { width, measure, tools }: Choice,
): Block[][] {
  const list = (tools === 'ticked' ? toolBlocks : toolWords)(input, width, measure)
  return [list, opening, [...pieces, ...boltHoles(input, width, measure)], ...others]
}

/**
 * The fitting sheet, to take to where the gate hangs: what to bring, opening and gaps, ironmongery and what to drill, where bolts shoot to,
 * weight, swing, the order of hanging, and the place to put down how it came out and to sign.
 */
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
  const made = fullness.map(({ swing, tools }) => {
    const parts = fittingParts(input, hangingParts(input, { views, width, swing }, measure), {
      width,
      measure,
      tools,
    })
    const steps = stepBlocks(design.steps, { stage: 'hanging', unit, width }, measure)
    const blocks = [...closelyPacked(parts, [], { first, later }), ...steps, handedOver(input, width)]
    return flow(blocks, first, later)
  })
  const least = Math.min(...made.map((pages) => pages.length))
  const pages = made.find((one) => one.length === least) ?? []
  return headedPages(input, { paper: 'fitting sheet', pages }, measure)
}
