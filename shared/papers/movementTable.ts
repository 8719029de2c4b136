import { figureText } from '../drawing/figureText.ts'
import type { InAir } from '../gate/movement.ts'
import type { Block } from './flow.ts'
import type { JobCardInput } from './jobCardInput.ts'
import type { Measure } from './page.ts'
import { heading, paragraph, table, type Cell } from './table.ts'

const tenth = (mm: number): string => (Math.round(mm * 10) / 10 + 0).toFixed(1).replace('-', '−')

/** How the boarding moves with the air: moisture, width of the leaf, gap at a joint and tongue in its groove. Nothing without a climate. mm. */
export function movementTable(
  { design, unit }: Pick<JobCardInput, 'design' | 'unit'>,
  width: number,
  measure: Measure,
): Block[] {
  const { movement } = design
  if (!movement) return []
  const { write } = figureText(unit)
  const end = { align: 'end' as const, weight: 'semibold' as const }
  const share = width / 100
  const columns = [
    { title: 'Air', width: (unit === 'mm' ? 25 : 20) * share },
    { title: 'Timber, %', width: 19 * share, align: 'end' as const },
    { title: 'Leaf wide', width: (unit === 'mm' ? 17 : 22) * share, ...end },
    { title: 'Joint gap, mm', width: 19 * share, ...end },
    { title: 'Tongue, mm', width: 20 * share, align: 'end' as const },
  ]
  const airs: [string, InAir][] = [
    ['shop', movement.shop],
    ['driest', movement.driest],
    ['wettest', movement.wettest],
  ]
  const rows = airs.map(([name, air]): Cell[] => [
    name,
    tenth(air.moisture),
    write(air.leafWidth),
    tenth(air.jointGap),
    air.tongueReach === null ? '–' : tenth(air.tongueReach),
  ])
  return [
    heading('Through the year'),
    ...table({ columns, rows, followed: true }, measure),
    paragraph(`Leave ${tenth(movement.gap)} mm at every joint when the boards go on.`, { width, measure }),
  ]
}
