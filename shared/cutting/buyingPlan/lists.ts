/** So many whole numbers, or numbers of any kind: 0 all. */
export const wholes = (count: number): Int32Array<ArrayBuffer> => new Int32Array(count)
export const reals = (count: number): Float64Array<ArrayBuffer> => new Float64Array(count)
