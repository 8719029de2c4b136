import { bad, good, type Result } from '../../shared/problem.ts'

/** The largest picture kept as a logo, bytes: 0.7 MB prints sharp at any size a letterhead has, and fits in one request with the terms. */
export const mostLogoBytes = 700_000

const begins = (bytes: Uint8Array, mark: readonly number[]): boolean =>
  mark.every((byte, at) => bytes[at] === byte)

/** What a picture is by its own first bytes, whatever its name says; undefined for anything but PNG and JPEG. */
export function pictureKind(bytes: Uint8Array): 'png' | 'jpeg' | undefined {
  if (begins(bytes, [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])) return 'png'
  return begins(bytes, [0xff, 0xd8, 0xff]) ? 'jpeg' : undefined
}

/** Bytes in base64, a stretch at a time so that a large picture doesn't overrun the stack. */
export function inBase64(bytes: Uint8Array): string {
  const stretch = 0x8000
  let letters = ''
  for (let at = 0; at < bytes.length; at += stretch)
    letters += String.fromCharCode(...bytes.subarray(at, at + stretch))
  return btoa(letters)
}

const refused = (code: string, message: string) => bad<string>({ code, field: 'logo', message })

/** A picture's bytes as they are kept, or why they can't be: too large, or neither PNG nor JPEG. */
export function readLogo(bytes: Uint8Array): Result<string> {
  if (bytes.length > mostLogoBytes)
    return refused('too-large', 'That picture is over 0.7 MB. Make it smaller and choose it again.')
  if (!pictureKind(bytes))
    return refused('no-picture', 'That isn’t a PNG or a JPEG picture. Choose one that is.')
  return good(inBase64(bytes))
}

/** The kind of a kept picture, for showing it: base64 keeps the first bytes recognisable. */
export const keptKind = (base64: string): 'png' | 'jpeg' => (base64.startsWith('iVBOR') ? 'png' : 'jpeg')
