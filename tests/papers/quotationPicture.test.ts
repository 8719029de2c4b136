import { PDFDocument } from 'pdf-lib'
import { deflateSync, crc32 } from 'node:zlib'
import { describe, expect, it } from 'vitest'
import { makeQuotation } from '../../electron/makeQuotation.ts'
import { pictureSize } from '../../shared/papers/pictureSize.ts'
import { quotation } from '../../shared/papers/quotation.ts'
import type { PagePicture } from '../../shared/papers/page.ts'
import { business, moneyOf, quotationOf, threeTimbers } from './quotationInputs.ts'

function chunk(name: string, body: Buffer): Buffer {
  const out = Buffer.alloc(12 + body.length)
  out.writeUInt32BE(body.length, 0)
  out.write(name, 4, 'latin1')
  body.copy(out, 8)
  out.writeUInt32BE(crc32(out.subarray(4, 8 + body.length)), 8 + body.length)
  return out
}

/** A plain red PNG, made here. */
function png(width: number, height: number): string {
  const head = Buffer.alloc(13)
  head.writeUInt32BE(width, 0)
  head.writeUInt32BE(height, 4)
  head.set([8, 2], 8)
  const row = Buffer.concat([Buffer.from([0]), Buffer.alloc(width * 3, Buffer.from([170, 30, 20]))])
  const rows = deflateSync(Buffer.concat(Array.from({ length: height }, () => row)))
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', head),
    chunk('IDAT', rows),
    chunk('IEND', Buffer.alloc(0)),
  ]).toString('base64')
}

/** The head of a JPEG: an application segment, a table, then a frame of 77 × 33. */
const jpegHead = Buffer.from([
  ...[0xff, 0xd8, 0xff, 0xe0, 0, 4, 1, 2, 0xff, 0xc4, 0, 3, 9],
  ...[0xff, 0xc2, 0, 11, 8, 0, 33, 0, 77, 1, 1, 0x11, 0, 0xff, 0xd9],
]).toString('base64')

const withLogo = (logo: string) => quotationOf({ business: { ...business, logo } })
const picturesOf = (logo: string): PagePicture[] =>
  quotation(withLogo(logo)).pages.flatMap((page) =>
    page.marks.flatMap((mark) => (mark.kind === 'picture' ? [mark] : [])),
  )

describe('a logo', () => {
  it('has its size read from its head, whether PNG or JPEG', () => {
    expect(pictureSize(png(61, 23))).toEqual({ format: 'png', width: 61, height: 23 })
    expect(pictureSize(jpegHead)).toEqual({ format: 'jpeg', width: 77, height: 33 })
  })

  it('that is no picture, is cut off, or has no size is left out', () => {
    const gif = Buffer.from('GIF89a, of another kind').toString('base64')
    for (const wrong of ['', '!!', gif, png(61, 23).slice(0, 20), png(0, 5), jpegHead.slice(0, 12)]) {
      expect(pictureSize(wrong)).toBeUndefined()
      expect(picturesOf(wrong)).toEqual([])
    }
  })

  it('stands once, on page 1, at its own proportions within 50 × 22 mm', () => {
    for (const [width, height] of [
      [400, 90],
      [90, 400],
    ] as const) {
      const [logo, ...others] = picturesOf(png(width, height))
      expect(others).toEqual([])
      expect((logo?.width ?? NaN) / (logo?.height ?? NaN)).toBeCloseTo(width / height, 9)
      expect(Math.max((logo?.width ?? NaN) / 50, (logo?.height ?? NaN) / 22)).toBeCloseTo(1, 9)
    }
  })

  it('is painted into the quotation, and changes it', async () => {
    const [plain, red] = [await makeQuotation(quotationOf()), await makeQuotation(withLogo(png(40, 20)))]
    expect(red.pages).toBe(plain.pages)
    const images = async (bytes: Uint8Array) =>
      (await PDFDocument.load(bytes)).context
        .enumerateIndirectObjects()
        .filter(([, object]) => object.toString().includes('/Subtype /Image')).length
    expect(await images(plain.bytes)).toBe(0)
    expect(await images(red.bytes)).toBe(1)
  })

  it('whose body is damaged is told in words', async () => {
    const damaged = Buffer.from(png(40, 20), 'base64')
    damaged.fill(0xee, 33)
    await expect(makeQuotation(withLogo(damaged.toString('base64')))).rejects.toThrow(
      'can’t be read as a PNG or JPEG',
    )
  })
})

describe('a quotation’s bytes', () => {
  it('are the same each time', async () => {
    const input = { ...withLogo(png(40, 20)), money: moneyOf(threeTimbers) }
    const [one, other] = [await makeQuotation(input), await makeQuotation(input)]
    expect(Buffer.compare(Buffer.from(one.bytes), Buffer.from(other.bytes))).toBe(0)
    expect((await PDFDocument.load(one.bytes)).getPageCount()).toBe(one.pages)
  })
})
