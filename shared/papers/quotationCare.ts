import { hasTreatedTimber } from '../describe/timberWords.ts'
import type { QuotedOption } from '../pricing/quotation.ts'

/**
 * What the customer should know of living with it, short: usual cautions of the trade (common practice), which defer to local rules and
 * licensed work. Treated timber is only spoken of where some is used.
 */
export function careWords(options: readonly QuotedOption[]): string[] {
  const treated = options.some(({ spec }) => hasTreatedTimber(spec))
    ? [
        'Treated timber: never burn offcuts or dust, wear gloves and a dust mask to cut it, and brush preservative on every fresh cut.',
      ]
    : []
  return [
    'Timber swells in the wet and shrinks in the dry: joints that open a little in summer and close in winter are as they should be.',
    'Look it over every year: renew the finish before it wears through, oil hinges and latch, tighten what has worked loose.',
    'It is heavy and has pinch points at the hinges: keep fingers and children clear when it moves, and fasten it in wind.',
    ...treated,
    'What it hangs on must be sound enough to carry it. For a large gate, one on a public way or one worked by a motor, local rules apply: have it looked at by an engineer or a licensed fitter.',
  ]
}
