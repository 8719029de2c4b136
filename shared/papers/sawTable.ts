import type { SawSetting } from '../cutting/sawSetting.ts'
import { figureText } from '../drawing/figureText.ts'
import type { LengthUnit } from '../job/job.ts'
import type { Block } from './flow.ts'
import type { Measure } from './page.ts'
import { heading, paragraph, table, type Cell } from './table.ts'

const sameCut = (setting: SawSetting): string => `${setting.cut}|${setting.part}|${setting.angle}`

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

/** The blade's depth for a cut; two figures where the saws' teeth differ. */
function depths(same: SawSetting[], write: (mm: number) => string): string {
  const all = same.map((setting) => setting.depth)
  const [least, most] = [write(Math.min(...all)), write(Math.max(...all))]
  return least === most ? least : `${least}–${most}`
}

function sawRow(same: SawSetting[], write: (mm: number) => string, guided: string[]): Cell[] {
  const [first] = same
  if (!first) return []
  const fence = same.find((setting) => setting.fence !== null)?.fence ?? null
  const lean = first.angle !== 0 && first.lean === 'bevel' ? 'tilt ' : ''
  const listed = same.filter((setting) => guided.includes(setting.saw))
  return [
    first.part === 'boards' ? first.cut : `${first.cut}: ${first.part}`,
    `${lean}${writeAngle(first.angle)}`,
    depths(same, write),
    fence === null ? '–' : write(fence),
    guides(listed, write, guided.length > 1) || '–',
  ]
}

/** What the guide lines are for, and how the depth comes about. */
function sawNote(guided: string[], more: number): string {
  const depth = 'Depth: the timber and one tooth.'
  if (guided.length === 0) return depth
  const others =
    more > 0
      ? ` Lines for ${more} more guided ${more === 1 ? 'saw stands' : 'saws stand'} in the program.`
      : ''
  const saws = guided.length === 1 ? `${guided[0]}, ` : ''
  return `Guide lines: ${saws}from the end or edge cut away. ${depth}${others}`
}

/**
 * Saw settings: blade off square, its depth, the fence, and the line to lay a guide on for each side of the saw's base. Guide lines are
 * given for mostGuided saws.
 */
export function sawTable(
  settings: SawSetting[],
  { unit, width, mostGuided }: { unit: LengthUnit; width: number; mostGuided: number },
  measure: Measure,
): Block[] {
  if (settings.length === 0) return []
  const { write } = figureText(unit)
  const all = [
    ...new Set(settings.filter((setting) => setting.guideLines.length > 0).map((setting) => setting.saw)),
  ]
  const guided = all.slice(0, mostGuided)
  const columns = [
    { title: 'Cut', width: guided.length > 1 ? 62 : 80 },
    { title: 'Off square', width: 24, align: 'end' as const, size: 14, weight: 'semibold' as const },
    { title: 'Depth', width: 20, align: 'end' as const },
    { title: 'Fence', width: 20, align: 'end' as const, size: 14, weight: 'semibold' as const },
    { title: 'Guide line', width: width - (guided.length > 1 ? 126 : 144) },
  ]
  const rows = cutsOf(settings).map((same) => sawRow(same, write, guided))
  const note = paragraph(sawNote(guided, all.length - guided.length), { width, measure })
  return [heading('Saw settings'), ...table({ columns, rows, followed: true }, measure), note]
}
