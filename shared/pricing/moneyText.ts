import { bad, good, type Result } from '../problem.ts'
import { isPence, mostPence, pence, type Pence } from './pence.ts'
import type { Currency } from './terms.ts'

/** The sign a sum is written with. */
export const currencySigns: Record<Currency, string> = { GBP: '£', EUR: '€', USD: '$' }

const minus = '−'

const grouped = (digits: string): string => digits.replace(/\B(?=(\d{3})+$)/g, ',')

/** A sum without its sign, for a column of figures: 123450 is 1,234.50, −5 is −0.05. */
export function writeSum(amount: Pence): string {
  const digits = String(Math.abs(amount)).padStart(3, '0')
  return `${amount < 0 ? minus : ''}${grouped(digits.slice(0, -2))}.${digits.slice(-2)}`
}

/** A sum as it is printed: 123450 in pounds is £1,234.50, −1234 in euros is −€12.34. */
export function writeMoney(amount: Pence, currency: Currency): string {
  const sum = writeSum(amount)
  return amount < 0 ? `${minus}${currencySigns[currency]}${sum.slice(1)}` : `${currencySigns[currency]}${sum}`
}

const accepted = (currency: Currency): string => {
  const sign = currencySigns[currency]
  return `Type it as ${sign}12.34, 12.34, 12,34 ${sign} or 1,234.50.`
}

const refused = (code: string, message: string) => bad<Pence>({ code, field: '', message })

const shown = (text: string): string => `‘${text.length > 24 ? `${text.slice(0, 24)}…` : text}’`

/** The figures of a sum without its sign and spaces at the ends, or what is wrong with the sign. */
function bare(text: string, currency: Currency): string | undefined {
  const sign = currencySigns[currency]
  const ends = new RegExp(`^(?:\\${sign}|${currency})?\\s*(.*?)\\s*(?:\\${sign}|${currency})?$`, 'i').exec(
    text,
  )
  const figures = ends?.[1] ?? ''
  return /[^\d.,\s'’]/.test(figures) ? undefined : figures
}

/** Groups of three with one mark between them throughout, then a different mark and the part below one. */
const withGroups = /^([1-9]\d{0,2})([.,\s'’])\d{3}(?:\2\d{3})*(?:(?!\2)[.,](\d{1,2}))?$/

/** Whole and hundredths of figures with at most one decimal mark; undefined where they can't be told. */
function parts(figures: string): { whole: string; after: string } | undefined {
  const plain = /^(\d*)(?:[.,](\d{1,2}))?$/.exec(figures)
  if (plain && figures !== '') return { whole: plain[1] ?? '', after: plain[2] ?? '' }
  const groups = withGroups.exec(figures)
  if (!groups) return undefined
  const after = groups[3] ?? ''
  const before = after === '' ? figures : figures.slice(0, -after.length - 1)
  return { whole: before.replace(/\D/g, ''), after }
}

/**
 * Reads a sum of money as typed or pasted: £12.34, 12.34, 12,34 €, 1,234.50, 1.234,50, 1 234,50, −5, 8p. Refused with what is
 * accepted: another currency's sign, parts of a penny, and 1,234 or 1.234, which is a thousand to some and one and a bit to others.
 * readMoney('1,234.50', 'GBP') is 123450 pence. Never throws on a text.
 */
export function readMoney(text: string, currency: Currency): Result<Pence> {
  const trimmed = text
    .normalize('NFKC')
    .replace(/\u2212/g, '-')
    .trim()
  if (trimmed.length > 40)
    return refused('money-unclear', `${shown(text)} is too long for a sum. ${accepted(currency)}`)
  const negative = /^-|^[£€$]\s*-/.test(trimmed)
  const unsigned = negative ? trimmed.replace('-', '').trim() : trimmed
  const pennies = currency === 'GBP' ? /^(\d+)\s*p$/i.exec(unsigned) : null
  const figures = pennies ? '' : bare(unsigned, currency)
  if (figures !== undefined && /^[1-9]\d{0,2}[.,]\d{3}$/.test(figures)) {
    const [whole = '', after = ''] = figures.split(/[.,]/)
    return refused(
      'money-ambiguous',
      `${shown(text)} can be ${whole}${after} or ${whole}.${after}. Type ${whole}${after}.00, or ${whole}.${after.slice(0, 2)}.`,
    )
  }
  const found = pennies ? { whole: '', after: '' } : parts(figures ?? '')
  if (!found)
    return refused('money-unclear', `${shown(text)} is not clear as a sum of money. ${accepted(currency)}`)
  const amount = pennies ? Number(pennies[1]) : Number(`${found.whole}${found.after.padEnd(2, '0')}`)
  if (!isPence(amount))
    return refused(
      'money-large',
      `${shown(text)} is over ${writeMoney(pence(mostPence), currency)}, the most that is kept.`,
    )
  return good(pence(negative ? 0 - amount : amount))
}
