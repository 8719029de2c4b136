import { jpegHead } from './jpegFacts.ts'

/** A kind of picture, known by its first bytes. heic: as some telephones make, which can't be shown here. */
export type PictureKind = 'jpeg' | 'png' | 'webp' | 'heic'

const marked = (bytes: Uint8Array, at: number, mark: string): boolean =>
  [...mark].every((letter, place) => bytes[at + place] === letter.charCodeAt(0))

/** What a file is by its own first bytes, whatever its name says; undefined for anything that is none of these. */
export function pictureKind(bytes: Uint8Array): PictureKind | undefined {
  if (bytes[0] === 0xff && bytes[1] === 0xd8 && bytes[2] === 0xff) return 'jpeg'
  if (bytes[0] === 0x89 && marked(bytes, 1, 'PNG\r\n\x1a\n')) return 'png'
  if (marked(bytes, 0, 'RIFF') && marked(bytes, 8, 'WEBP')) return 'webp'
  if (marked(bytes, 4, 'ftyp') && ['heic', 'heix', 'mif1', 'msf1', 'hevc'].some((b) => marked(bytes, 8, b)))
    return 'heic'
  return undefined
}

const big = (bytes: Uint8Array, at: number): number =>
  [0, 1, 2, 3].reduce((sum, place) => sum * 256 + (bytes[at + place] ?? 0), 0)
const little = (bytes: Uint8Array, at: number, count: number): number =>
  Array.from({ length: count }, (_, place) => (bytes[at + place] ?? 0) * 256 ** place).reduce(
    (sum, part) => sum + part,
    0,
  )

/** A WebP's size: by its extended head, its lossless one or its lossy one (RFC 9649, sections 2.5 to 2.7). */
function webpDots(bytes: Uint8Array): number {
  if (marked(bytes, 12, 'VP8X')) return (little(bytes, 24, 3) + 1) * (little(bytes, 27, 3) + 1)
  if (marked(bytes, 12, 'VP8L')) {
    const bits = little(bytes, 21, 4)
    return ((bits % 16384) + 1) * ((Math.floor(bits / 16384) % 16384) + 1)
  }
  return (little(bytes, 26, 2) % 16384) * (little(bytes, 28, 2) % 16384)
}

/** How many dots a picture says it has, before any of it is opened; 0 where its head can't be read. */
export function dotsIn(bytes: Uint8Array, kind: PictureKind): number {
  if (kind === 'png') return big(bytes, 16) * big(bytes, 20)
  if (kind === 'webp') return webpDots(bytes)
  const facts = jpegHead(bytes)
  return facts ? facts.width * facts.height : 0
}
