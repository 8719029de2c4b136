/** A paper's bytes, as they came in text, to a thing the window can show. The bytes are the issued ones, untouched. */
export const asPdf = (base64: string): Blob =>
  new Blob([Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0))], { type: 'application/pdf' })
