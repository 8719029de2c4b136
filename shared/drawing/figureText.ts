import { toHalf } from '../cutting/cutList.ts'
import type { LengthUnit } from '../job/job.ts'
import { writeInches, writeShortMm } from '../units/writeLength.ts'

/** Writes lengths on a drawing in the job's unit, and in the other one where both are given. Millimetres go without their sign. */
export type FigureText = { unit: LengthUnit; write: (mm: number) => string; other: (mm: number) => string }

const halfMm = (mm: number): string => writeShortMm(toHalf(mm))

/** Inches of the length as it is cut, so that the drawing and the cut list say the same. */
const inches = (mm: number): string => writeInches(toHalf(mm))

/**
 * Figures of a drawing: to 0.5 mm as they are cut, or to a 16th of an inch. In inches every figure carries its own mark, so that
 * 112 can only be millimetres and 4 ⁷⁄₁₆″ only inches.
 */
export const figureText = (unit: LengthUnit): FigureText =>
  unit === 'mm'
    ? { unit, write: halfMm, other: inches }
    : { unit, write: inches, other: (mm) => `${halfMm(mm)} mm` }
