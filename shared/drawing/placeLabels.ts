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
  size: 'normal' | 'small'
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

const widthAt = (text: string, size: 'normal' | 'small') => textWidth(text, textSizes[size])
const fits = (span: Span, size: 'normal' | 'small') =>
  span.to - span.from >= widthAt(span.text, size) + 2 * clear

/** Built fractions are small enough already: a figure with one is never set smaller. */
const hasFraction = (text: string): boolean => /[⁄½¼¾⅛⅜⅝⅞]/.test(text)
const smallest = (text: string): 'normal' | 'small' => (hasFraction(text) ? 'normal' : 'small')

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

/**
 * Places the figures of a chain so that none meets another: over its own length where it fits, a size smaller where that
 * helps, past the end for the first and last, beyond the line otherwise. One with no place at all is left out.
 * stops in paper mm, rising; reach is how far past the ends there is paper.
 */
export function placeLabels(
  stops: number[],
  labels: (ChainLabel | null)[],
  reach: { before: number; after: number },
): PlacedLabel[] {
  const placed: PlacedLabel[] = []
  const spans = spansOf(stops, labels)
  const [start, end] = [stops[0] ?? 0, stops.at(-1) ?? 0]
  let beyondFrom = start - reach.before
  for (const span of spans) {
    const size = fits(span, 'normal') ? 'normal' : smallest(span.text)
    const width = widthAt(span.text, size)
    const common = {
      label: span.label,
      text: span.text,
      width,
      size,
      from: span.from,
      to: span.to,
      count: span.count,
    } as const
    const middle = (span.from + span.to) / 2
    if (fits(span, size)) placed.push({ ...common, at: middle, row: 'above', outside: false })
    else if (span.from === start && width + 2.5 <= reach.before)
      placed.push({ ...common, at: start - 2 - width / 2, row: 'above', outside: true })
    else if (span.to === end && width + 2.5 <= reach.after)
      placed.push({ ...common, at: end + 2 + width / 2, row: 'above', outside: true })
    else if (middle - width / 2 >= beyondFrom && middle + width / 2 <= end + reach.after) {
      placed.push({ ...common, at: middle, row: 'beyond', outside: false })
      beyondFrom = middle + width / 2 + clear
    }
  }
  return placed
}
