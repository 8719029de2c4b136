import { fittingScale, sizeAt } from '../drawing/fitScale.ts'
import { gateDrawings, type GateDrawings } from '../drawing/gateDrawings.ts'
import type { Check } from '../gate/checks.ts'
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
import { sideBySide, flow, stacked, type Block } from './flow.ts'
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
  const first = cardFirstPage(
    { drawings, figures: cardFigures(spec, leaf, unit), checks: design.checks, format, top },
    measure,
  )
  const sheet = paperSizes[format]
  const frame = { x: margins.left, top, bottom: sheet.height - margins.bottom }
  const width = sheet.width - margins.left - margins.right
  const shown = (view: 'face' | 'section', wanted: Shown): Shown =>
    first.placed.includes(view) ? 'left out' : wanted
  const body = firstShortEnough(
    choices.map((choice) => () => {
      const views = { face: shown('face', choice.face), section: shown('section', choice.section) }
      const checks = first.cautioned ? [] : design.checks
      return flow(
        bodyBlocks({ ...choice, ...views, input, leaf, drawings, width, checks }, measure),
        first.free,
        frame,
      )
    }),
  )
  const pages = body.map((marks, i) => (i === 0 ? [...first.marks, ...marks] : marks))
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

/** How the views that page 1 has no room for are shown: 'beside' the lists, across the page on its 'own', or not at all. */
type Shown = 'beside' | 'own' | 'left out'
type Choice = { face: Shown; section: Shown; faceHeight: number; briefly: boolean }

/** How full a card may be, the fullest first. The section tells the maker more than the face, whose boards are listed as well. */
const choices: Choice[] = [
  { face: 'beside', section: 'own', faceHeight: 136, briefly: false },
  { face: 'beside', section: 'beside', faceHeight: 136, briefly: false },
  { face: 'beside', section: 'beside', faceHeight: 120, briefly: false },
  { face: 'beside', section: 'beside', faceHeight: 120, briefly: true },
  { face: 'left out', section: 'own', faceHeight: 0, briefly: false },
  { face: 'left out', section: 'beside', faceHeight: 0, briefly: false },
  { face: 'left out', section: 'beside', faceHeight: 0, briefly: true },
  { face: 'left out', section: 'left out', faceHeight: 0, briefly: false },
  { face: 'left out', section: 'left out', faceHeight: 0, briefly: true },
]

/** The fullest body that keeps the card within its pages; the shortest when none does. */
function firstShortEnough(bodies: (() => PageMark[][])[]): PageMark[][] {
  let last: PageMark[][] = []
  for (const make of bodies) {
    last = make()
    if (last.length <= mostPages) return last
  }
  return last
}

type Body = Choice & {
  input: JobCardInput
  leaf: Leaf
  drawings: GateDrawings
  width: number
  checks: Check[]
}

/** Width of a view beside the lists, and the smallest scale the face is worth drawing at there. */
const [besideWidth, leastFaceScale] = [80, 40]

/** Rip list and holes, with the views that stand beside or under them. */
function listBlocks(body: Body, measure: Measure): Block[] {
  const { input, leaf, drawings, width } = body
  const lists = (across: number) => [
    ...ripTable(leaf.boards, input.unit, measure, across),
    ...holeTable(input.design.holes, across, measure),
  ]
  const left = width - besideWidth - 3
  const face = { width: besideWidth, height: body.faceHeight }
  const withFace = body.face === 'beside' && fittingScale(drawings.face, face) <= leastFaceScale
  if (withFace) {
    const section =
      body.section === 'beside' ? [viewBlock(drawings, 'section', { width: left, height: 58 })] : []
    return [sideBySide(stacked([...lists(left), ...section]), viewBlock(drawings, 'face', face), left + 3)]
  }
  const own = body.face === 'beside' ? [viewBlock(drawings, 'face', { width, height: 110 })] : []
  if (body.section !== 'beside') return [...lists(width), ...own]
  const section = viewBlock(drawings, 'section', { width: besideWidth, height: 75 })
  return [sideBySide(stacked(lists(left)), section, left + 3), ...own]
}

function bodyBlocks(body: Body, measure: Measure): Block[] {
  const { input, leaf, drawings, width } = body
  const { design, unit } = input
  return [
    ...cutTable(design.cuts, width, measure),
    ...listBlocks(body, measure),
    ...sawTable(design.sawSettings, unit, width, measure),
    heading(`Fixings: ${leaf.fixings.length} in all`),
    ...fixingWords(leaf, unit, body.briefly).map((words) => paragraph(words, width, measure)),
    ...(body.section === 'own' ? [viewBlock(drawings, 'section', { width, height: 76 })] : []),
    ...cautionBlocks(body.checks, width, measure),
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
