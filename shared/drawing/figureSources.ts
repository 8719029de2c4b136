import type { Design } from '../gate/designModel.ts'
import { leafPrefix } from '../gate/leafPrefix.ts'
import type { HangingLeaf } from '../gate/leaf.ts'
import type { GateSpec } from '../gate/spec.ts'
import { lengthTolerance } from '../geometry/point.ts'
import { valueAt } from '../job/specPath.ts'
import type { Chain, Drawing, FigureSource, Mark } from './drawing.ts'
import { heightsServeAll } from './holds.ts'

/** What a figure's source is looked up in. leaf: the one that the figure is of, as far as the drawing says. */
type Gate = { spec: GateSpec; design: Design; leaf: HangingLeaf }

/** Dimensions that are an entry as it stands, by what they are called; the entry that is there and equal is the one. */
const asEntered: Record<string, readonly string[]> = {
  width: ['size.width'],
  height: ['size.height'],
  'leaf width': ['size.width'],
  'meeting gap': ['size.meetingGap'],
  'ground gap': ['size.groundGap'],
  'gap between the halves': ['stable.gap'],
  'hanging inset': ['ledges.hangingInset'],
  'closing inset': ['ledges.closingInset'],
  'bottom ledge width': ['ledges.section.width'],
  'middle ledge width': ['ledges.section.width'],
  'top ledge width': ['ledges.topSection.width', 'ledges.section.width'],
  'hanging stile width': ['frame.stile.width'],
  'closing stile width': ['frame.stile.width'],
  'stile face': ['frame.stile.width'],
  'top rail': ['frame.topRail.width'],
  'top rise': ['top.rise'],
  'board thickness': ['boards.section.thickness'],
  'ledge thickness': ['ledges.section.thickness'],
  gap: ['boards.gap'],
  'notch depth': ['braces.notchDepth'],
  tenon: ['frame.tenon'],
  rebate: ['frame.rebate'],
  lap: ['meeting.lap'],
}

/** The working behind a dimension that isn't an entry, by what it is called. */
function workingOf(called: string, { design, leaf }: Gate): string | undefined {
  const at = leafPrefix[leaf.name]
  const board = /^board (\d+)$/.exec(called)
  const brace = /^(single|lower|upper) brace (length|angle)$/.exec(called)
  const plain: Record<string, string> = {
    width: 'leaf.width',
    'leaf width': 'leaf.width',
    height: 'leaf.height',
    'ledge length': 'ledge.bottom.length',
    'foot to bottom ledge': 'ledge.bottom.y',
  }
  const own = board
    ? `board.${board[1]}.width`
    : brace
      ? `brace.${brace[1]}.${brace[2]}`
      : (plain[called] ?? bayWorking(called, leaf))
  return [`${at}${own}`, own].find((id) => id !== undefined && design.figures[id] !== undefined)
}

/** The length up to a ledge is told by the working of that ledge's height; the one over the last by that ledge's. */
function bayWorking(called: string, { ledges }: HangingLeaf): string | undefined {
  const bay = /^bay (\d+)$/.exec(called)
  const ledge = bay && (ledges[Number(bay[1])] ?? ledges.at(-1))
  return ledge ? `ledge.${ledge.name}.y` : undefined
}

/** The ledge that a length up the gate's side sets, and which way: it ends at that ledge's lower edge, or starts at the last one's upper. */
function ledgeEntry(called: string, mm: number, { spec, design, leaf }: Gate): FigureSource['entry'] {
  if (!heightsServeAll(spec, design)) return undefined
  const bay = called === 'foot to bottom ledge' ? 0 : Number(/^bay (\d+)$/.exec(called)?.[1] ?? Number.NaN)
  if (Number.isNaN(bay)) return undefined
  const last = leaf.ledges.length - 1
  const ledge = leaf.ledges[Math.min(bay, last)]
  if (!ledge) return undefined
  const field = `ledges.heights.${Math.min(bay, last)}`
  return bay <= last ? { field, times: 1, add: ledge.y - mm } : { field, times: -1, add: ledge.y + mm }
}

