import { createHash } from 'node:crypto'

/**
 * The port a book is usually served on, from 20000 to 29999, always the same for the same book. A browser keeps what a
 * page noted (edits not yet sent, light or dark) by port, so a new one each day would lose it.
 */
export const usualPort = (bookPath: string): number =>
  20000 + (createHash('sha256').update(bookPath).digest().readUInt32BE(0) % 10000)
