import { wholeBp } from '../pricing/percent.ts'

const withTax =
  /\b(?:inc|incl|including|with)\b\.?\s*(?:of\s+)?(?:vat|tax)\b|\b(?:vat|tax)[\s-]*(?:inc|incl|included|inclusive)\b|\bgross\b/i

const exceptTax =
  /\b(?:ex|exc|excl|excluding|without|net of)\b\.?\s*(?:vat|tax)\b|\b(?:vat|tax)[\s-]*(?:excl|excluded|exclusive)\b/i

/** Whether a price column's heading says that tax is left out: 'Price ex VAT', 'VAT excluded'. */
export const saysWithoutTax = (heading: string): boolean => exceptTax.test(heading)

/** Whether a price column's heading says that tax is in its prices: 'Price inc VAT', 'Gross', 'VAT inclusive'. */
export const saysWithTax = (heading: string): boolean => withTax.test(heading)

/**
 * What a listed price is without the tax in it, in hundredths before it is made whole; bp: the rate, null where the list leaves tax out already.
 * £12.00 with 20 % in it is £10.00, £9.99 is £8.325.
 */
export const withoutTax = (hundredths: number, bp: number | null): number =>
  bp === null ? hundredths : (hundredths * wholeBp) / (wholeBp + bp)
