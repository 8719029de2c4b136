import { bad, good, type Result } from '../problem.ts'

/** Percents are kept as basis points: 20 % is 2000, 17.5 % is 1750. */
export const wholeBp = 10_000

/** A percent as it is printed, without closing noughts: 2000 is 20 %, 1667 is 16.67 %, −250 is −2.5 %. */
export function writePercent(bp: number): string {
  const figures = (Math.abs(bp) / 100).toFixed(2).replace(/\.?0+$/, '')
  return `${bp < 0 ? '−' : ''}${figures} %`
}

/** From which to which percent a field takes, in basis points. */
export type PercentLimits = { least?: number; most?: number }

/**
 * Reads a percent: 20, 20 %, 17.5%, 17,5, −3. At most two places after the mark. readPercent('17,5 %') is 1750 basis points.
 * Takes 0 to 100 % unless told; what it takes is named when it refuses.
 */
export function readPercent(text: string, { least = 0, most = wholeBp }: PercentLimits = {}): Result<number> {
  const found = /^([-−]?)(\d{0,5})(?:[.,](\d{1,2}))?\s*%?$/.exec(text.trim())
  const [, sign = '', whole = '', after = ''] = found ?? []
  const accepted = `a percent from ${writePercent(least)} to ${writePercent(most)}, such as 17.5`
  const bp = Number(`${whole}${after.padEnd(2, '0')}`) * (sign === '' ? 1 : -1) + 0
  if (!found || whole + after === '' || bp < least || bp > most)
    return bad({
      code: 'percent',
      field: '',
      message: `‘${text.trim().slice(0, 24)}’ was typed; ${accepted}, is taken.`,
    })
  return good(bp)
}
