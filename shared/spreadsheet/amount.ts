import { mostPence } from '../pricing/pence.ts'

/** Which mark parts pounds from pence in a column: 1,234.56 is point, 1.234,56 is comma. */
export type Decimal = 'point' | 'comma'

/** A sum read from a cell in hundredths, which may have a part of a penny left over (12.345 is 1234.5), or why there is none. */
export type Amount = { ok: true; hundredths: number } | { ok: false; reason: string }

const currency = /^(?:£|€|\$|GBP|EUR|USD)\s*|\s*(?:£|€|\$|GBP|EUR|USD)$/gi
const group = /(\d)[ '’\u00a0\u202f](?=\d{3}(?!\d))/g
const shapes = {
  point: /^(\d{1,3}(?:,\d{3})+|\d*)(?:\.(\d+))?$/,
  comma: /^(\d{1,3}(?:\.\d{3})+|\d*)(?:,(\d+))?$/,
}

const bare = (cell: string): string => cell.trim().replace(currency, '').replace(group, '$1').trim()
const unsigned = (cell: string): string => bare(bare(cell).replace(/^[-−]\s*|\s*[-−]$|^\((.*)\)$/, '$1'))

/**
 * What one cell tells of its column's decimal mark, undefined where it may be either: '12,5' comma, '1.234,56' comma, '1,234,567'
 * point; '1,234' and '12' tell nothing.
 */
export function decimalOfCell(cell: string): Decimal | undefined {
  const text = unsigned(cell)
  if (!/^[\d.,]+$/.test(text)) return undefined
  const [point, comma] = [shapes.point.test(text), shapes.comma.test(text)]
  if (point !== comma) return point ? 'point' : 'comma'
  return undefined
}

/** The decimal mark of a column, by what most of its cells tell; unlessTold where none of them tells. */
export function decimalOf(cells: readonly string[], unlessTold: Decimal): Decimal {
  const told = cells.map(decimalOfCell)
  const [points, commas] = [
    told.filter((one) => one === 'point').length,
    told.filter((one) => one === 'comma').length,
  ]
  if (points === commas) return unlessTold
  return points > commas ? 'point' : 'comma'
}

/** Whether a cell is a sum with pence, however it is marked: '12.50', '1.234,56'. */
export const isSumWithPence = (cell: string): boolean =>
  /\d[.,]\d{2}$/.test(unsigned(cell)) && /^[\d.,]+$/.test(unsigned(cell))

const refused = (reason: string): Amount => ({ ok: false, reason })

function withoutFigures(cell: string): Amount {
  if (/^[=+@]/.test(cell))
    return refused(`“${cell.slice(0, 30)}” is a sum for the spreadsheet to work out, not a price`)
  if (/^-?[\d.,]+e[+-]?\d+$/i.test(cell)) return refused(`“${cell}” isn’t written in plain figures`)
  return refused(`“${cell.slice(0, 30)}” isn’t a price`)
}

/**
 * Reads a price from a cell whose column has this decimal mark. A currency sign, spaces between thousands and our guard are no
 * hindrance. Below nothing, nothing at all, and over ten million pounds are refused with the reason.
 */
export function readAmount(cell: string, decimal: Decimal): Amount {
  const text = cell.trim()
  if (text === '') return refused('no price on this line')
  const figures = unsigned(text)
  const other = decimal === 'point' ? 'comma' : 'point'
  const read = shapes[decimal].exec(figures)
  if (!read || !/\d/.test(figures)) {
    if (shapes[other].test(figures) && /\d/.test(figures))
      return refused(`“${text}” doesn’t fit a column with a decimal ${decimal}`)
    return withoutFigures(text)
  }
  const whole = (read[1] ?? '').replace(/[.,]/g, '') || '0'
  if (whole.replace(/^0+/, '').length > 8) return refused(`“${text.slice(0, 30)}” is over ten million`)
  const part = (read[2] ?? '').slice(0, 6).padEnd(6, '0')
  const hundredths = Number(whole + part) / 10_000
  if (hundredths > mostPence) return refused(`“${text}” is over ten million`)
  if (bare(text) !== figures) return refused(`“${text}” is below nothing`)
  return hundredths === 0 ? refused('a price of nothing') : { ok: true, hundredths }
}
