import { decimal, type Decimal } from './decimal.ts'

/**
 * What a typed number can mean. plain takes a single mark as the decimal one. thousands is there only for three
 * digits after one mark (1,830), which is a thousands mark to some and a decimal mark to others; fromNought tells
 * that nothing but noughts stood before it (0.625), where nobody means thousands.
 * whole tells that there was no mark at all.
 */
export type Numeral = { plain: Decimal; thousands?: Decimal; fromNought: boolean; whole: boolean }

const sure = (digits: string): Numeral => ({
  plain: decimal(digits),
  fromNought: false,
  whole: !digits.includes('.'),
})

const unclear = (text: string): { wrong: string } => ({
  wrong: `${text} is not clear as a number. Use one full stop or comma for the part below one, as 36.5 or 36,5.`,
})

/** Point and comma both there, or one of them more than once: groups of three, then at most one decimal mark. */
function withSeveralMarks(text: string): Numeral | { wrong: string } {
  const grouped =
    /^[1-9]\d{0,2}(?:(?<mark>[.,])\d{3})(?:\k<mark>\d{3})*(?:(?!\k<mark>)[.,](?<after>\d+))?$/.exec(text)
  if (!grouped) return unclear(text)
  const after = grouped.groups?.after
  const before = after === undefined ? text : text.slice(0, -after.length - 1)
  const digits = before.replace(/[.,]/g, '')
  return sure(after === undefined ? digits : `${digits}.${after}`)
}

/**
 * Reads a number of digits, points, commas and spaces. Figures in groups of three with a space before each are
 * thousands (1 830); the one mark that may follow is then decimal. 1.830,5 and 1,830.5 are 1830.5.
 */
export function readNumeral(text: string): Numeral | { wrong: string } {
  if (text.includes(' ')) return sure(text.replace(/ /g, '').replace(',', '.'))
  if (!/\d/.test(text)) return unclear(text)
  if (/^\d+$/.test(text)) return sure(text)
  const oneMark = /^(\d*)[.,](\d+)$/.exec(text)
  if (!oneMark) return withSeveralMarks(text)
  const [, before = '', after = ''] = oneMark
  const numeral = sure(`${before}.${after}`)
  const significant = before.replace(/^0+/, '')
  if (after.length !== 3 || before === '' || significant.length > 3) return numeral
  return { ...numeral, thousands: decimal(`${before}${after}`), fromNought: significant === '' }
}
