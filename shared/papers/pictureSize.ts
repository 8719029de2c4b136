const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/'
const values = new Map([...letters].map((letter, value) => [letter, value]))

/** Bytes of a text in base64; undefined for what isn't base64. */
function bytesOf(base64: string): Uint8Array | undefined {
  const text = base64.replace(/=+$/, '')
  const bytes = new Uint8Array(Math.floor((text.length * 3) / 4))
  let [held, bits, at] = [0, 0, 0]
  for (const letter of text) {
    const value = values.get(letter)
    if (value === undefined) return undefined
    held = ((held << 6) | value) & 0xffff
    bits += 6
    if (bits < 8) continue
    bits -= 8
    bytes[at++] = (held >> bits) & 0xff
  }
  return bytes
}

/** A picture's kind and its size in dots. */
export type PictureSize = { format: 'png' | 'jpeg'; width: number; height: number }

const starts = (bytes: Uint8Array, signature: readonly number[]): boolean =>
  signature.every((byte, i) => bytes[i] === byte)

const pair = (bytes: Uint8Array, at: number): number => (bytes[at] ?? 0) * 256 + (bytes[at + 1] ?? 0)

/** PNG (ISO/IEC 15948): width and height stand in the header chunk, which comes first. */
function pngSize(bytes: Uint8Array): PictureSize {
  const long = (at: number) => pair(bytes, at) * 65536 + pair(bytes, at + 2)
  return { format: 'png', width: long(16), height: long(20) }
}

/** JPEG (ISO/IEC 10918-1): height and width stand in the start-of-frame segment, C0 to CF but for C4, C8 and CC. */
function jpegSize(bytes: Uint8Array): PictureSize | undefined {
  let at = 2
  while (at + 9 < bytes.length) {
    if (bytes[at] !== 0xff) return undefined
    const marker = bytes[at + 1] ?? 0
    if (marker === 0xff) {
      at += 1
      continue
    }
    const isFrame = marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker)
    if (isFrame) return { format: 'jpeg', width: pair(bytes, at + 7), height: pair(bytes, at + 5) }
    at += 2 + pair(bytes, at + 2)
  }
  return undefined
}

/**
 * The size of a PNG or JPEG in base64, read from its head. undefined for anything else, for a picture of no size, and for one cut off
 * before its size: such a logo isn't printed.
 */
export function pictureSize(base64: string): PictureSize | undefined {
  const bytes = bytesOf(base64)
  if (!bytes) return undefined
  const found = starts(bytes, [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])
    ? pngSize(bytes)
    : starts(bytes, [0xff, 0xd8])
      ? jpegSize(bytes)
      : undefined
  return found && found.width > 0 && found.height > 0 ? found : undefined
}
