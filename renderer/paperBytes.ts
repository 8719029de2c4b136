/** A paper's bytes, as they came in text. */
export const bytesOf = (base64: string): Uint8Array<ArrayBuffer> =>
  Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0))

/** A paper's bytes to a thing the window can show. The bytes are the issued ones, untouched. */
export const asPdf = (base64: string): Blob => new Blob([bytesOf(base64)], { type: 'application/pdf' })

/** The SHA-256 of a paper's bytes, by which what is shown is asked for again to be printed. */
export async function markOf(bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes))
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, '0')).join('')
}
