import type { LengthUnit } from '../shared/job/job.ts'
import { bad, good, type Result } from '../shared/problem.ts'
import { readLength } from '../shared/units/readLength.ts'

const problem = (message: string) => bad<number[]>({ code: 'refused', field: '', message })

/** The single lengths of a line: commas or semicolons between, or spaces where there are only plain numbers. */
const pieces = (text: string): string[] =>
  (/^[\d.\s]+$/.test(text) ? text.split(/\s+/) : text.split(/[;,]/))
    .map((piece) => piece.trim())
    .filter((piece) => piece !== '')

/** Reads several lengths from a line, in rising order, each once: '40, 35, 40' is [35, 40]. max in mm each, most how many. */
export function readLengths(
  text: string,
  unit: LengthUnit,
  limits: { max: number; most: number },
): Result<number[]> {
  const found = pieces(text)
  if (found.length === 0) return problem('At least one is wanted.')
  if (found.length > limits.most) return problem(`Up to ${limits.most} are kept here.`)
  const lengths: number[] = []
  for (const piece of found) {
    const read = readLength(piece, unit, { max: limits.max })
    if (read.kind === 'problem') return problem(read.message)
    if (read.kind === 'ask')
      return problem(`“${piece}” can mean two things. Write it without the mark, or with its unit.`)
    if (read.kind === 'length') lengths.push(read.mm)
  }
  return good([...new Set(lengths)].sort((a, b) => a - b))
}
