import { extraDrawings } from '../drawing/extraDrawings.ts'
import type { GateDrawings } from '../drawing/gateDrawings.ts'
import type { Check } from '../gate/checks.ts'
import { boardCounts, cutTable } from './cutTable.ts'
import type { FixingPlaces } from './fixingWords.ts'
import { fixingWords } from './fixingWords.ts'
import type { Block } from './flow.ts'
import { frameBlocks } from './frameBlocks.ts'
import { hangingBlocks } from './hangingBlocks.ts'
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
import { viewRows } from './viewRow.ts'

/** What the whole gate's card is made from below its first drawing; checks are those that page 1 doesn't carry. placed: views that page 1 shows. */
export type WholeBody = {
  input: JobCardInput
  drawings: GateDrawings
  placed: readonly (keyof GateDrawings)[]
  checks: Check[]
  width: number
  places: FixingPlaces
}

const ripBlocks = ({ input: { design, unit }, width }: WholeBody, measure: Measure): Block[] =>
  saidByLeaf(design.leaves, ({ boards }) => boards).flatMap(({ who, value }) =>
    ripTable(value, { unit, width, measure, title: titled('Boards, from the hanging edge', who) }),
  )

function fixingBlocks({ input: { design, unit }, width, places }: WholeBody, measure: Measure): Block[] {
  const { leaves } = design
  const all = leaves.reduce((sum, { fixings }) => sum + fixings.length, 0)
  const said = saidByLeaf(leaves, (leaf) => fixingWords(leaf, unit, places)).flatMap(
    ({ who, leaf, value }) => {
      const of = who === '' ? [] : [`${who}, ${leaf.fixings.length}${who.startsWith('Both') ? ' each' : ''}.`]
      return [...of, ...value].map((words) => paragraph(words, { width, measure }))
    },
  )
  return [heading(`Fixings: ${all} in all`), ...said]
}

/** Everything after page 1's drawing, in the order it is needed: what to cut, how parts are worked, the making, then the hanging. */
export function wholeBody(body: WholeBody, measure: Measure): Block[] {
  const { input, drawings, placed, width } = body
  const { spec, design, unit } = input
  const extra = extraDrawings(spec, design, unit)
  const views = (names: (keyof GateDrawings)[]) =>
    names.map((name) => (placed.includes(name) ? undefined : drawings[name]))
  return [
    ...cautionBlocks(body.checks, width, measure),
    ...cutTable(design.cuts, { boards: boardCounts(design.leaves), width }, measure),
    ...ripBlocks(body, measure),
    ...viewRows([...views(['face']), extra.exploded], { width, height: 96, across: 2 }),
    ...topBlocks(input, { drawing: extra.settingOut, width }, measure),
    ...frameBlocks(input, width, measure),
    ...notchBlocks(input, { drawing: extra.notch, width }, measure),
    ...viewRows([...views(['section']), extra.frameSection, extra.meeting], { width, height: 70, across: 2 }),
    ...holeTable(design.holes, width, measure),
    ...sawTable(design.sawSettings, { unit, width, mostGuided: 3 }, measure),
    ...fixingBlocks(body, measure),
    ...stepBlocks(design.steps, { stage: 'making', unit, width }, measure),
    ...hangingBlocks(input, { views: extra, width }, measure),
  ]
}
