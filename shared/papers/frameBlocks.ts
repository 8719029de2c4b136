import { figureText } from '../drawing/figureText.ts'
import type { GateSpec } from '../gate/spec.ts'
import type { HangingLeaf, Ledge } from '../gate/leaf.ts'
import { factGrid, keptTogether, type Fact } from './factGrid.ts'
import type { Block } from './flow.ts'
import type { JobCardInput } from './jobCardInput.ts'
import { capital, saidByLeaf, titled } from './leafWords.ts'
import type { Measure } from './page.ts'
import { heading, table, type Cell, type Table } from './table.ts'

/** A framed gate's own figures: what every joint of it is cut to. */
function frameFacts(spec: GateSpec, leaf: HangingLeaf, write: (mm: number) => string): Fact[] {
  const { frame } = spec
  const rail = leaf.frame.find(({ name }) => name === 'top rail')
  if (!frame || !rail) return []
  const depth = `${write(frame.stile.thickness)} = ${write(spec.ledges.section.thickness)} + ${write(spec.boards.section.thickness)}`
  return [
    { label: 'shoulders apart', value: write(rail.shoulder) },
    { label: 'tenon', value: write(frame.tenon) },
    { label: 'horn, each end', value: write(frame.horn) },
    { label: 'rebate for boards', value: write(frame.rebate) },
    { label: 'thickness', value: depth },
  ]
}

type Mortise = { name: string; lower: number; upper: number }

const mortiseOf = ({ name, y, section }: Ledge): Mortise => ({
  name: `${name} ledge`,
  lower: y - section.width / 2,
  upper: y + section.width / 2,
})

/** Where ledges and rail meet the stiles, from the foot, top down as they are seen. */
function mortises({ ledges, frame }: HangingLeaf): Mortise[] {
  const rail = frame.find(({ name }) => name === 'top rail')
  const lower = Math.min(...(rail?.outline.map(([, y]) => y) ?? []))
  return [
    ...(rail ? [{ name: 'top rail', lower, upper: lower + rail.section.width }] : []),
    ...ledges.map(mortiseOf).reverse(),
  ]
}

/** A table with room above it, where it follows another. */
const spacedTable = (rows: Table, measure: Measure): Block[] =>
  table(rows, measure).map((block, i) => (i === 0 ? { ...block, above: 2.5 } : block))

/** Frame joints: the figures every joint is cut to, and where ledges and rail meet the stiles. Nothing for a gate without a frame. */
export function frameBlocks(
  { spec, design, unit }: Pick<JobCardInput, 'spec' | 'design' | 'unit'>,
  width: number,
  measure: Measure,
): Block[] {
  if (!spec.frame) return []
  const { write } = figureText(unit)
  const columns = [
    { title: 'At the stiles', width: 36 },
    { title: 'lower edge', width: 28, align: 'end' as const, size: 14, weight: 'semibold' as const },
    { title: 'upper edge', width: 28, align: 'end' as const, size: 14, weight: 'semibold' as const },
  ]
  const facts = saidByLeaf(design.leaves, (leaf) => frameFacts(spec, leaf, write)).flatMap(
    ({ who, value }) => [
      heading(titled('Frame joints', who)),
      ...factGrid(value, { width, across: 3, measure }),
    ],
  )
  const places = saidByLeaf(design.leaves, mortises).flatMap(({ who, value }) =>
    spacedTable(
      {
        columns: columns.map((column, i) => (i === 0 && who !== '' ? { ...column, title: who } : column)),
        rows: value.map(({ name, lower, upper }): Cell[] => [capital(name), write(lower), write(upper)]),
      },
      measure,
    ),
  )
  return keptTogether([...facts, ...places])
}
