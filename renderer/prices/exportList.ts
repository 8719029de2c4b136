import { plainSum, writeList } from '../../shared/spreadsheet/writeList.ts'
import { writeUnit } from '../../shared/spreadsheet/unitWords.ts'
import type { BookLine } from './pickLine.ts'
import type { PriceRow } from './priceRows.ts'

/** The headings of a list of ours: chosen so that the reading finds every column again. */
const headings = ['Supplier', 'Code', 'Description', 'Unit', 'Price', 'From']

/** The rows shown as a list for a spreadsheet; an item without a price stands there without one. */
export const exportList = (rows: readonly PriceRow[]): string =>
  writeList([
    headings,
    ...rows.map(({ supplier, code, item, line, now }) => [
      supplier?.name ?? '',
      code,
      item.name,
      line ? writeUnit(line) : '',
      now ? plainSum(now.pence) : '',
      now?.startsOn ?? '',
    ]),
  ])

/** What a list is held against, from the rows of the book. Items no longer offered are left out. */
export const bookLines = (rows: readonly PriceRow[]): BookLine[] =>
  rows
    .filter(({ item }) => !item.retired)
    .map(({ item, supplier, code, line }) => ({
      itemId: item.id,
      supplierId: supplier?.id ?? null,
      code,
      words: item.name,
      unit: line?.unit ?? null,
      size: line?.size ?? null,
    }))