/** A leaf's size as entered: what is dimensioned of it may carry a lap, or stand on ground that isn't level. */
function entryOf(called: string, mm: number, gate: Gate): FigureSource['entry'] {
  const { spec, leaf } = gate
  const standing = (asEntered[called] ?? []).flatMap((field) => {
    const value = valueAt(spec, field.split('.'))
    return typeof value === 'number' ? [{ field, value }] : []
  })
  const same = standing.find(({ value }) => Math.abs(value - mm) < lengthTolerance)
  if (same) return { field: same.field, times: 1, add: 0 }
  const size = standing.find(({ field }) => field === 'size.width' && called === 'leaf width')
  if (size) return { field: size.field, times: 1, add: size.value - mm }
  const board = /^board (\d+)$/.exec(called)
  if (board) {
    const own = leaf.boards[Number(board[1]) - 1]
    const full = own && !own.ripped && Math.abs(mm - spec.boards.section.width) < lengthTolerance
    return full ? { field: 'boards.section.width', times: 1, add: 0 } : undefined
  }
  return ledgeEntry(called, mm, gate)
}

const calledOf = (part: string): string => part.replace(/^dimension /, '')

/** Where the figure called so comes from, as far as it comes from anything. */
export function sourceOf(part: string, mm: number, gate: Gate): FigureSource | undefined {
  const called = calledOf(part)
  const entry = entryOf(called, mm, gate)
  if (entry) return { mm, entry }
  const worked = workingOf(called, gate)
  return worked === undefined ? undefined : { mm, worked }
}

/** Figures that come once for every leaf drawn: the n-th of them is the n-th leaf's. */
type Counted = { seen: Map<string, number>; gate: Omit<Gate, 'leaf'> }

function leafOf(part: string, { seen, gate }: Counted): HangingLeaf | undefined {
  const { leaves } = gate.design
  const place = seen.get(part) ?? 0
  seen.set(part, place + 1)
  // Up the side of a pair stands its second leaf; along its foot they run as they hang.
  if (/foot to|bay|ledge width|height/.test(part) && gate.spec.leaves === 2) return leaves.at(-1)
  return leaves[place] ?? leaves[0]
}

function inChain(chain: Chain, counted: Counted): Chain {
  const labels = chain.labels.map((label, i) => {
    const part = label?.part ?? chain.part
    const leaf = part === undefined ? undefined : leafOf(part, counted)
    if (!label || part === undefined || !leaf) return label
    const mm = Math.abs((chain.stops[i + 1] ?? 0) - (chain.stops[i] ?? 0))
    const source = sourceOf(part, measured(part, mm, leaf), { ...counted.gate, leaf })
    return source ? { ...label, source } : label
  })
  return { ...chain, labels }
}

/** A board's figure is its face, though its dimension runs from joint to joint. */
function measured(part: string, mm: number, leaf: HangingLeaf): number {
  const board = /^dimension board (\d+)$/.exec(part)
  const own = board && leaf.boards[Number(board[1]) - 1]
  return own ? own.width : mm
}

function inMark(mark: Mark, counted: Counted): Mark {
  if (mark.kind === 'chain') return inChain(mark, counted)
  if ((mark.kind !== 'dimension' && mark.kind !== 'angle') || mark.part === undefined) return mark
  const leaf = leafOf(mark.part, counted)
  if (!leaf) return mark
  const mm =
    mark.kind === 'angle'
      ? mark.end - mark.start
      : Math.hypot(mark.to[0] - mark.from[0], mark.to[1] - mark.from[1])
  const source = sourceOf(mark.part, mm, { ...counted.gate, leaf })
  return source ? { ...mark, source } : mark
}

/**
 * A drawing whose dimensions carry the entries they are, or the workings behind them; nothing else of it changes. Given before the
 * hand turns the drawing over, while its leaves run as they hang.
 */
export function withSources(drawing: Drawing, gate: { spec: GateSpec; design: Design }): Drawing {
  const counted = { seen: new Map<string, number>(), gate }
  return { ...drawing, marks: drawing.marks.map((mark) => inMark(mark, counted)) }
}
