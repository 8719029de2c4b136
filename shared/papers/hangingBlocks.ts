import type { Drawing } from '../drawing/drawing.ts'
import { fittingScale } from '../drawing/fitScale.ts'
import type { ExtraDrawings } from '../drawing/extraDrawings.ts'
import type { Block } from './flow.ts'
import { ironmongeryTable } from './ironmongeryTable.ts'
import type { JobCardInput } from './jobCardInput.ts'
import { movementTable } from './movementTable.ts'
import { openingBlocks } from './openingBlocks.ts'
import type { Measure } from './page.ts'
import { besideViews, coarsest, viewRows } from './viewRow.ts'
import { weightBlocks } from './weightBlocks.ts'

/** The box of paper for the swing: as low as asked, unless that would leave it too small to read. mm. */
function swingBox(drawing: Drawing | undefined, height: number): { width: number; height: number } {
  const [width, most] = [92, 92]
  const low = { width, height }
  return drawing && fittingScale(drawing, low) <= coarsest ? low : { width, height: most }
}

/** What is needed where the gate hangs, in parts: opening and gaps, ironmongery, then weight and movement beside the swing from above. Over sloping ground the swing has the ground beside it. */
export function hangingParts(
  input: JobCardInput,
  {
    views,
    width,
    swing = 92,
  }: { views: Pick<ExtraDrawings, 'swing' | 'ground'>; width: number; swing?: number },
  measure: Measure,
): Block[][] {
  const swinging = { drawing: views.swing, ...swingBox(views.swing, swing) }
  const ground = { drawing: views.ground, width: 92, height: 66, headroom: 9 }
  const lists = (across: number): Block[] => [
    ...weightBlocks(input, across, measure),
    ...movementTable(input, across, measure),
  ]
  return [
    openingBlocks(input, width, measure),
    ironmongeryTable(input, width, measure),
    ...(views.ground
      ? [lists(width), viewRows([swinging, ground], width)]
      : [besideViews(lists, { views: [swinging], width })]),
  ]
}
