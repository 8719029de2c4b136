import { toPence, type Pence } from '../pricing/pence.ts'
import { readAmount, type Decimal } from './amount.ts'
import type { Columns } from './columns.ts'
import { unguard } from './guard.ts'
import { withoutTax } from './listTax.ts'
import type { BadLine, Row } from './rows.ts'
import { readUnit, type UnitAndSize } from './unitWords.ts'

/**
 * A line of a merchant's list. per is null where the list says nothing of the unit. listed: the price as it stands there, in hundredths, tax in it where the
 * list has it so; pence: what it is without. rounded: that has a part of a penny, which was rounded.
 */
export type ListLine = {
  line: number
  code: string
  words: string
  supplier: string
  per: UnitAndSize | null
  listed: number
  pence: Pence
  rounded: boolean
}

/** How rows are made into lines: which column is what, the price's decimal mark, how many cells a row should have; taxBp the rate of tax in the prices (basis points), null or left out for none. */
export type LineLayout = { columns: Columns; decimal: Decimal; width: number; taxBp?: number | null }

/** The most a price may change by being made whole pence: past that the list's price is for too small a thing. */
const mostRounding = 0.01

const told = ({ cells }: Row): string =>
  cells
    .filter((cell) => cell.trim() !== '')
    .join(' · ')
    .slice(0, 80)
const countFaults = ({ cells }: Row, width: number): string | undefined =>
  cells.slice(width).some((cell) => cell.trim() !== '')
    ? `${cells.length} cells where the list has ${width} columns`
    : undefined

function makeWhole(hundredths: number): { pence: Pence; rounded: boolean } | undefined {
  const pence = toPence(hundredths)
  const off = Math.abs(pence - hundredths)
  return off > hundredths * mostRounding ? undefined : { pence, rounded: off > 1e-6 }
}

/** Makes a row into a line of the list, or says why it can't be used. Only a row with a price and a code or words can. */
export function readLine(
  row: Row,
  layout: LineLayout,
): { ok: true; line: ListLine } | { ok: false; bad: BadLine } {
  const { columns, decimal, width, taxBp = null } = layout
  const cell = (column: number | null): string =>
    column === null ? '' : unguard((row.cells[column] ?? '').trim()).trim()
  const bad = (reason: string) => ({ ok: false, bad: { line: row.line, text: told(row), reason } }) as const
  if (row.cells.some((one) => one.includes('\0'))) return bad('it holds a mark that can’t be read')
  const uneven = countFaults(row, width)
  if (uneven) return bad(uneven)
  const [code, words] = [cell(columns.code), cell(columns.words)]
  if (code === '' && words === '') return bad('neither a code nor a name')
  const amount = readAmount(cell(columns.price), decimal)
  if (!amount.ok) return bad(amount.reason)
  const whole = makeWhole(withoutTax(amount.hundredths, taxBp))
  if (!whole)
    return bad(`“${cell(columns.price)}” can’t be told in whole pence: price it by the box or the length`)
  const unit = cell(columns.unit)
  const per = unit === '' ? null : readUnit(unit)
  if (per === undefined) return bad(`“${unit.slice(0, 30)}” is no unit I know`)
  const supplier = cell(columns.supplier)
  return {
    ok: true,
    line: { line: row.line, code, words, supplier, per, listed: amount.hundredths, ...whole },
  }
}
