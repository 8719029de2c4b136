/** The check sum of a PNG's pieces (ISO/IEC 15948, annex D), a bit at a time: a piece here is 13 bytes long. */
function checkSum(bytes: Uint8Array): number {
  let sum = 0xffffffff
  for (const byte of bytes) {
    sum ^= byte
    for (let bit = 0; bit < 8; bit += 1) sum = sum & 1 ? (sum >>> 1) ^ 0xedb88320 : sum >>> 1
  }
  return (sum ^ 0xffffffff) >>> 0
}

/** Where a PNG's first piece ends: its mark of 8 bytes and the head of 25. */
const headEnd = 33

/** A PNG that says how many dots go to a metre, so that a page sets it at its true width. The piece goes right after the head. */
export function atSize(png: Uint8Array<ArrayBuffer>, dotsPerMetre: number): Uint8Array<ArrayBuffer> {
  const piece = new Uint8Array(21)
  const view = new DataView(piece.buffer)
  view.setUint32(0, 9)
  piece.set(new TextEncoder().encode('pHYs'), 4)
  view.setUint32(8, Math.round(dotsPerMetre))
  view.setUint32(12, Math.round(dotsPerMetre))
  view.setUint8(16, 1)
  view.setUint32(17, checkSum(piece.subarray(4, 17)))
  const sized = new Uint8Array(png.length + piece.length)
  sized.set(png.subarray(0, headEnd))
  sized.set(piece, headEnd)
  sized.set(png.subarray(headEnd), headEnd + piece.length)
  return sized
}
