/** A place in mm: [x, y] in the leaf's own frame (x from the hanging edge, y up from the foot). */
export type Point = readonly [number, number]

/** The one tolerance in which two lengths count as equal, mm. Far below what a saw can show, far above rounding. */
export const lengthTolerance = 1e-6
