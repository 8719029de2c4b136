import { readNumeral, type Numeral } from './numeral.ts'
import { readFraction } from './fraction.ts'
import type { Decimal } from './decimal.ts'

export type TypedUnit = 'mm' | 'cm' | 'm' | 'in' | 'ft'

/** One number, fraction or unit of a typed length. */
export type Word =
  | { kind: 'number'; text: string; numeral: Numeral }
  | { kind: 'fraction'; text: string; value: Decimal }
  | { kind: 'unit'; text: string; unit: TypedUnit }

const unitNames: Readonly<Record<TypedUnit, string[]>> = {
  mm: ['mm', 'millimetre', 'millimetres', 'millimeter', 'millimeters'],
  cm: ['cm', 'centimetre', 'centimetres', 'centimeter', 'centimeters'],
  m: ['m', 'metre', 'metres', 'meter', 'meters'],
  in: ['"', 'in', 'ins', 'inch', 'inches'],
  ft: ["'", 'ft', 'foot', 'feet'],
}

const units: ReadonlyMap<string, TypedUnit> = new Map(
  (Object.keys(unitNames) as TypedUnit[]).flatMap((unit) =>
    unitNames[unit].map((name) => [name, unit] as const),
  ),
)

const fractionAt = /(\d+)\/(\d+)/y
/** 1 830: thousands with spaces, unless the last group is the top of a fraction (36 125/64). */
const groupedAt = /[1-9]\d{0,2}(?: \d{3})+(?:[.,]\d+)?(?![\d.,/])/y
const numberAt = /[\d.,]+/y
const unitAt = /(\p{L}+)\.?|["']/uy

const matchAt = (pattern: RegExp, text: string, at: number): RegExpExecArray | null => {
  pattern.lastIndex = at
  return pattern.exec(text)
}

function unknownSign(text: string): { wrong: string } {
  if (/^(?:x|×|\*|by)$/.test(text))
    return { wrong: `One length goes in each field, so ${text} can’t be used here.` }
  if (text === '/') return { wrong: 'A fraction needs a whole figure on each side of /, as 5/8.' }
  const isWord = /^\p{L}/u.test(text)
  return {
    wrong: isWord
      ? `${text} is not a unit known here. Use mm, cm, m, in or ", ft or '.`
      : `${text} has no meaning in a length. Type it as 1830, 1.83 m, 72", 5' 11" or 36 5/8".`,
  }
}

function wordAt(text: string, at: number): Word | { wrong: string } {
  const fraction = matchAt(fractionAt, text, at)
  if (fraction) {
    const read = readFraction(fraction[1] ?? '', fraction[2] ?? '')
    return 'wrong' in read ? read : { kind: 'fraction', text: fraction[0], value: read.value }
  }
  const number = matchAt(groupedAt, text, at) ?? matchAt(numberAt, text, at)
  if (number) {
    const numeral = readNumeral(number[0])
    return 'wrong' in numeral ? numeral : { kind: 'number', text: number[0], numeral }
  }
  const named = matchAt(unitAt, text, at)
  const unit = named ? units.get(named[1] ?? named[0]) : undefined
  if (named && unit) return { kind: 'unit', text: named[0], unit }
  return unknownSign(named ? (named[1] ?? named[0]) : String.fromCodePoint(text.codePointAt(at) ?? 32))
}

/** Cuts one part of a typed length (no + or -) into its words, or says which sign has no meaning. */
export function lengthWords(text: string): Word[] | { wrong: string } {
  const words: Word[] = []
  for (let at = 0; at < text.length;) {
    if (text[at] === ' ') {
      at += 1
      continue
    }
    const word = wordAt(text, at)
    if ('wrong' in word) return word
    words.push(word)
    at += word.text.length
  }
  return words
}
