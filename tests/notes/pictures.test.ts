import { describe, expect, it } from 'vitest'
import { jpegFacts } from '../../shared/notes/jpegFacts.ts'
import { fitted } from '../../shared/notes/photograph.ts'
import { dotsIn, pictureKind } from '../../shared/notes/pictureKind.ts'
import { asTaken, smallPhotograph } from '../fixtures/photograph.ts'

const jpeg = Buffer.from(smallPhotograph.base64, 'base64')
const bytes = (...parts: (string | number[])[]): Uint8Array =>
  Buffer.concat(
    parts.map((part) => (typeof part === 'string' ? Buffer.from(part, 'latin1') : Buffer.from(part))),
  )

describe('a picture by its first bytes', () => {
  it.each([
    ['a JPEG', jpeg, 'jpeg'],
    ['a PNG', bytes([0x89], 'PNG\r\n\x1a\n'), 'png'],
    ['a WebP', bytes('RIFF', [9, 0, 0, 0], 'WEBPVP8 '), 'webp'],
    ['a telephone’s HEIC', bytes([0, 0, 0, 24], 'ftypheic'), 'heic'],
    ['a GIF', bytes('GIF89a'), undefined],
    ['a drawing', bytes('<svg xmlns='), undefined],
    ['nothing', bytes(), undefined],
  ])('%s is known', (_, given, kind) => {
    expect(pictureKind(given)).toBe(kind)
  })

  it('says how many dots it has before it is opened', () => {
    // PNG: width and height big-endian at 16 and 20 (ISO/IEC 15948, 11.2.2).
    const png = bytes([0x89], 'PNG\r\n\x1a\n', [0, 0, 0, 13], 'IHDR', [0, 0, 0x0f, 0xa0], [0, 0, 0x0b, 0xb8])
    expect(dotsIn(png, 'png')).toBe(4000 * 3000)
    // WebP, RFC 9649: extended (24 bits each, less one), lossless (14 bits each, less one), lossy (14 bits each).
    const webp = (chunk: string, ...rest: number[][]) =>
      bytes('RIFF', [0, 0, 0, 0], 'WEBP', chunk, [0, 0, 0, 0], ...rest)
    expect(dotsIn(webp('VP8X', [0, 0, 0, 0], [0x9f, 0x0f, 0], [0xb7, 0x0b, 0]), 'webp')).toBe(4000 * 3000)
    const bits = 799 + 599 * 16384
    const packed = [bits & 255, (bits >> 8) & 255, (bits >> 16) & 255, (bits >> 24) & 255]
    expect(dotsIn(webp('VP8L', [0x2f], packed), 'webp')).toBe(800 * 600)
    expect(dotsIn(webp('VP8 ', [0, 0, 0, 0x9d, 0x01, 0x2a], [0x20, 0x03], [0x58, 0x02]), 'webp')).toBe(
      800 * 600,
    )
    expect(dotsIn(jpeg, 'jpeg')).toBe(48)
  })
})

describe('a JPEG’s head', () => {
  it('says its size and whether the camera’s notes are in it', () => {
    expect(jpegFacts(jpeg)).toEqual({ width: 8, height: 6, cameraNotes: false })
    expect(jpegFacts(asTaken(jpeg, 6))).toEqual({ width: 8, height: 6, cameraNotes: true })
  })

  it('that is cut off anywhere, or of something else, says nothing, and never for long', () => {
    for (let end = 0; end < jpeg.length; end += 1)
      expect(jpegFacts(jpeg.subarray(0, end)), `${end}`).toBeUndefined()
    const zeros = Buffer.alloc(1_000_000)
    zeros.set([0xff, 0xd8], 0)
    zeros.set([0xff, 0xd9], zeros.length - 2)
    expect(jpegFacts(zeros)).toBeUndefined()
    expect(jpegFacts(zeros.fill(0xff, 2, zeros.length - 1))).toBeUndefined()
  })
})

it('a photograph fits its longest side and is never enlarged', () => {
  expect(fitted({ width: 4000, height: 3000 }, 1600)).toEqual({ width: 1600, height: 1200 })
  expect(fitted({ width: 900, height: 3200 }, 1600)).toEqual({ width: 450, height: 1600 })
  expect(fitted({ width: 320, height: 200 }, 1600)).toEqual({ width: 320, height: 200 })
  expect(fitted({ width: 9000, height: 3 }, 240)).toEqual({ width: 240, height: 1 })
})
