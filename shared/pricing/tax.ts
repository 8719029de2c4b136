import { pence, toPence, type Pence } from './pence.ts'
import { wholeBp } from './percent.ts'
import type { TaxRate, TaxRounding } from './terms.ts'

/**
 * The rate of tax on a day: the one that started last, on it or before. undefined where none has started yet. With 17.5 % from
 * 2010-01-01 and 20 % from 2011-01-04, 2011-01-03 is 1750 and 2011-01-04 is 2000.
 */
export function taxRateOn(rates: readonly TaxRate[], day: string): number | undefined {
  let latest: TaxRate | undefined
  for (const rate of rates) if (rate.from <= day && (!latest || rate.from >= latest.from)) latest = rate
  return latest?.bp
}

/** Tax by line and in all. tenths: tenths of a penny, one a line, adding up to totalTenths; tax: the whole pennies asked for. */
export type Taxed = { tenths: number[]; totalTenths: number; tax: Pence }

/** A sum × basis points holds its tax in thousandths of a tenth of a penny. */
const perTenth = 1000

/** Rounded to a multiple of a step: 'down' towards nothing, 'nearest' a half away from it. */
function rounded(amount: number, step: number, way: 'down' | 'nearest'): number {
  const size = Math.abs(amount)
  const steps = Math.floor((way === 'down' ? size : size + step / 2) / step)
  return amount < 0 ? 0 - steps * step : steps * step
}

const lineSteps: Partial<Record<TaxRounding, { step: number; way: 'down' | 'nearest' }>> = {
  'line down to 0.1': { step: perTenth, way: 'down' },
  'line nearest 0.5': { step: 5 * perTenth, way: 'nearest' },
  'line nearest 1': { step: 10 * perTenth, way: 'nearest' },
}

/** Each line's tax by itself; the total then made whole by rounding down, as it may be on any invoice. */
function byLine(
  nets: readonly Pence[],
  bp: number,
  { step, way }: { step: number; way: 'down' | 'nearest' },
): Taxed {
  const tenths = nets.map((net) => rounded(net * bp, step, way) / perTenth)
  const totalTenths = tenths.reduce((sum, one) => sum + one, 0)
  return { tenths, totalTenths, tax: pence(rounded(totalTenths, 10, 'down') / 10) }
}

/** Tax on the total; what is told beside each line is its share, running, so that the shares add up. */
function onTotal(nets: readonly Pence[], bp: number, way: 'down' | 'nearest'): Taxed {
  const upTo = (net: number) => rounded(net * bp, perTenth, 'down') / perTenth
  let [running, told] = [0, 0]
  const tenths = nets.map((net) => {
    running += net
    const share = upTo(running) - told
    told += share
    return share
  })
  return { tenths, totalTenths: told, tax: pence(rounded(told, 10, way) / 10) }
}

/**
 * Tax at a rate (basis points) on the net lines of a paper. VAT Notice 700 para 17.5, as HMRC manual VATREC12010 tells it, lets the total
 * be rounded down to a whole penny, and a line down to 0.1p or to the nearest 0.5p or 1p; it lets no line be rounded down to a whole
 * penny. 'total nearest' is the ordinary way. Three lines of £0.99 at 20 %: £0.60 by 'line nearest 1', £0.59 by 'total down'.
 * £12.34 is 246 pence down, 247 nearest. From memory, the Notice's own example: 86.76p is 86.7p down to 0.1, 87p to the nearest 1.
 */
export function taxOn(nets: readonly Pence[], bp: number, rounding: TaxRounding): Taxed {
  const line = lineSteps[rounding]
  return line ? byLine(nets, bp, line) : onTotal(nets, bp, rounding === 'total down' ? 'down' : 'nearest')
}

/** The net that a sum with tax in it holds, to the nearest penny: at 20 % five sixths, so £12.00 holds £10.00 net. */
export const netOfGross = (gross: Pence, bp: number): Pence => toPence((gross * wholeBp) / (wholeBp + bp))
