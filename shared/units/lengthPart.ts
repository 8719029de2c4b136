import { decimal, plus, times, toNumber, type Decimal } from './decimal.ts'
import { mmPerFoot, mmPerInch } from './inch.ts'
import { lengthWords, type TypedUnit, type Word } from './lengthWords.ts'
import type { Numeral } from './numeral.ts'
import type { LengthUnit } from '../job/job.ts'

/**
 * One thing a part of a length can mean. imperial: said in feet or inches; feet: with feet in it;
 * bareFraction: inches only because it has a fraction and no unit; lastResort: offered only where nothing else
 * leaves the person a choice.
 */
export type PartMeaning = {
  mm: Decimal
  imperial: boolean
  feet: boolean
  bareFraction: boolean
  lastResort: boolean
}

/** What a part can mean, likeliest first. askAlways: even if only one meaning is possible, it is asked about. */
export type LengthPart = { meanings: PartMeaning[]; askAlways: boolean }

type Wrong = { wrong: string }
type Amount = { number?: Numeral; fraction?: Decimal; text: string }

const mmPer: Readonly<Record<TypedUnit, Decimal>> = {
  mm: decimal('1'),
  cm: decimal('10'),
  m: decimal('1000'),
  in: decimal(String(mmPerInch)),
  ft: decimal(String(mmPerFoot)),
}

const meaning = (value: Decimal, unit: TypedUnit, more: Partial<PartMeaning> = {}): PartMeaning => ({
  mm: times(value, mmPer[unit]),
  imperial: unit === 'in' || unit === 'ft',
  feet: unit === 'ft',
  bareFraction: false,
  lastResort: false,
  ...more,
})

const sure = (only: PartMeaning): LengthPart => ({ meanings: [only], askAlways: false })

/** 36, 36 5/8 or 5/8 from the front of the words; takes them off. */
function takeAmount(words: Word[]): Amount | Wrong | undefined {
  const first = words[0]
  if (first?.kind === 'fraction') {
    words.shift()
    return { fraction: first.value, text: first.text }
  }
  if (first?.kind !== 'number') return undefined
  words.shift()
  const second = words[0]
  if (second?.kind !== 'fraction') return { number: first.numeral, text: first.text }
  if (!first.numeral.whole)
    return { wrong: `${first.text} ${second.text} mixes a decimal with a fraction. Use one or the other.` }
  words.shift()
  return { number: first.numeral, fraction: second.value, text: `${first.text} ${second.text}` }
}

/** The amount where it can mean one thing only: a mark before three digits counts as decimal. */
const plainValue = ({ number, fraction }: Amount): Decimal =>
  plus(number?.plain ?? decimal('0'), fraction ?? decimal('0'))

/**
 * An amount with its unit typed. Three digits after one mark: both meanings are given, and a metre, inch or foot
 * reading in thousands then falls out for being too long to be made (36.625" is 36 5/8", 1.830 m is 1830 mm).
 * mm and cm are always asked about, since a slip of the mark makes another likely size there.
 */
function withUnit(amount: Amount, unit: TypedUnit): LengthPart {
  const thousands = amount.number?.thousands
  if (!thousands || amount.number?.fromNought) return sure(meaning(plainValue(amount), unit))
  return {
    meanings: [meaning(thousands, unit), meaning(plainValue(amount), unit)],
    askAlways: unit === 'mm' || unit === 'cm',
  }
}

/**
 * An amount without a unit: the job's unit, or inches when there is a fraction. Three digits after one mark are
 * asked about in a job in mm (1830 or 1.83; if 36625 mm is too long, then 36.625 mm or 36.625"). In a job in
 * inches they are a decimal (36.625), asked about only where the figures would also do as mm (1.830).
 */
function withoutUnit(amount: Amount, unit: LengthUnit): LengthPart {
  if (amount.fraction) return sure(meaning(plainValue(amount), 'in', { bareFraction: true }))
  const thousands = amount.number?.thousands
  const plain = plainValue(amount)
  if (!thousands || (unit === 'in' && amount.number?.fromNought)) return sure(meaning(plain, unit))
  if (unit === 'in')
    return {
      meanings: [meaning(plain, 'in'), meaning(thousands, 'mm'), meaning(thousands, 'in')],
      askAlways: false,
    }
  return {
    meanings: [meaning(thousands, 'mm'), meaning(plain, 'mm'), meaning(plain, 'in', { lastResort: true })],
    askAlways: true,
  }
}

/**
 * Feet, then inches with or without their mark: 5' 11", 5 ft 11, 5' 11 1/2". Fewer than 12 inches fit there, so
 * three digits after a mark can only be a decimal (5' 3.125").
 */
function feetAndInches(feet: Amount, words: Word[]): LengthPart | Wrong {
  const inches = takeAmount(words)
  if (inches === undefined) return { wrong: `After the feet come inches, as 5' 11".` }
  if ('wrong' in inches) return inches
  const unit = words.shift()
  if (unit && (unit.kind !== 'unit' || unit.unit !== 'in'))
    return {
      wrong: `After ${feet.text}′ only inches can follow, as 5' 11". To add another length put + before it.`,
    }
  if (words.length > 0)
    return { wrong: `${inches.text}″ has something left after it. To add a length put + before it.` }
  if (feet.fraction || !feet.number?.whole)
    return {
      wrong: `${feet.text}′ is not whole feet, so no inches can follow. Write whole feet and inches, as 5' 6".`,
    }
  const value = plainValue(inches)
  if (toNumber(value) >= 12)
    return {
      wrong: `${inches.text}″ after the feet is a foot or more. Put fewer than 12 inches there, or all of it in inches.`,
    }
  return sure({
    ...meaning(feet.number.plain, 'ft'),
    mm: plus(times(feet.number.plain, mmPer.ft), times(value, mmPer.in)),
  })
}

/** Reads one part of a length, between the + and - signs; unit is the job's. */
export function readPart(text: string, unit: LengthUnit): LengthPart | Wrong {
  const words = lengthWords(text)
  if ('wrong' in words) return words
  const amount = takeAmount(words)
  if (amount === undefined)
    return { wrong: `${text} has no figure before the unit. Type it as 1830 mm or 72".` }
  if ('wrong' in amount) return amount
  const next = words.shift()
  if (next === undefined) return withoutUnit(amount, unit)
  if (next.kind !== 'unit')
    return {
      wrong: `${text} has two figures without a unit between them. Type feet and inches as 5' 11", and a sum as 1200+45.`,
    }
  if (words.length === 0) return withUnit(amount, next.unit)
  if (next.unit === 'ft') return feetAndInches(amount, words)
  return { wrong: `${text} runs two lengths together. Use one unit, or put + between them.` }
}
