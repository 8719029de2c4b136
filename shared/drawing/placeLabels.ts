import type { ChainLabel } from './drawing.ts'
import { textSizes } from './pens.ts'
import { textWidth } from './textWidth.ts'

/**
 * Where the figure of one length of a chain stands: at along the chain (paper mm), above the line or beyond it, and how large.
 * from and to are the span it speaks of; outside says that it stands past the chain's end and its line must be drawn on.
 */
export type PlacedLabel = {
  label: ChainLabel
  text: string
  at: number
  width: number
  size: 'normal' | 'figure'
  row: 'above' | 'beyond'
  outside: boolean
  /** The span written about: more than one length where neighbours are written once. */
  from: number
  to: number
  count: number
}

type Span = { from: number; to: number; count: number; label: ChainLabel; text: string }

/** Space kept free between a figure and the ticks beside it, mm. */
const clear = 1

const widthAt = (text: string, size: 'normal' | 'figure') => textWidth(text, textSizes[size])
const fits = (span: Span, size: 'normal' | 'figure') =>
  span.to - span.from >= widthAt(span.text, size) + 2 * clear

/** Built fractions are small enough already: a figure with one is never set smaller. */
const hasFraction = (text: string): boolean => /[⁄½¼¾⅛⅜⅝⅞]/.test(text)
const smallest = (text: string): 'normal' | 'figure' => (hasFraction(text) ? 'normal' : 'figure')

/** Lengths with their figures; runs of one group that can't each be written are joined as '6 × 112'. */
function spansOf(stops: number[], labels: (ChainLabel | null)[]): Span[] {
  const spans: Span[] = []
  for (let i = 0; i < labels.length; i++) {
    const label = labels[i]
    const [from, to] = [stops[i], stops[i + 1]]
    if (!label || from === undefined || to === undefined) continue
    let last = i
    while (label.group !== undefined && labels[last + 1]?.group === label.group) last++
    const single: Span = { from, to, count: 1, label, text: label.text }
    if (last === i || fits(single, smallest(label.text))) {
      spans.push(single)
      continue
    }
    spans.push({
      from,
      to: stops[last + 1] ?? to,
      count: last - i + 1,
      label,
      text: `${last - i + 1} × ${label.text}`,
    })
    i = last
  }
  return spans
}

/** Where a chain's figures may go: how far past its ends, and whether figures beyond the line share a side with those above it. */
export type Reach = { before: number; after: number; oneSide?: boolean }

/** A figure past the end of the chain, for a first or last length too short for it; undefined where there is no paper. */
function pastEnd(
  span: Span & { width: number },
  ends: { start: number; end: number },
  reach: Reach,
): number | undefined {
  const { width } = span
  if (span.from === ends.start && width + 2.5 <= reach.before) return ends.start - 2 - width / 2
  if (span.to === ends.end && width + 2.5 <= reach.after) return ends.end + 2 + width / 2
  return undefined
}

/**
 * Places the figures of a chain so that none meets another: over its own length where it fits, a size smaller where that
 * helps, past the end for the first and last, beyond the line otherwise. One with no place at all is left out.
 * stops in paper mm, rising.
 */
export function placeLabels(stops: number[], labels: (ChainLabel | null)[], reach: Reach): PlacedLabel[] {
  const ends = { start: stops[0] ?? 0, end: stops.at(-1) ?? 0 }
  const placed: PlacedLabel[] = []
  const homeless: PlacedLabel[] = []
  for (const { from, to, count, label, text } of spansOf(stops, labels)) {
    const span = { from, to, count, label, text }
    const size = fits(span, 'normal') ? 'normal' : smallest(text)
    const width = widthAt(text, size)
    const own: PlacedLabel = { ...span, width, size, at: (from + to) / 2, row: 'above', outside: false }
    const past = fits(span, size) ? undefined : pastEnd({ ...span, width }, ends, reach)
    if (fits(span, size)) placed.push(own)
    else if (past !== undefined) placed.push({ ...own, at: past, outside: true })
    else homeless.push({ ...own, row: 'beyond' })
  }
  for (const label of homeless) {
    const [low, high] = [label.at - label.width / 2, label.at + label.width / 2]
    const within = low >= ends.start - reach.before && high <= ends.end + reach.after
    const met = placed.some(
      (other) =>
        (reach.oneSide === true || other.row === 'beyond') &&
        low < other.at + other.width / 2 + clear &&
        high > other.at - other.width / 2 - clear,
    )
    if (within && !met) placed.push(label)
  }
  return placed.sort((a, b) => a.from - b.from)
}
