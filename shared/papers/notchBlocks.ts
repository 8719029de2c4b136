import type { Drawing } from '../drawing/drawing.ts'
import { figureText } from '../drawing/figureText.ts'
import type { Figures } from '../gate/figures.ts'
import type { Brace, HangingLeaf } from '../gate/leaf.ts'
import { leafPrefix } from '../gate/leafPrefix.ts'
import { factGrid } from './factGrid.ts'
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

type Marking = { names: string; brace: Brace }

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
    const [brace] = same
    return brace ? [{ names: same.map(called).join(' and '), brace }] : []
  })
}

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
  const said = saidByLeaf(design.leaves, (leaf) => [
    markings(leaf, write),
    endGrain(design.figures, leaf, write),
  ])
  const words = (left: number): Block[] =>
    said.flatMap(({ who, leaf }) => [
      ...markings(leaf, write).flatMap(({ names, brace: { notch } }) =>
        notch === null
          ? []
          : [
              paragraph(capital(who === '' ? names : `${who.toLowerCase()}: ${names}`), {
                width: left,
                measure,
              }),
              ...factGrid(
                [
                  { label: 'depth into the ledge', value: write(notch.depth) },
                  { label: 'point, along the ledge', value: write(notch.shift) },
                  { label: 'shoulder, square', value: write(notch.shoulder) },
                  { label: 'slope', value: write(notch.slope) },
                ],
                { width: left, across: 2, measure },
              ),
            ],
      ),
      ...endGrain(design.figures, leaf, write).map((text, i) =>
        paragraph(i === 0 ? `End grain left, notch to ledge end. ${text}` : text, { width: left, measure }),
      ),
    ])
  return besideViews((left) => [heading('Notches'), ...words(left)], {
    views: [{ drawing, width: 84, height: 72 }],
    width,
  })
}
