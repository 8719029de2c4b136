import { extraDrawings, type ExtraDrawings } from '../drawing/extraDrawings.ts'
import type { Drawing } from '../drawing/drawing.ts'
import type { GateDrawings } from '../drawing/gateDrawings.ts'
import type { Check } from '../gate/checks.ts'
import { boardCounts, cutTable } from './cutTable.ts'
import type { FixingPlaces } from './fixingWords.ts'
import { fixingWords } from './fixingWords.ts'
import { closelyPacked, type Block, type Frame } from './flow.ts'
import { frameBlocks } from './frameBlocks.ts'
import { hangingParts } from './hangingBlocks.ts'
import { holeTable } from './holeTable.ts'
import type { JobCardInput } from './jobCardInput.ts'
import { saidByLeaf, titled } from './leafWords.ts'
import { notchBlocks } from './notchBlocks.ts'
import type { Measure } from './page.ts'
import { ripTable } from './ripTable.ts'
import { sawTable } from './sawTable.ts'
import { cautionBlocks, stepBlocks } from './stepBlocks.ts'
import { heading, paragraph } from './table.ts'
import { topBlocks } from './topBlocks.ts'
import { besideViews, standsBeside, viewRows, type RowView } from './viewRow.ts'

/** What the whole gate's card is made from below its first drawing; checks are those that page 1 doesn't carry. placed: views that page 1 shows; settingOut and face: whether a shaped top is drawn besides its table, and the face besides its list of boards; swing is the height that the swing is kept to, mm. */
export type WholeBody = {
  input: JobCardInput
  drawings: GateDrawings
  placed: readonly (keyof GateDrawings)[]
  checks: Check[]
  width: number
  places: FixingPlaces
  settingOut: boolean
  face: boolean
  swing: number
  frames: { first: Frame; later: Frame }
}

const ripBlocks = ({ input: { design, unit } }: WholeBody, width: number, measure: Measure): Block[] =>
  saidByLeaf(design.leaves, ({ boards }) => boards).flatMap(({ who, value }) =>
    ripTable(value, { unit, width, measure, title: titled('Boards, from the hanging edge', who) }),
  )

function fixingBlocks({ input, places }: WholeBody, width: number, measure: Measure): Block[] {
  const { leaves } = input.design
  const all = leaves.reduce((sum, { fixings }) => sum + fixings.length, 0)
  const said = saidByLeaf(leaves, (leaf) => fixingWords(leaf, input.unit, places)).flatMap(
    ({ who, leaf, value }) => {
      const of = who === '' ? [] : [`${who}, ${leaf.fixings.length}${who.startsWith('Both') ? ' each' : ''}.`]
      return [...of, ...value].map((words) => paragraph(words, { width, measure }))
    },
  )
  return [heading(`Fixings: ${all} in all`), ...said]
}

/** How the parts are worked that not every gate has: a shaped top, a frame, notches, the edges of a pair; with the face and sections. */
function workedParts(body: WholeBody, extra: ExtraDrawings, measure: Measure): Block[][] {
  const { input, drawings, placed, width } = body
  const view = (name: 'face' | 'section') => (placed.includes(name) ? undefined : drawings[name])
  const views: RowView[] = [
    { drawing: body.face ? view('face') : undefined, width: input.spec.leaves === 2 ? 106 : 74, height: 100 },
    { drawing: view('section'), width: input.spec.leaves === 2 && input.spec.frame ? 80 : 90, height: 70 },
    { drawing: extra.meeting, width: 110, height: 76 },
  ]
  return [
    ...topBlocks(input, { drawing: body.settingOut ? extra.settingOut : undefined, width }, measure),
    besideViews((across) => frameBlocks(input, across, measure), {
      views: [{ drawing: extra.frameSection, width: 62, height: 80 }],
      width,
    }),
    notchBlocks(input, { drawing: extra.notch, width }, measure),
    ...viewRows(views, width).map((row) => [row]),
  ]
}

/** Boards, holes and fixings beside the layers taken apart; with many boards their list takes the sheet's width. */
function listParts(body: WholeBody, exploded: Drawing | undefined, measure: Measure): Block[][] {
  const { input, width } = body
  const beside = { views: [{ drawing: exploded, width: 76, height: 100 }], width }
  const holes = (across: number): Block[] => [
    ...holeTable(input.design.holes, across, measure),
    ...fixingBlocks(body, across, measure),
  ]
  const all = (across: number): Block[] => [...ripBlocks(body, across, measure), ...holes(across)]
  if (standsBeside(all, beside)) return [besideViews(all, beside)]
  return [ripBlocks(body, width, measure), besideViews(holes, beside)]
}

/** Everything after page 1's drawing, in the order it is needed: what to cut, how parts are worked, the making, then the hanging. */
export function wholeBody(body: WholeBody, measure: Measure): Block[] {
  const { input, width } = body
  const { spec, design, unit } = input
  const extra = extraDrawings(spec, design, unit)
  const parts = [
    cutTable(design.cuts, { boards: boardCounts(design.leaves), width }, measure),
    ...listParts(body, extra.exploded, measure),
    ...workedParts(body, extra, measure),
    sawTable(design.sawSettings, { unit, width, mostGuided: 3 }, measure),
  ]
  const cautions = cautionBlocks(body.checks, width, measure)
  const making = [
    ...cautions,
    ...closelyPacked(parts, cautions, body.frames),
    ...stepBlocks(design.steps, { stage: 'making', unit, width }, measure),
  ]
  const hanging = hangingParts(input, { views: extra, width, swing: body.swing }, measure)
  return [
    ...making,
    ...closelyPacked(hanging, making, body.frames),
    ...stepBlocks(design.steps, { stage: 'hanging', unit, width }, measure),
  ]
}
