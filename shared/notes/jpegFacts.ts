/** What a JPEG says of itself at its head: its size in dots as stored, and whether a camera's own notes (where, when, which way up) are in it. */
export type JpegFacts = { width: number; height: number; cameraNotes: boolean }

const startOfImage = 0xd8
const startOfScan = 0xda
/** Start of frame markers: all of 0xC0 to 0xCF but tables (C4), extension (C8) and arithmetic settings (CC). ISO/IEC 10918-1, table B.1. */
const isFrame = (marker: number): boolean =>
  marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker)
/** Application segments that cameras and editors fill: APP1 (Exif, XMP), APP13 (IPTC). */
const isCameraNotes = (marker: number): boolean => marker === 0xe1 || marker === 0xed

/**
 * Reads a JPEG's head, segment by segment up to its scan, whatever comes after it; undefined for anything that isn't one. Source:
 * ISO/IEC 10918-1, annex B.
 */
export function jpegHead(bytes: Uint8Array): JpegFacts | undefined {
  if (bytes[0] !== 0xff || bytes[1] !== startOfImage) return undefined
  let size: { width: number; height: number } | undefined
  let cameraNotes = false
  for (let at = 2; at + 9 < bytes.length;) {
    const marker = bytes[at + 1] ?? 0
    if (bytes[at] !== 0xff) return undefined
    if (marker === 0xff) {
      at += 1
      continue
    }
    const two = (place: number): number => ((bytes[place] ?? 0) << 8) | (bytes[place + 1] ?? 0)
    if (isFrame(marker)) size = { height: two(at + 5), width: two(at + 7) }
    if (isCameraNotes(marker)) cameraNotes = true
    if (marker === startOfScan)
      return size && size.width > 0 && size.height > 0 ? { ...size, cameraNotes } : undefined
    at += 2 + two(at + 2)
  }
  return undefined
}

/** A whole JPEG's head: undefined also for one that is cut off or goes on after its end mark, as files of some cameras do. */
export function jpegFacts(bytes: Uint8Array): JpegFacts | undefined {
  const last = bytes.length - 1
  return bytes[last - 1] === 0xff && bytes[last] === 0xd9 ? jpegHead(bytes) : undefined
}
