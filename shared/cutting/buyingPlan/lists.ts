/** So many whole numbers, or numbers of any kind: 0 all. */
export const wholes = (count: number): Int32Array<ArrayBuffer> => new Int32Array(count)
export const reals = (count: number): Float64Array<ArrayBuffer> => new Float64Array(count)

/** So many numbers in the room of a list no longer needed, where there is enough; they aren't cleared. */
export const inRoomOf = ({ buffer }: Float64Array<ArrayBuffer>, count: number): Float64Array<ArrayBuffer> =>
  buffer.byteLength < 8 * count ? reals(2 * count).subarray(0, count) : new Float64Array(buffer, 0, count)
