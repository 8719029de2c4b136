import type { Drawing } from '../drawing/drawing.ts'
import { figureText, type FigureText } from '../drawing/figureText.ts'
import type { Design } from '../gate/designModel.ts'
import type { HangingLeaf } from '../gate/leaf.ts'
import { leafPrefix } from '../gate/leafPrefix.ts'
import type { GateSpec } from '../gate/spec.ts'
import { factGrid, keptTogether, type Fact } from './factGrid.ts'
import type { Block } from './flow.ts'
import type { JobCardInput } from './jobCardInput.ts'
import { saidByLeaf, titled } from './leafWords.ts'
import type { Measure } from './page.ts'
import { heading, table, type Cell } from './table.ts'
import { viewRows } from './viewRow.ts'

/** The heights of a leaf's top, from its hanging edge on: [distance, height], mm. */
function heightsOf({ figures }: Design, leaf: HangingLeaf): [number, number][] {
  const start = `${leafPrefix[leaf.name]}top.height.`
  return Object.keys(figures)
    .filter((id) => id.startsWith(start))
    .map((id): [number, number] => [figures[id]?.inputs['x'] ?? 0, figures[id]?.value ?? 0])
    .sort(([one], [other]) => one - other)
}

function topFacts(spec: GateSpec, design: Design, { write, other }: FigureText): Fact[] {
  const { top } = spec
  const both = (mm: number): string => `${write(mm)} (${other(mm)})`
  if (top.shape === 'level') return []
  const radius = Object.entries(design.figures).find(([id]) => id.endsWith('top.radius'))?.[1]
  const rise = { label: top.shape === 'dipped' ? 'dip in the middle' : 'rise', value: both(top.rise) }
  if (top.shape === 'raked') return [rise, { label: 'high side', value: `${top.high} edge` }]
  return [
    ...(radius ? [{ label: 'radius of the curve', value: both(radius.value) }] : []),
    rise,
    ...(radius ? [{ label: 'over a span of', value: both(radius.inputs['span'] ?? 0) }] : []),
  ]
}

/** Distances and heights in columns down the page, side by side. */
function heightsTable(
  heights: [number, number][],
  { figures, width, measure }: { figures: FigureText; width: number; measure: Measure },
): Block[] {
  const across = figures.unit === 'mm' ? 5 : 4
  const deep = Math.ceil(heights.length / across)
  const sets = Math.ceil(heights.length / deep)
  const each = width / across
  const columns = Array.from({ length: sets }, () => [
    { title: 'At', width: each * 0.42, align: 'end' as const },
    { title: 'Height', width: each * 0.58, align: 'end' as const, size: 14, weight: 'semibold' as const },
  ]).flat()
  const rows = Array.from({ length: deep }, (_, i) =>
    Array.from({ length: sets }, (_, set): Cell[] => {
      const found = heights[set * deep + i]
      return found ? [figures.write(found[0]), figures.write(found[1])] : ['', '']
    }).flat(),
  )
  return table({ columns, rows }, measure)
}

/** Setting out a shaped top: radius and rise, the height every 50 mm from the hanging edge, and the drawing of it, each in a part. Nothing for a level one. */
export function topBlocks(
  { spec, design, unit }: Pick<JobCardInput, 'spec' | 'design' | 'unit'>,
  { drawing, width }: { drawing: Drawing | undefined; width: number },
  measure: Measure,
): Block[][] {
  const figures = figureText(unit)
  const facts = topFacts(spec, design, figures)
  if (facts.length === 0) return []
  const shaped = design.leaves.filter((leaf) => heightsOf(design, leaf).length > 0)
  const tables = saidByLeaf(shaped, (leaf) => heightsOf(design, leaf)).map(({ who, leaf }, i) =>
    keptTogether([
      heading(titled(i === 0 ? 'Setting out the top' : 'The same', who)),
      ...(i === 0 ? factGrid(facts, { width, across: 3, measure }) : []),
      ...heightsTable(heightsOf(design, leaf), { figures, width, measure }),
    ]),
  )
  return [...tables, viewRows([{ drawing, width, height: 84 }], width)]
}
