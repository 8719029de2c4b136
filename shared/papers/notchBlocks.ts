import type { Drawing } from '../drawing/drawing.ts'
import { figureText } from '../drawing/figureText.ts'
import type { Figures } from '../gate/figures.ts'
import type { Brace, HangingLeaf } from '../gate/leaf.ts'
import type { Notch } from '../gate/notch.ts'
import { leafPrefix } from '../gate/leafPrefix.ts'
import { factGrid, type Fact } from './factGrid.ts'
import type { Block } from './flow.ts'
import type { JobCardInput } from './jobCardInput.ts'
import { capital, saidByLeaf } from './leafWords.ts'
import type { Measure } from './page.ts'
import { heading, paragraph } from './table.ts'
import { besideViews } from './viewRow.ts'

const called = (brace: Brace): string => (brace.name === 'single' ? 'brace' : `${brace.name} brace`)

/** End grain left between a notch and the end of its ledge, at foot and head. */
function endGrain(figures: Figures, leaf: HangingLeaf, write: (mm: number) => string): string[] {
  return leaf.braces.flatMap((brace) => {
    const id = `${leafPrefix[leaf.name]}brace.${brace.name}.notch.endGrain`
    const [foot, head] = [figures[`${id}Foot`], figures[`${id}Head`]]
    return foot && head
      ? [`${capital(called(brace))}: ${write(foot.value)} at the foot, ${write(head.value)} at the head.`]
      : []
  })
}

type Marking = { names: string; notch: Notch }

/** Braces whose notches are marked alike are spoken of together. */
function markings(leaf: HangingLeaf, write: (mm: number) => string): Marking[] {
  const alike = new Map<string, Brace[]>()
  for (const brace of leaf.braces) {
    const { notch } = brace
    if (notch === null) continue
    const key = [notch.depth, notch.shoulder, notch.slope].map(write).join(' ')
    alike.set(key, [...(alike.get(key) ?? []), brace])
  }
  return [...alike.values()].flatMap((same) => {
    const notch = same[0]?.notch
    return notch ? [{ names: same.map(called).join(' and '), notch }] : []
  })
}

/** The four figures a notch is marked by. */
const faceFacts = ({ depth, shift, shoulder, slope }: Notch, write: (mm: number) => string): Fact[] => [
  { label: 'depth into the ledge', value: write(depth) },
  { label: 'point, along the ledge', value: write(shift) },
  { label: 'shoulder, square', value: write(shoulder) },
  { label: 'slope', value: write(slope) },
]

/**
 * Marking the notches: depth, shoulder, slope and where the point comes, with the end grain left, beside the enlarged detail. Nothing for
 * braces with flush ends.
 */
export function notchBlocks(
  { design, unit }: Pick<JobCardInput, 'design' | 'unit'>,
  { drawing, width }: { drawing: Drawing | undefined; width: number },
  measure: Measure,
): Block[] {
  const { write } = figureText(unit)
  if (!drawing) return []
  const said = saidByLeaf(design.leaves, (leaf) => ({
    marked: markings(leaf, write),
    left: endGrain(design.figures, leaf, write),
  }))
  const words = (across: number): Block[] =>
    said.flatMap(({ who, value: { marked, left } }) => [
      ...marked.flatMap(({ names, notch }) => [
        paragraph(capital(who === '' ? names : `${who.toLowerCase()}: ${names}`), { width: across, measure }),
        ...factGrid(faceFacts(notch, write), { width: across, across: 2, measure }),
      ]),
      ...left.map((text, i) =>
        paragraph(i === 0 ? `End grain left, notch to ledge end. ${text}` : text, { width: across, measure }),
      ),
    ])
  return besideViews((across) => [heading('Notches'), ...words(across)], {
    views: [{ drawing, width: 84, height: 72 }],
    width,
  })
}
