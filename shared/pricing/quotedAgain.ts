import type { BoughtLength } from './buyTimber.ts'
import type { Asked } from './costedLine.ts'
import type { QuotedMoney, QuotedOption } from './quotation.ts'

/**
 * A quoted option as it can be priced again: its own needs, entry, way of charging and times, and the lengths of timber that it was quoted
 * with, so that nothing but prices (and the rate of tax) can differ and nothing has to be planned anew.
 */
export function quotedAgain(
  { settings, times }: QuotedMoney,
  { needs, entry, estimate }: QuotedOption,
): Asked {
  const quotedLengths = new Map<string, readonly BoughtLength[]>()
  for (const { id, lengths } of estimate.lines) if (lengths) quotedLengths.set(id, lengths)
  return { needs, entry, settings, times, quotedLengths }
}
