import { fittingScale, sizeAt } from '../drawing/fitScale.ts'
import { gateDrawings, type GateDrawings } from '../drawing/gateDrawings.ts'
import type { Design } from '../gate/designModel.ts'
import type { Leaf } from '../gate/leaf.ts'
import type { GateSpec } from '../gate/spec.ts'
import type { PaperHeader } from '../job/issuedPaper.ts'
import type { LengthUnit } from '../job/job.ts'
import { cardFigures } from './cardFigures.ts'
import { cardFirstPage } from './cardFirstPage.ts'
import { cardHeader, draftMark, headerHeight } from './cardHeader.ts'
import { cutTable } from './cutTable.ts'
import { fixingWords } from './fixingWords.ts'
import { beside, flow, stacked, type Block } from './flow.ts'
import { holeTable } from './holeTable.ts'
import { plainMeasure } from './measure.ts'
import {
  margins,
  paperSizes,
  type Measure,
  type PageMark,
  type PaperDocument,
  type PaperFormat,
} from './page.ts'
import { ripTable } from './ripTable.ts'
import { sawTable } from './sawTable.ts'
import { cautionBlocks, stepBlocks } from './stepBlocks.ts'
import { heading, paragraph } from './table.ts'

/** All a job card is made from. A draft says on every page that it isn't issued. */
export type JobCardInput = {
  header: PaperHeader
  spec: GateSpec
  design: Design
  unit: LengthUnit
  format: PaperFormat
  draft: boolean
}

/** Most pages a card may have: past that it no longer lies on one bench. */
const mostPages = 3

/**
 * The job card as pages in mm: the back elevation and the figures that matter on page 1; then cut list, rip list, holes, fixings,
 * saw settings, cautions and the order of making. measure reads the faces it will be painted with; without it plain Latin is right.
 * Where it would run past three pages the face and the section, which repeat what is given in figures, are set smaller or left out.
 */
export function jobCard(input: JobCardInput, measure: Measure = plainMeasure): PaperDocument {
  const { spec, design, unit, format, header } = input
  const leaf = design.leaves[0]
  if (!leaf) throw new RangeError('a design without a leaf has no card')
  const drawings = gateDrawings(spec, design, unit)
  const top = margins.top + headerHeight
  const first = cardFirstPage({ drawings, figures: cardFigures(spec, leaf, unit), format, top }, measure)
  const sheet = paperSizes[format]
  const frame = { x: margins.left, top, bottom: sheet.height - margins.bottom }
  const widths = sheet.width - margins.left - margins.right
  const wanted = (['face', 'section'] as const).filter((view) => !first.placed.includes(view))
  const choices = [wanted, wanted.filter((view) => view !== 'section'), []]
  const bodies = choices.map(
    (views) => () =>
      flow(bodyBlocks({ input, leaf, drawings, width: widths, views: [...views] }, measure), frame),
  )
  const body = firstShortEnough(bodies)
  const pages = [first.marks, ...body]
  return {
    title: header.number === '' ? header.title : `${header.number} job card`,
    issuedAt: header.issuedAt,
    pages: pages.map((marks, i) => ({
      width: sheet.width,
      height: sheet.height,
      marks: [
        ...(input.draft ? [draftMark(format)] : []),
        ...cardHeader({ header, draft: input.draft, format, page: i + 1, pages: pages.length }, measure),
        ...marks,
      ],
    })),
  }
}

/** The fullest body that keeps the card within its pages; the shortest when none does. */
function firstShortEnough(bodies: (() => PageMark[][])[]): PageMark[][] {
  let last: PageMark[][] = []
  for (const make of bodies) {
    last = make()
    if (last.length < mostPages) return last
  }
  return last
}

type Body = {
  input: JobCardInput
  leaf: Leaf
  drawings: GateDrawings
  width: number
  views: ('face' | 'section')[]
}

/** Room for the face beside the rip list, mm. */
const faceBox = { width: 80, height: 124 }

function bodyBlocks(body: Body, measure: Measure): Block[] {
  const { input, leaf, drawings, width, views } = body
  const { design, unit } = input
  const withFace = views.includes('face')
  const left = withFace ? width - faceBox.width - 3 : width
  const lists = [
    ...ripTable(leaf.boards, unit, measure, left),
    ...holeTable(design.holes, left, measure),
    ...(views.includes('section') ? [viewBlock(drawings, 'section', { width: left, height: 75 })] : []),
  ]
  return [
    ...cutTable(design.cuts, width, measure),
    ...(withFace ? [beside(stacked(lists), viewBlock(drawings, 'face', faceBox), left + 3)] : lists),
    ...sawTable(design.sawSettings, unit, width, measure),
    heading(`Fixings: ${leaf.fixings.length} in all`),
    ...fixingWords(leaf, unit).map((words) => paragraph(words, width, measure)),
    ...cautionBlocks(design.checks, width, measure),
    ...stepBlocks(design.steps, width, measure),
  ]
}

function viewBlock(
  drawings: GateDrawings,
  view: 'face' | 'section',
  box: { width: number; height: number },
): Block {
  const drawing = drawings[view]
  const scale = fittingScale(drawing, box)
  const { height } = sizeAt(drawing, scale)
  return {
    height,
    above: 6,
    marks: (x, y) => [{ kind: 'drawing', x, y, width: box.width, height, scale, drawing }],
  }
}
