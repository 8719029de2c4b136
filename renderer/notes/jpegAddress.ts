import { bytesOf } from '../paperBytes.ts'

/** An address under which a kept JPEG can be shown; it must be let go by URL.revokeObjectURL. */
export const jpegAddress = (base64: string): string =>
  URL.createObjectURL(new Blob([bytesOf(base64)], { type: 'image/jpeg' }))
