import { readFileSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { deflateSync } from 'node:zlib'
import { describe, expect, it } from 'vitest'
import { header } from '../fixtures/cards.ts'
import { wholeCards } from '../fixtures/wholeCards.ts'
import { fullSizeOf } from '../fullSize/fullSizeCases.ts'
import { painted } from '../papers/paperReading.ts'
import { everyPaper, sheetInput } from './everySheet.ts'
import { rasters, type Raster } from './raster.ts'

/**
 * Every page of every sheet of one gate, small, on three pictures to be looked at (the last of what is full size): `npm run sheets`. They are kept beside this file and shown in
 * the README; run it again after a paper has changed, and look.
 */
const [gate, dpi, across, space] = ['09', 44, 7, 10]

/** Grey of the board that the pages lie on. */
const board = 200

/** Pages in rows on a board, as one picture. Labels of a roll lie where a page would. */
function laidOut(pages: Raster[]): Raster {
  const [wide, high] = [
    Math.max(...pages.map(({ width }) => width)),
    Math.max(...pages.map(({ height }) => height)),
  ]
  const width = space + across * (wide + space)
  const height = space + Math.ceil(pages.length / across) * (high + space)
  const data = new Uint8Array(width * height).fill(board)
  pages.forEach((page, i) => {
    const left = space + (i % across) * (wide + space)
    const top = space + Math.floor(i / across) * (high + space)
    for (let y = 0; y < page.height; y++)
      data.set(page.data.subarray(y * page.width, (y + 1) * page.width), (top + y) * width + left)
  })
  return { width, height, perMm: dpi / 25.4, data }
}

const table = Uint32Array.from({ length: 256 }, (_, n) => {
  let c = n
  for (let k = 0; k < 8; k++) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1
  return c
})

const sumOf = (bytes: Uint8Array): number =>
  (bytes.reduce((sum, byte) => (table[(sum ^ byte) & 0xff] ?? 0) ^ (sum >>> 8), 0xffffffff) ^ 0xffffffff) >>>
  0

function chunk(name: string, bytes: Uint8Array): Buffer {
  const body = Buffer.concat([Buffer.from(name, 'latin1'), bytes])
  const [length, sum] = [Buffer.alloc(4), Buffer.alloc(4)]
  length.writeUInt32BE(bytes.length)
  sum.writeUInt32BE(sumOf(body))
  return Buffer.concat([length, body, sum])
}

/** A picture as PNG (ISO/IEC 15948) in sixteen greys: small enough to be kept. */
function png({ width, height, data }: Raster): Buffer {
  const row = Math.ceil(width / 2)
  const lines = Buffer.alloc(height * (row + 1))
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const at = y * (row + 1) + 1 + (x >> 1)
      const grey = Math.round((data[y * width + x] ?? 255) / 17)
      lines[at] = (lines[at] ?? 0) | (x % 2 === 0 ? grey << 4 : grey)
    }
  const head = Buffer.alloc(13)
  head.writeUInt32BE(width, 0)
  head.writeUInt32BE(height, 4)
  head.set([4, 0, 0, 0, 0], 8)
  const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])
  return Buffer.concat([
    signature,
    chunk('IHDR', head),
    chunk('IDAT', deflateSync(lines, { level: 9 })),
    chunk('IEND', Buffer.alloc(0)),
  ])
}

/** The pages picture by picture. */
async function boards(): Promise<Raster[][]> {
  const card = wholeCards.find(({ name }) => name.startsWith(gate))?.input
  if (!card) throw new Error(`no gate ${gate}`)
  const pages: Raster[] = []
  for (const { name, paper } of everyPaper(await sheetInput({ ...card, header })))
    pages.push(...rasters(await painted(paper), { dpi }).slice(0, name.endsWith('roll') ? 1 : undefined))
  const half = Math.ceil(pages.length / 2)
  const fullSize = rasters(await painted(fullSizeOf({ ...card, header })), { dpi })
  return [pages.slice(0, half), pages.slice(half), fullSize]
}

describe('pictures of every page of every sheet', () => {
  it('are kept, no page missing, each small enough', async () => {
    for (const [i, some] of (await boards()).entries()) {
      const place = fileURLToPath(new URL(`everySheet-${i + 1}.png`, import.meta.url))
      const board = laidOut(some)
      if (process.env['BRACEWORK_SHEETS'] === '1') writeFileSync(place, png(board))
      const kept = readFileSync(place)
      expect([kept.readUInt32BE(16), kept.readUInt32BE(20)]).toEqual([board.width, board.height])
      expect(kept.length).toBeLessThan(600_000)
    }
  })
})
