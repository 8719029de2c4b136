import { figureText } from '../drawing/figureText.ts'
import type { Design } from '../gate/designModel.ts'
import type { GateSpec } from '../gate/spec.ts'
import { factGrid, keptTogether, type Fact } from './factGrid.ts'
import type { Block } from './flow.ts'
import type { JobCardInput } from './jobCardInput.ts'
import type { Measure } from './page.ts'
import { heading } from './table.ts'

type Opening = Extract<GateSpec['size'], { from: 'opening' }>

/** The gaps that were allowed for, as they are set when the gate is hung. */
function gapFacts(spec: GateSpec, size: Opening, write: (mm: number) => string): Fact[] {
  return [
    { label: 'hanging gap', value: write(size.hangingGap) },
    spec.leaves === 2
      ? { label: 'gap where they meet', value: write(size.meetingGap ?? 0) }
      : { label: 'closing gap', value: write(size.closingGap) },
    { label: 'gap over the ground', value: write(size.groundGap) },
    ...(size.headGap === undefined ? [] : [{ label: 'gap under the head', value: write(size.headGap) }]),
  ]
}

/** What the survey's own sums came to. */
function surveyFacts({ figures }: Design, write: (mm: number) => string): Fact[] {
  const named = [
    ['opening.taper', 'widths differ by'],
    ['opening.widestGap', 'widest gap'],
    ['opening.fall', 'heights differ by'],
    ['opening.headRoom.hanging', 'over it, hanging post'],
    ['opening.headRoom.closing', 'over it, closing post'],
    ['opening.outOfSquare', 'diagonals differ by'],
    ['opening.outOfPlumb', 'posts out of plumb by'],
  ] as const
  return named.flatMap(([id, label]) => {
    const found = figures[id]
    return found ? [{ label, value: write(found.value) }] : []
  })
}

/** The opening as it was measured, what its sizes differ by, and the gaps that were left. Nothing where the leaf's own size was given. */
export function openingBlocks(
  { spec, design, unit }: Pick<JobCardInput, 'spec' | 'design' | 'unit'>,
  width: number,
  measure: Measure,
): Block[] {
  const { size } = spec
  if (size.from !== 'opening') return []
  const { write } = figureText(unit)
  const facts: Fact[] = [
    { label: 'widths measured', value: size.widths.map(write).join(', ') },
    { label: 'heights, hanging, closing', value: size.heights.map(write).join(', ') },
    ...gapFacts(spec, size, write),
    ...surveyFacts(design, write),
  ]
  return keptTogether([
    heading('The opening, as measured'),
    ...factGrid(facts, { width, across: 4, measure }),
  ])
}
