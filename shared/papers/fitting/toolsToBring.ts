import { hasTreatedTimber } from '../../describe/timberWords.ts'
import { figureText } from '../../drawing/figureText.ts'
import { writeShortMm } from '../../units/writeLength.ts'
import type { Block } from '../flow.ts'
import type { JobCardInput } from '../jobCardInput.ts'
import type { Measure, PageMark } from '../page.ts'
import { heading, paragraph } from '../table.ts'
import { lineHeight, linesAt, setLines } from '../words.ts'

type Gate = Pick<JobCardInput, 'spec' | 'design' | 'unit'>

/** Drills for the ironmongery, each once, the least first, mm. */
function drills({ design }: Gate): string[] {
  const sizes = design.fittings.flatMap(({ drillings }) =>
    drillings.map(({ size }) => size.drill ?? size.exact),
  )
  return [...new Set(sizes)].sort((a, b) => a - b).map((size) => writeShortMm(size, 2))
}

/** Holes that bolts shoot into, each once, mm. */
const sockets = ({ design }: Gate): string[] =>
  [...new Set(design.fittings.flatMap(({ socket }) => (socket === null ? [] : [socket])))]
    .sort((a, b) => a - b)
    .map((size) => writeShortMm(size))

/** Packers for the gaps that the gate is hung with, where the opening was measured. */
function packers({ spec: { size }, unit }: Gate): string {
  if (size.from !== 'opening') return 'packers for the gaps'
  const { write } = figureText(unit)
  const gaps = [size.hangingGap, size.meetingGap ?? size.closingGap, size.groundGap].filter((gap) => gap > 0)
  return `packers: ${[...new Set(gaps)].map(write).join(', ')}`
}

/** What to take to where the gate hangs, so far as the gate itself tells it (common practice). */
export function toolsToBring(gate: Gate): string[] {
  const { spec, design } = gate
  const bits = drills(gate)
  const holes = sockets(gate)
  const bolted = design.fittings.some(({ drillings }) => drillings.some(({ what }) => what === 'bolt hole'))
  const locked = design.fittings.some(({ kind }) => kind === 'lock')
  return [
    'level, long straight-edge, tape',
    packers(gate),
    ...(bits.length === 0 ? ['drills and driver bits'] : [`drills ${bits.join(', ')}; driver bits`]),
    ...(holes.length === 0 ? [] : [`masonry drill ${holes.join(', ')}; eye protection`]),
    ...(bolted ? ['spanners'] : []),
    ...(locked ? ['chisels, mallet, file for the keep'] : ['chisel and mallet']),
    'plane for easing',
    hasTreatedTimber(spec) ? 'preservative and brush, gloves' : 'finish and brush for fresh cuts',
    'props, wedges, a second pair of hands',
  ]
}

/** Columns that the list is set in. */
const across = 3

/** The list with a box to tick before each thing. */
export function toolBlocks(gate: Gate, width: number, measure: Measure): Block[] {
  const cell = width / across
  const set = toolsToBring(gate).map((text) =>
    setLines([{ text, weight: 'regular' }], { width: cell - 9, size: 11, measure }),
  )
  const rows = Array.from({ length: Math.ceil(set.length / across) }, (_, i) =>
    set.slice(i * across, (i + 1) * across),
  )
  const box = (x: number, y: number): PageMark => ({
    ...{ kind: 'box', x, y: y + 0.6, width: 4, height: 4 },
    stroke: { width: 0.4, ink: 'black' },
  })
  const blocks = rows.map((row): Block => ({
    height: Math.max(...row.map((lines) => lines.length)) * lineHeight(11) + 1,
    withNext: true,
    marks: (x, y) =>
      row.flatMap((lines, i) => [
        box(x + i * cell, y),
        ...linesAt(lines, { x: x + i * cell + 6, y: y + 3.8, size: 11, ink: 'black' }),
      ]),
  }))
  return [
    heading('To bring'),
    ...blocks.map((block, i) => (i < blocks.length - 1 ? block : { ...block, withNext: false })),
  ]
}

/** The list in one sentence, where there is little room. */
export const toolWords = (gate: Gate, width: number, measure: Measure): Block[] => [
  paragraph(`To bring: ${toolsToBring(gate).join('; ')}.`, { width, measure }),
]
