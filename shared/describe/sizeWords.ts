import { toHalf } from '../cutting/cutList.ts'
import type { Section } from '../gate/spec.ts'
import type { LengthUnit } from '../job/job.ts'
import { writeFeet, writeInches, writeShortMm } from '../units/writeLength.ts'

/**
 * Writes sizes in running words, to the half millimetre as they are cut and on the drawing. length: 'both units, the job's own first:
 * 900 mm (2′ 11 ⁷⁄₁₆″)'. small: a gap or a lap, in inches only where the job is. section: the two faces of a piece, width before thickness.
 * box: width and height of a gate with what stands between and after them.
 */
export type SizeWords = {
  length: (mm: number) => string
  small: (mm: number) => string
  section: (section: Pick<Section, 'width' | 'thickness'>) => string
  box: (size: { width: number; height: number }, highest: string) => string
}

const halfMm = (mm: number): string => writeShortMm(toHalf(mm))
const feet = (mm: number): string => writeFeet(toHalf(mm))
const inches = (mm: number): string => writeInches(toHalf(mm))

/** Under a yard a joiner and his customer speak of inches alone. */
const imperial = (mm: number): string => (mm < 914.4 ? inches(mm) : feet(mm))

const inMm: SizeWords = {
  length: (mm) => `${halfMm(mm)} mm (${imperial(mm)})`,
  small: (mm) => `${halfMm(mm)} mm`,
  section: ({ width, thickness }) =>
    `${halfMm(width)} × ${halfMm(thickness)} mm (${inches(width)} × ${inches(thickness)})`,
  box: ({ width, height }, highest) =>
    `${halfMm(width)} mm wide and ${halfMm(height)} mm high${highest} (${feet(width)} × ${feet(height)})`,
}

const inInches: SizeWords = {
  length: (mm) => `${imperial(mm)} (${halfMm(mm)} mm)`,
  small: (mm) => `${inches(mm)} (${halfMm(mm)} mm)`,
  section: ({ width, thickness }) =>
    `${inches(width)} × ${inches(thickness)} (${halfMm(width)} × ${halfMm(thickness)} mm)`,
  box: ({ width, height }, highest) =>
    `${feet(width)} wide and ${feet(height)} high${highest} (${halfMm(width)} × ${halfMm(height)} mm)`,
}

/** The words of sizes for a job's unit. */
export const sizeWords = (unit: LengthUnit): SizeWords => (unit === 'mm' ? inMm : inInches)
