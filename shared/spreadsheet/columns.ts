import { decimalOf, isSumWithPence, readAmount, type Decimal } from './amount.ts'
import { unguard } from './guard.ts'
import { saysWithoutTax, saysWithTax } from './listTax.ts'
import { usualCount, type Row } from './rows.ts'
import { readUnit } from './unitWords.ts'

/** What a column of a list can be taken for. */
export const columnRoles = ['code', 'words', 'unit', 'price', 'supplier'] as const
export type ColumnRole = (typeof columnRoles)[number]

/** Which column is what, each by its number from 0; null where there is none. */
export type Columns = Record<ColumnRole, number | null>

/** What is made of a list's start: the row with the headings (null where there is none), the columns, the price's decimal mark. */
export type Layout = { headings: Row | null; columns: Columns; decimal: Decimal; width: number }

const headingWords: Record<ColumnRole, RegExp> = {
  price: /\b(?:net|nett|price|cost|rate|each|trade|preis|prix|£|€|your price)\b|^[£€$]$/i,
  code: /\b(?:code|sku|ref|reference|part|product no|item no|stock no|catalogue|cat|artikel(?:nummer|nr)?|référence)\b/i,
  words: /\b(?:description|desc|product|item|name|what it is|details?|bezeichnung|désignation|libellé)\b/i,
  unit: /\b(?:unit|uom|per|pack|size|sold by|einheit|unité)\b/i,
  supplier: /\b(?:supplier|merchant|lieferant|fournisseur)\b/i,
}
/** Headings that mention a price and aren't the one that is paid: list prices, tax, what stood before. */
const notThePrice = /\b(?:rrp|list|vat|tax|gross|inc|old|previous|was|code|group|qty|quantity)\b/i

/** How far a column under a heading is to be trusted to hold the price: one with tax in it where there is none without. */
function trust(heading: string): number {
  if (saysWithoutTax(heading)) return 1
  if (saysWithTax(heading)) return 0.3
  return notThePrice.test(heading) ? 0.2 : 1
}

const cellsOf = (rows: readonly Row[], column: number): string[] =>
  rows.map(({ cells }) => unguard((cells[column] ?? '').trim())).filter((cell) => cell !== '')

const share = (cells: readonly string[], is: (cell: string) => boolean): number =>
  cells.length === 0 ? 0 : cells.filter(is).length / cells.length

const isHeading = ({ cells }: Row): boolean =>
  !cells.some(isSumWithPence) &&
  cells.filter((cell) => Object.values(headingWords).some((words) => words.test(cell))).length >= 2

/** How likely a column is each thing, from its heading and what stands in it. known: codes that the price book has, in capitals. */
function likelihoods(
  heading: string,
  cells: readonly string[],
  known: ReadonlySet<string>,
): Record<ColumnRole, number> {
  const named = (role: ColumnRole): number => (headingWords[role].test(heading) ? 1 : 0)
  const sums = share(cells, isSumWithPence)
  const figures = share(cells, (cell) => readAmount(cell, 'point').ok || readAmount(cell, 'comma').ok)
  const different = cells.length === 0 ? 0 : new Set(cells).size / cells.length
  const spaced = share(cells, (cell) => /\p{L}\S*\s+\S/u.test(cell))
  return {
    price: trust(heading) * (2 * sums + figures + named('price')),
    code:
      4 * share(cells, (cell) => known.has(codeKey(cell))) +
      2 * named('code') +
      (sums > 0.5 ? 0 : different * share(cells, (cell) => /^\S{2,20}$/.test(cell) && /\d/.test(cell))),
    words: 1.5 * named('words') + 2 * spaced * different,
    unit:
      1.5 * named('unit') + 2 * share(cells, (cell) => readUnit(cell) !== undefined) * (1 - sums) - different,
    supplier: named('supplier') * 3,
  }
}

/** A code as it is compared: without the spaces around it, in capitals. */
export const codeKey = (code: string): string => code.trim().replace(/\s+/g, ' ').toUpperCase()

/** The least that makes a column be taken for a thing. */
const least: Record<ColumnRole, number> = { price: 1, code: 0.6, words: 0.5, unit: 0.9, supplier: 1 }

/**
 * Guesses the headings, the columns and the decimal mark from a list's first rows. The price is settled first, then the code, and a
 * column is one thing only. A guess: it is shown, and can be changed.
 */
export function guessLayout(rows: readonly Row[], known: ReadonlySet<string>): Layout {
  const at = rows.slice(0, 20).findIndex(isHeading)
  const headings = rows[at] ?? null
  const below = headings ? rows.slice(at + 1) : rows
  const width = Math.max(headings?.cells.length ?? 0, usualCount(below).columns)
  const likely = Array.from({ length: width }, (_, column) =>
    likelihoods(headings?.cells[column] ?? '', cellsOf(below, column), known),
  )
  const columns: Columns = { code: null, words: null, unit: null, price: null, supplier: null }
  for (const role of ['price', 'code', 'supplier', 'words', 'unit'] as const) {
    const free = likely
      .map((one, column) => ({ column, score: one[role] }))
      .filter(({ column, score }) => score >= least[role] && !Object.values(columns).includes(column))
    columns[role] = free.reduce((best, one) => (one.score > best.score ? one : best), {
      column: -1,
      score: 0,
    }).column
    if (columns[role] === -1) columns[role] = null
  }
  return { headings, columns, decimal: decimalOfColumn(below, columns.price), width }
}

/** The decimal mark of a column of a list; a point where nothing in it tells. */
export const decimalOfColumn = (rows: readonly Row[], column: number | null): Decimal =>
  column === null ? 'point' : decimalOf(cellsOf(rows, column), 'point')
