/** A size as sawn and as planed all round, mm. */
export type TargetSize = { sawn: number; planed: number }

/** Target sizes of structural softwood, thickness or width, mm at 20 % moisture: BS EN 336, T1 sawn and T2 planed. */
export const targetSizes: readonly TargetSize[] = [
  { sawn: 50, planed: 47 },
  { sawn: 63, planed: 60 },
  { sawn: 75, planed: 72 },
  { sawn: 100, planed: 97 },
  { sawn: 125, planed: 120 },
  { sawn: 150, planed: 145 },
  { sawn: 175, planed: 170 },
  { sawn: 200, planed: 195 },
  { sawn: 225, planed: 220 },
  { sawn: 250, planed: 245 },
  { sawn: 300, planed: 295 },
]

/** The planed size in mm that a sawn size of the standard gives; undefined for a size that it doesn't list. 125 gives 120. */
export const planedSize = (sawn: number): number | undefined =>
  targetSizes.find((size) => size.sawn === sawn)?.planed

/** The least sawn size in mm of the standard that planes to at least a size; undefined when none is large enough. 115 wants 125. */
export const sawnFor = (planed: number): number | undefined =>
  targetSizes.find((size) => size.planed >= planed)?.sawn

/** How far a size may be off, mm: under (negative) and over. BS EN 336: sawn is class T1, planed T2. */
export function tolerance(size: number, finish: 'sawn' | 'planed'): { under: number; over: number } {
  const large = size > 100
  if (finish === 'sawn') return large ? { under: -2, over: 4 } : { under: -1, over: 3 }
  return large ? { under: -1.5, over: 1.5 } : { under: -1, over: 1 }
}

/** What timber is planed for, as far as it settles how much is taken off. */
export type PlaningUse = 'constructional' | 'matching' | 'trim' | 'joinery'

const allowances: Record<PlaningUse, readonly [number, number, number, number]> = {
  constructional: [3, 3, 5, 5],
  matching: [4, 4, 6, 6],
  trim: [5, 7, 7, 9],
  joinery: [7, 9, 11, 13],
}

/**
 * What planing takes off two opposite faces, mm, by the sawn size: up to 35, to 100, to 150 and over.
 * BS 4471:1978, from memory: mills differ by 1 to 3 mm, so a proposal only, never a check. Matching ex 125 comes to 119.
 */
export function planingAllowance(sawn: number, use: PlaningUse): number {
  if (!(sawn > 0)) throw new RangeError(`a sawn size over 0 was expected, got ${sawn}`)
  const [small, medium, large, largest] = allowances[use]
  if (sawn <= 35) return small
  if (sawn <= 100) return medium
  return sawn <= 150 ? large : largest
}
