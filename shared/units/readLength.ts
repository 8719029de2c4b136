import { toNumber } from './decimal.ts'
import { echoLength } from './echoLength.ts'
import { tooManyWays, waysToTake, type Way } from './lengthWays.ts'
import { plainText } from './plainText.ts'
import { writeBoth } from './writeLength.ts'
import type { LengthUnit } from '../job/job.ts'

/** One thing a text can mean: its length in mm, and how that is said in both units. */
export type Meaning = { mm: number; said: string }

/**
 * What became of a text typed into a length field.
 * length: understood; echo says it in both units, the job's first.
 * ask: it could mean more than one thing; the person picks one of options, of which there is at least one and
 * each is a length the field takes. Nothing is guessed.
 * problem: not a length that the field takes; message is whole sentences with the way out.
 * empty: nothing typed.
 */
export type Reading =
  | { kind: 'length'; mm: number; echo: string }
  | { kind: 'ask'; question: string; options: Meaning[] }
  | { kind: 'problem'; message: string }
  | { kind: 'empty' }

/** What a field takes: allowZero lets 0 through (insets, gaps); max in mm, 10000 unless given. */
export type LengthLimits = { allowZero?: boolean; max?: number }

const longestText = 60
/** In mm: anything less is finer than a knife line and is a slip of the keys. */
const least = 0.05

type Typed = LengthLimits & { text: string; unit: LengthUnit }

const quoted = (text: string): string => `‘${text.length > 24 ? `${text.slice(0, 24)}…` : text}’`

/** Why a length is not taken by the field, with the way out; undefined when it is. */
function refusal(mm: number, typed: Typed): string | undefined {
  const { unit, allowZero = false, max = 10000 } = typed
  const what = quoted(typed.text)
  if (mm < 0) return `${what} comes to less than nothing. Check which length is taken from which.`
  if (mm === 0) return allowZero ? undefined : `${what} comes to nothing. Type a length over 0.`
  if (mm < least) return `${what} is too small to mark. Check the figures and the unit.`
  if (mm <= max) return undefined
  const size = mm <= 1e6 ? ` is ${writeBoth(mm, unit)},` : ' is'
  return `${what}${size} over the ${writeBoth(max, unit)} that this field takes. Check the figures and the unit.`
}

function question(text: string, options: number): string {
  if (options === 1) return `${quoted(text)} has three figures after its mark. Is this what you mean?`
  return `${quoted(text)} can be read in ${options === 2 ? 'two' : options} ways. Which do you mean?`
}

/** Meanings that the field takes, each length once; a last resort only where there is no other choice. */
function choices(ways: Way[], unit: LengthUnit, taken: (mm: number) => boolean): Meaning[] {
  const found = new Map<number, string>()
  const inOrder = [...ways].sort((a, b) => Number(a.meaning.lastResort) - Number(b.meaning.lastResort))
  for (const { meaning } of inOrder) {
    const mm = toNumber(meaning.mm)
    if (!taken(mm) || found.has(mm) || (meaning.lastResort && found.size > 1)) continue
    found.set(mm, echoLength(mm, unit, meaning))
  }
  return [...found].map(([mm, said]) => ({ mm, said }))
}

/**
 * The one reader for every length field. unit is the job's. Takes 1830, 1.83 m, 183cm, 72", 5' 11", 5 ft 11,
 * 36 5/8", 36-5/8, 36⅝", 36.625 in, 1 830, 36,5, and sums and differences of these: 1200+45, 6' + 3".
 * A number without a unit is in the job's; a fraction without one means inches. Three digits after one mark are
 * asked about unless only one meaning can be made (the rule stands at readPart). mm is the double nearest to the exact value:
 * 36 5/8" is 930.275. Never throws on a text.
 */
export function readLength(text: string, unit: LengthUnit, limits: LengthLimits = {}): Reading {
  const typed = { ...limits, text: text.trim(), unit }
  if (typed.text.length > longestText)
    return {
      kind: 'problem',
      message: `${quoted(typed.text)} is too long for a length. Type it as 1830 or 72".`,
    }
  const plain = plainText(typed.text)
  if (plain === '') return { kind: 'empty' }
  const ways = waysToTake(plain, unit)
  if ('wrong' in ways) return { kind: 'problem', message: ways.wrong }
  const options = choices(ways, unit, (mm) => refusal(mm, typed) === undefined)
  const first = options[0]
  if (!first) {
    const mm = Math.min(...ways.map(({ meaning }) => toNumber(meaning.mm)))
    return { kind: 'problem', message: refusal(mm, typed) ?? tooManyWays }
  }
  if (options.length > 4) return { kind: 'problem', message: tooManyWays }
  if (options.length === 1 && !ways.some((way) => way.askAlways))
    return { kind: 'length', mm: first.mm, echo: first.said }
  return { kind: 'ask', question: question(typed.text, options.length), options }
}
