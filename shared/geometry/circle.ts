/**
 * Radius of the circle through a chord's ends and the middle of its arc, mm: (span²/4 + rise²) / (2·rise).
 * Throws RangeError unless both are positive. A rise of 100 over 900 is 1062.5.
 */
export function segmentRadius(span: number, rise: number): number {
  if (!(span > 0) || !(rise > 0))
    throw new RangeError(`segmentRadius needs a span and a rise over 0, got ${span} and ${rise}`)
  return ((span * span) / 4 + rise * rise) / (2 * rise)
}
