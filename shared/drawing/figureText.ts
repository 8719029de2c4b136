import type { LengthUnit } from '../job/job.ts'
import { writeInches, writeShortMm } from '../units/writeLength.ts'

/** Writes lengths on a drawing in the job's unit, and in the other one where both are given. Millimetres go without their sign. */
export type FigureText = { unit: LengthUnit; write: (mm: number) => string; other: (mm: number) => string }

const halfMm = (mm: number): string => writeShortMm(Math.floor(mm * 2 + 0.5 + 1e-9) / 2)

/**
 * Figures of a drawing: to 0.5 mm as they are cut, or to a 16th of an inch. In inches every figure carries its own mark, so that
 * 112 can only be millimetres and 4 ⁷⁄₁₆″ only inches.
 */
export const figureText = (unit: LengthUnit): FigureText =>
  unit === 'mm'
    ? { unit, write: halfMm, other: (mm) => writeInches(mm) }
    : { unit, write: (mm) => writeInches(mm), other: (mm) => `${halfMm(mm)} mm` }
