import type { PriceUnit } from '../pricing/price.ts'

/** What a price is for: the unit, and its size where it has one (mm, how many, litres). */
export type UnitAndSize = { unit: PriceUnit; size: number | null }

const plain: [words: RegExp, unit: PriceUnit][] = [
  [/^(?:m|lm|mtr|metres?|meters?|lin(?:ear)? ?m(?:etres?)?|lfm|mètre|ml)$/, 'metre'],
  [/^(?:1|each|ea|no|nr|pc|pcs|piece|unit|stk|st|stück|pièce|item)$/, 'each'],
  [/^(?:pr|pairs?|prs|paar|paire)$/, 'pair'],
  [/^(?:h|hr|hours?)$/, 'hour'],
  [/^(?:km|kilomet(?:re|er)s?)$/, 'kilometre'],
  [/^visits?$/, 'visit'],
]
const number = '(\\d+(?:[.,]\\d+)?)'
const box = new RegExp(
  `^(?:box|bx|pack|pk|pkt|bag|tub)(?: of)? ?x? ?(\\d+)$|^(\\d+) ?(?:\\/|per|a)? ?(?:box|bx|pack|pk|pkt|bag|tub)$`,
)
const tin = new RegExp(
  `^(?:tin|can|drum)?(?: of)? ?${number} ?(l|lt|ltr|litres?|liters?|ml)(?: tin| can| drum)?$`,
)
const long = new RegExp(`^(?:length|len|bar)?(?: of)? ?${number} ?(mm|m)(?: length| len| bar| long)?$`)

const figure = (text: string | undefined): number => Number((text ?? '').replace(',', '.'))
const sized = (unit: PriceUnit, size: number): UnitAndSize | undefined =>
  Number.isFinite(size) && size > 0 && size <= 1_000_000 ? { unit, size } : undefined

/**
 * The unit that a list's words name: 'm' and 'per metre' a metre; 'ea' each; 'pr' a pair; 'box of 200', '200/box' and a bare '200' a
 * box; '2.5 l' a tin; '3.6 m' and '3600 mm' a length. undefined for words it doesn't know.
 */
export function readUnit(words: string): UnitAndSize | undefined {
  const text = words
    .trim()
    .toLowerCase()
    .replace(/\s+/g, ' ')
    .replace(/^(?:per |\/ ?|a )/, '')
    .replace(/\.$/, '')
  const simple = plain.find(([pattern]) => pattern.test(text))
  if (simple) return { unit: simple[1], size: null }
  const boxed = box.exec(text) ?? /^(\d{1,6})$/.exec(text)
  if (boxed) return sized('box', Number(boxed[1] ?? boxed[2]))
  const tinned = tin.exec(text)
  if (tinned) return sized('tin', figure(tinned[1]) / (tinned[2] === 'ml' ? 1000 : 1))
  const lengthwise = long.exec(text)
  if (!lengthwise) return undefined
  return sized('length', Math.round(figure(lengthwise[1]) * (lengthwise[2] === 'm' ? 10_000 : 10)) / 10)
}

/** The words a list of ours has for a unit, which `readUnit` reads back: 'metre', 'length 3600 mm', 'box of 200', 'tin of 2.5 l'. */
export function writeUnit({ unit, size }: UnitAndSize): string {
  if (size === null) return unit
  if (unit === 'length') return `length ${size} mm`
  return unit === 'tin' ? `tin of ${size} l` : `${unit} of ${size}`
}
