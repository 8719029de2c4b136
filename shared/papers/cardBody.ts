import { fittingScale, sizeAt } from '../drawing/fitScale.ts'
import type { GateDrawings } from '../drawing/gateDrawings.ts'
import type { Check } from '../gate/checks.ts'
import type { Leaf } from '../gate/leaf.ts'
import type { CardChoice } from './cardChoices.ts'
import { boardCounts, cutTable } from './cutTable.ts'
import { fixingWords } from './fixingWords.ts'
import { sideBySide, stacked, type Block } from './flow.ts'
import { holeTable } from './holeTable.ts'
import type { JobCardInput } from './jobCardInput.ts'
import type { Measure } from './page.ts'
import { ripTable } from './ripTable.ts'
import { sawTable } from './sawTable.ts'
import { cautionBlocks, stepBlocks } from './stepBlocks.ts'
import { heading, paragraph } from './table.ts'

/** What the body is made from: how full it is, and only the cautions that page 1 doesn't carry. */
export type CardBody = CardChoice & {
  input: JobCardInput
  leaf: Leaf
  drawings: GateDrawings
  width: number
  checks: Check[]
}

/** Width of a view beside the lists, and the smallest scale the face is worth drawing at there. */
const [besideWidth, leastFaceScale] = [80, 40]

/** Rip list and holes, with the views that stand beside or under them. */
function listBlocks(body: CardBody, measure: Measure): Block[] {
  const { input, leaf, drawings, width } = body
  const lists = (across: number) => [
    ...ripTable(leaf.boards, { unit: input.unit, width: across, measure }),
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

/** Everything after the first drawing, as blocks in the order it is needed at the bench. */
export function cardBody(body: CardBody, measure: Measure): Block[] {
  const { input, leaf, drawings, width } = body
  const { design, unit } = input
  return [
    ...cutTable(design.cuts, { boards: boardCounts(design.leaves), width }, measure),
    ...listBlocks(body, measure),
    ...sawTable(design.sawSettings, { unit, width, mostGuided: body.mostGuided }, measure),
    heading(`Fixings: ${leaf.fixings.length} in all`),
    ...fixingWords(leaf, unit, body.places).map((words) => paragraph(words, { width, measure })),
    ...(body.section === 'own' ? [viewBlock(drawings, 'section', { width, height: 76 })] : []),
    ...cautionBlocks(body.checks, width, measure),
    ...stepBlocks(design.steps, { stage: 'making', unit, width }, measure),
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
