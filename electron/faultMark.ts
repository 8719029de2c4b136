import { randomBytes } from 'node:crypto'

/** Letters and figures that aren't taken for one another when read out over the telephone. */
const signs = 'ABCDEFGHJKLMNPQRTUVWXY346789'

/** A fault's mark: six signs that stand in the log and before the person, so that one finds the other. 'K7QXMA', say. */
export const faultMark = (): string =>
  [...randomBytes(6)].map((byte) => signs[byte % signs.length] ?? 'A').join('')
