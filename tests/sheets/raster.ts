import { execFileSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

/** A part of a page, mm from its top left corner. */
export type Part = { x: number; y: number; width: number; height: number }

/** A page, or a part of it, as a printer's dots: 0 black to 255 white, row by row. perMm: dots to a millimetre. */
export type Raster = { width: number; height: number; perMm: number; data: Uint8Array }

/** Pictures written one after another in the plain grey map's binary form (P5, one byte a dot). */
function greyMaps(bytes: Uint8Array, perMm: number): Raster[] {
  const out: Raster[] = []
  let at = 0
  while (at < bytes.length) {
    const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(
      Buffer.from(bytes.subarray(at, at + 40)).toString('latin1'),
    )
    if (!head) throw new Error('no grey picture of a page')
    const [width, height] = [Number(head[1]), Number(head[2])]
    at += head[0].length
    out.push({ width, height, perMm, data: bytes.subarray(at, at + width * height) })
    at += width * height
  }
  return out
}

/** Every page of a PDF as poppler's pdftoppm prints it, or one part of each page. */
export function rasters(
  pdf: Uint8Array,
  { dpi, part, page }: { dpi: number; part?: Part; page?: number },
): Raster[] {
  const folder = mkdtempSync(join(tmpdir(), 'bracework-paper-'))
  const perMm = dpi / 25.4
  const dots = (mm: number) => String(Math.round(mm * perMm))
  try {
    const file = join(folder, 'paper.pdf')
    writeFileSync(file, pdf)
    const crop = part
      ? ['-x', dots(part.x), '-y', dots(part.y), '-W', dots(part.width), '-H', dots(part.height)]
      : []
    const only = page === undefined ? [] : ['-f', String(page), '-l', String(page)]
    const made = execFileSync('pdftoppm', ['-r', String(dpi), '-gray', ...crop, ...only, file], {
      maxBuffer: 2 ** 30,
    })
    return greyMaps(made, perMm)
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

/** Whether a dot is ink at all, however pale. */
export const inked = (grey: number): boolean => grey < 250

/** The stretches of ink along a row of dots, from dot to dot. */
export function runsAcross({ width, data }: Raster, row: number, darker = 128): [number, number][] {
  const runs: [number, number][] = []
  for (let x = 0; x < width; x++) {
    if ((data[row * width + x] ?? 255) >= darker) continue
    const last = runs.at(-1)
    if (last && last[1] === x) last[1] = x + 1
    else runs.push([x, x + 1])
  }
  return runs
}

/** The same picture with rows for columns. */
export function turned({ width, height, perMm, data }: Raster): Raster {
  const out = new Uint8Array(data.length)
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) out[x * height + y] = data[y * width + x] ?? 255
  return { width: height, height: width, perMm, data: out }
}
