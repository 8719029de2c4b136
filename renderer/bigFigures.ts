import type { Design } from '../shared/gate/designModel.ts'
import type { Brace } from '../shared/gate/leaf.ts'
import type { LengthUnit } from '../shared/job/job.ts'
import { toHalf } from '../shared/cutting/cutList.ts'
import { writeLength } from '../shared/units/writeLength.ts'
import { countWord, writeAngle } from './format.ts'

/** A figure to be read standing up: what it is, the figure with its unit apart, what else to know, and the worked figure behind it. */
export type BigFigure = { name: string; shown: string; unit: string; also: string; id: string; part: string }

const other = (unit: LengthUnit): LengthUnit => (unit === 'mm' ? 'in' : 'mm')

const length = (mm: number, unit: LengthUnit) => ({
  shown: writeLength(toHalf(mm), unit).replace(/ mm$/, ''),
  unit: unit === 'mm' ? 'mm' : '',
  also: writeLength(toHalf(mm), other(unit)),
})

function boardFigures(design: Design, unit: LengthUnit): BigFigure[] {
  const leaf = design.leaves[0]
  const boards = leaf?.boards ?? []
  const ripped = boards.flatMap((board, index) => (board.ripped ? [index] : []))
  const first = ripped[0]
  const count = {
    name: leaf && design.leaves.length > 1 ? `Boards, ${leaf.name}` : 'Boards',
    shown: String(boards.length),
    unit: '',
    also: '',
    id: 'boards.count',
    part: 'board',
  }
  if (first === undefined) return [{ ...count, also: 'none to rip' }]
  const name = ripped.length > 1 ? `Rip ${countWord(ripped.length)} to` : `Rip board ${first + 1} to`
  const part = ripped.length > 1 ? 'dimension boards' : `board ${first + 1}`
  return [count, { name, ...length(boards[first]?.width ?? 0, unit), id: `board.${first + 1}.width`, part }]
}

/** Braces that come out the same are said once. */
function braceFigures(braces: Brace[], unit: LengthUnit): BigFigure[] {
  const alike = (a: Brace, b: Brace) =>
    writeAngle(a.angle) === writeAngle(b.angle) && Math.abs(a.length - b.length) < 0.25
  const [one, two] = braces
  if (!one) return []
  const told = two && !alike(one, two) ? [one, two] : [one]
  const sameAngle = told.every((brace) => writeAngle(brace.angle) === writeAngle(one.angle))
  const called = (brace: Brace, what: string) =>
    told.length === 1 ? `Brace ${what}` : `${brace.name === 'lower' ? 'Lower' : 'Upper'} brace ${what}`
  const part = (brace: Brace) => (told.length === 1 ? 'brace' : `${brace.name} brace`)
  const angles = (sameAngle ? [one] : told).map((brace) => ({
    name: sameAngle ? 'Brace angle' : called(brace, 'angle'),
    shown: writeAngle(brace.angle),
    unit: '',
    also: `saw at ${writeAngle(brace.sawSetting)}`,
    id: `brace.${brace.name}.angle`,
    part: sameAngle ? 'brace' : part(brace),
  }))
  const lengths = told.map((brace) => ({
    name: told.length === 1 ? 'Brace, long points' : called(brace, 'long points'),
    ...length(Math.round(brace.length * 2) / 2, unit),
    id: `brace.${brace.name}.length`,
    part: part(brace),
  }))
  return [...angles, ...lengths]
}

/** The handful of figures that matter while making: how many boards, what to rip, the brace's angle and length. */
export const bigFigures = (design: Design, unit: LengthUnit): BigFigure[] => [
  ...boardFigures(design, unit),
  ...braceFigures(design.leaves[0]?.braces ?? [], unit),
]
