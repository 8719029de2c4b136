import type { Primitive } from '../../shared/drawing/primitives.ts'

/** The least that letters on the screen may be, px. */
const leastLetters = 9.5
/** By how much names may grow in the room they were given: their neighbours were placed by the size on paper. */
const mostGrowth = 1.12

/** A laid-out drawing whose names can be read in a small window too. Figures are larger on paper already, and stay. pixels: to a millimetre of its paper. */
export const readableNames = (primitives: readonly Primitive[], pixels: number): Primitive[] =>
  primitives.map((one) =>
    one.kind === 'text' && one.size * pixels < leastLetters
      ? { ...one, size: Math.min(leastLetters / pixels, one.size * mostGrowth) }
      : one,
  )
