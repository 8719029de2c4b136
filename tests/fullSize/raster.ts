import { execFile } from 'node:child_process'
import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { promisify } from 'node:util'

const run = promisify(execFile)

/** A printed page as black and white dots: dark says whether the dot at a column and row, from the top left, is inked. */
export type Raster = { width: number; height: number; perMm: number; dark: (x: number, y: number) => boolean }

/** A dot darker than this is inked; tints of a filled face are lighter, grey lines darker. */
const inkedBelow = 170

/**
 * Reads the grey dots that pdftoppm writes (PGM, P5): a head of words, then a byte a dot. Not its black and white, which scatters the dots of
 * a grey line otherwise in every run.
 */
function readDots(bytes: Buffer, dpi: number): { raster: Raster; rest: Buffer } {
  const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.subarray(0, 64).toString('latin1'))
  if (!head) throw new Error('no picture came')
  const [width, height] = [Number(head[1]), Number(head[2])]
  const start = head[0].length
  const dots = bytes.subarray(start, start + width * height)
  const dark = (x: number, y: number): boolean =>
    x >= 0 && y >= 0 && x < width && y < height && (dots[y * width + x] ?? 255) < inkedBelow
  return { raster: { width, height, perMm: dpi / 25.4, dark }, rest: bytes.subarray(start + width * height) }
}

/** Pages of a PDF as they print in black and white, by poppler: all of them, or one. */
export async function rasters(pdf: Uint8Array, dpi: number, page?: number): Promise<Raster[]> {
  const folder = await mkdtemp(join(tmpdir(), 'full-size-'))
  try {
    const file = join(folder, 'paper.pdf')
    await writeFile(file, pdf)
    const which = page === undefined ? [] : ['-f', String(page), '-l', String(page)]
    const { stdout } = await run(
      'pdftoppm',
      ['-r', String(dpi), '-gray', '-aaVector', 'no', ...which, file],
      {
        encoding: 'buffer',
        maxBuffer: 2 ** 31,
      },
    )
    const out: Raster[] = []
    for (let bytes: Buffer = stdout; bytes.length > 0;) {
      const { raster, rest } = readDots(bytes, dpi)
      out.push(raster)
      bytes = rest
    }
    return out
  } finally {
    await rm(folder, { recursive: true, force: true })
  }
}

/** Space between the ink and each edge of the page, mm. */
export function clearEdges({ width, height, perMm, dark }: Raster) {
  let [left, right, top, bottom] = [width, -1, height, -1]
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++)
      if (dark(x, y)) {
        left = Math.min(left, x)
        right = Math.max(right, x)
        top = Math.min(top, y)
        bottom = Math.max(bottom, y)
      }
  const mm = (dots: number): number => dots / perMm
  return { left: mm(left), right: mm(width - 1 - right), top: mm(top), bottom: mm(height - 1 - bottom) }
}
