/**
 * A spreadsheet works out a cell that begins with = + - @, a tab or a carriage return. Ours are guarded by an apostrophe when a list is
 * written, and the guard is taken off when a list is read. A cell that already stands behind apostrophes gets one more, so that
 * taking off always gives back what was written.
 */
const wouldBeWorkedOut = /^'*[=+\-@\t\r]/
const isGuarded = /^'+[=+\-@\t\r]/
const plainNegative = /^-\d+(?:[.,]\d+)?$/

/** The cell as it is written: '=A1' becomes "'=A1", while a plain negative number ('-4.20') stays a number. */
export const guard = (cell: string): string =>
  wouldBeWorkedOut.test(cell) && !plainNegative.test(cell) ? `'${cell}` : cell

/** The cell without our guard. Others' ways of keeping a code's noughts, ="00123", are taken off too. */
export function unguard(cell: string): string {
  if (isGuarded.test(cell)) return cell.slice(1)
  return /^="[^"]*"$/.test(cell) ? cell.slice(2, -1) : cell
}
