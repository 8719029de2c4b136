import { encodeQR } from 'qr'
import type { PageMark } from '../page.ts'

/** White that scanners want about a square, in modules: ISO/IEC 18004. */
export const quietModules = 4

/** Dark modules of a square as rectangles, in modules from its top left corner. */
type Rectangle = { x: number; y: number; width: number; height: number }

/** Runs of dark modules in a row of the square. */
function runsIn(row: readonly boolean[], y: number): Rectangle[] {
  const runs: Rectangle[] = []
  row.forEach((dark, x) => {
    const last = runs.at(-1)
    if (!dark) return
    if (last && last.x + last.width === x) last.width += 1
    else runs.push({ x, y, width: 1, height: 1 })
  })
  return runs
}

/** Runs that lie over one another alike are one rectangle, so that no hairline of paper shows between rows. */
function rectangles(rows: readonly (readonly boolean[])[]): Rectangle[] {
  const done: Rectangle[] = []
  let open: Rectangle[] = []
  rows.forEach((row, y) => {
    const next: Rectangle[] = []
    for (const run of runsIn(row, y)) {
      const over = open.find(({ x, width }) => x === run.x && width === run.width)
      if (over) over.height += 1
      next.push(over ?? run)
    }
    done.push(...open.filter((one) => !next.includes(one)))
    open = next
  })
  return [...done, ...open]
}

/** The square's own modules; the library gives a border of one with them. */
const modulesFor = (words: string): boolean[][] =>
  encodeQR(words, 'raw', { ecc: 'medium', border: 1 })
    .slice(1, -1)
    .map((row) => row.slice(1, -1))

/**
 * Plain words as a square to be scanned (a QR code after ISO/IEC 18004, with 15 % of it to spare for dust), side mm wide and high without the
 * white about it. Throws when the words are past what a square can hold, some two thousand letters.
 */
export function scanSquare(words: string, at: { x: number; y: number; side: number }): PageMark[] {
  const rows = modulesFor(words)
  const module = at.side / rows.length
  return rectangles(rows).map(({ x, y, width, height }) => ({
    kind: 'box',
    x: at.x + x * module,
    y: at.y + y * module,
    width: width * module,
    height: height * module,
    fill: 'black',
  }))
}

/** Modules along the side of the square that words make: 21, 25, 29 and so on. */
export const modulesOf = (words: string): number => modulesFor(words).length
