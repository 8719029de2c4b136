import type { ExtraDrawings } from '../drawing/extraDrawings.ts'
import type { Block } from './flow.ts'
import { ironmongeryTable } from './ironmongeryTable.ts'
import type { JobCardInput } from './jobCardInput.ts'
import { movementTable } from './movementTable.ts'
import { openingBlocks } from './openingBlocks.ts'
import type { Measure } from './page.ts'
import { stepBlocks } from './stepBlocks.ts'
import { viewRows } from './viewRow.ts'
import { weightBlocks } from './weightBlocks.ts'

/** What is needed where the gate hangs: opening and gaps, weight, ironmongery, movement, the swing from above, and the order of hanging. */
export function hangingBlocks(
  input: JobCardInput,
  { views, width }: { views: Pick<ExtraDrawings, 'swing' | 'ground'>; width: number },
  measure: Measure,
): Block[] {
  const { design, unit } = input
  const across = views.ground ? 2 : 1
  return [
    ...openingBlocks(input, width, measure),
    ...ironmongeryTable(input, width, measure),
    ...weightBlocks(input, width, measure),
    ...movementTable(input, width, measure),
    ...viewRows([views.swing, views.ground], { width, height: 82, across }),
    ...stepBlocks(design.steps, { stage: 'hanging', unit, width }, measure),
  ]
}
