import type { SawSetting } from '../cutting/sawSetting.ts'
import { figureText } from '../drawing/figureText.ts'
import type { LengthUnit } from '../job/job.ts'
import type { Block } from './flow.ts'
import type { Measure } from './page.ts'
import { heading, paragraph, table, type Cell } from './table.ts'

const sameCut = (setting: SawSetting): string =>
  `${setting.cut}|${setting.part}|${setting.angle}|${setting.depth}`

/** 28.8°, and 15° without a nought after it. */
const writeAngle = (angle: number): string => `${Number(angle.toFixed(1))}°`

/** One line a cut, whatever saws can make it: the fence for a saw that has one, guide lines for each that is guided. */
function cutsOf(settings: SawSetting[]): SawSetting[][] {
  const byCut = new Map<string, SawSetting[]>()
  for (const setting of settings)
    byCut.set(sameCut(setting), [...(byCut.get(sameCut(setting)) ?? []), setting])
  return [...byCut.values()]
}

function guides(same: SawSetting[], write: (mm: number) => string, several: boolean): string {
  return same
    .filter((setting) => setting.guideLines.length > 0)
    .map((setting) => {
      const lines = setting.guideLines.map((line) => `${write(line.at)} ${line.side}`).join(', ')
      return several ? `${setting.saw}: ${lines}` : lines
    })
    .join('; ')
}

/** Saw settings: blade off square, its depth, the fence, and the line to lay a guide on for each side of the saw's base. */
export function sawTable(settings: SawSetting[], unit: LengthUnit, width: number, measure: Measure): Block[] {
  if (settings.length === 0) return []
  const { write } = figureText(unit)
  const guided = [
    ...new Set(settings.filter((setting) => setting.guideLines.length > 0).map((setting) => setting.saw)),
  ]
  const columns = [
    { title: 'Cut', width: 82 },
    { title: 'Off square', width: 22, align: 'end' as const, size: 13, weight: 'semibold' as const },
    { title: 'Depth', width: 18, align: 'end' as const },
    { title: 'Fence', width: 20, align: 'end' as const, size: 13, weight: 'semibold' as const },
    { title: 'Guide line', width: width - 142 },
  ]
  const rows = cutsOf(settings).map((same): Cell[] => {
    const [first] = same
    if (!first) return []
    const fence = same.find((setting) => setting.fence !== null)?.fence ?? null
    const lean = first.angle === 0 ? '' : first.lean === 'bevel' ? 'tilt ' : ''
    return [
      first.part === 'boards' ? first.cut : `${first.cut}: ${first.part}`,
      `${lean}${writeAngle(first.angle)}`,
      write(first.depth),
      fence === null ? '–' : write(fence),
      guides(same, write, guided.length > 1) || '–',
    ]
  })
  const note =
    guided.length === 1
      ? [
          paragraph(
            `Guide lines: ${guided[0]}, from the end or edge cut away. Depth: the timber and one tooth.`,
            width,
            measure,
          ),
        ]
      : []
  return [heading('Saw settings'), ...table(columns, rows, measure, note.length > 0), ...note]
}
