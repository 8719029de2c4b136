/** Moisture content in % at which most timbers start to shrink as they dry: Wood Handbook FPL-GTR-190 ch. 13. */
export const usualMovementStart = 30

const checkStart = (start: number): void => {
  if (!(start > 0)) throw new RangeError(`a moisture content over 0 was expected as start, got ${start}`)
}

/**
 * The change coefficient per 1 % from the whole shrinkage, green to oven-dry, in %: C = (S/F) / (1 − S·(F − 10)/F), S as a
 * fraction, F the moisture content at which shrinking starts (30; 22 for western redcedar and redwood).
 * It gives the handbook's table 13-5 back to five places from its tables 4-3 and 4-4: sugar maple 9.9 → 0.00353,
 * western redcedar with 22, 5.0 → 0.00234.
 */
export function coefficientFromShrinkage(shrinkagePercent: number, start = usualMovementStart): number {
  checkStart(start)
  const s = shrinkagePercent / 100
  return s / start / (1 - (s * (start - 10)) / start)
}

/** The other way: the whole shrinkage in % that goes with a change coefficient per 1 %. 0.00353 gives 9.891. */
export function shrinkageFromCoefficient(coefficient: number, start = usualMovementStart): number {
  checkStart(start)
  return (100 * coefficient * start) / (1 + coefficient * (start - 10))
}
