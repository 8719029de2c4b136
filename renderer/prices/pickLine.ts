import type { PriceUnit } from '../../shared/pricing/price.ts'
import type { ListLine } from '../../shared/spreadsheet/listLine.ts'
import { perWords } from './priceWords.ts'

/** A line of the price book that a merchant's list may price. unit is null where it has no price yet. */
export type BookLine = {
  itemId: number
  supplierId: number | null
  code: string
  words: string
  unit: PriceUnit | null
  size: number | null
}

/** The line of the book that a list's line prices, and by what. */
export type Found = { line: BookLine; unit: PriceUnit; size: number | null }

/** Which of an item's lines a list's line prices, or why that can't be told. */
export function pickLine(lines: readonly BookLine[], { per }: ListLine): Found | string {
  const [only] = lines
  const items = new Set(lines.map(({ itemId }) => itemId))
  if (items.size > 1) return 'the price book has two items of that name'
  const priced = lines.flatMap((line) =>
    line.unit === null ? [] : [{ line, unit: line.unit, size: line.size }],
  )
  if (!per) {
    const [one, another] = priced
    if (one && !another) return one
    return priced.length === 0
      ? 'the list doesn’t say what it is sold by, and it has no price yet'
      : `the list doesn’t say which: ${priced.map(perWords).join(', ')}`
  }
  const same = priced.find(({ unit, size }) => unit === per.unit && size === per.size)
  if (same) return same
  if (priced.length === 0 && only) return { line: only, unit: per.unit, size: per.size }
  return `sold here ${perWords(per)}; the price book has it ${priced.map(perWords).join(', ')}`
}
