import { decimal, negated, plus, toNumber } from './decimal.ts'
import { echoLength } from './echoLength.ts'
import { readPart, type LengthPart, type PartMeaning } from './lengthPart.ts'
import { dashReadings, terms } from './lengthSum.ts'
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
/** Under this, in mm, a length is nothing that could be marked or said. */
const least = 0.001

type Way = { meaning: PartMeaning; askAlways: boolean }
type Wrong = { wrong: string }

const quoted = (typed: string): string => `‘${typed.length > 24 ? `${typed.slice(0, 24)}…` : typed}’`

/** Adds a further part, in each of its meanings, to each way found so far. */
const withPart = (ways: Way[], part: LengthPart, takenAway: boolean): Way[] =>
  ways.flatMap((way) =>
    part.meanings.map(({ mm, imperial, feet, bareFraction, lastResort }) => ({
      askAlways: way.askAlways || part.askAlways,
      meaning: {
        mm: plus(way.meaning.mm, takenAway ? negated(mm) : mm),
        imperial: way.meaning.imperial && imperial,
        feet: way.meaning.feet || feet,
        bareFraction: way.meaning.bareFraction || bareFraction,
        lastResort: way.meaning.lastResort || lastResort,
      },
    })),
  )

const nothingYet: Way = {
  askAlways: false,
  meaning: { mm: decimal('0'), imperial: true, feet: false, bareFraction: false, lastResort: false },
}

const tooManyWays: Wrong = {
  wrong: 'This can be read in too many ways. Leave out the marks between thousands, and the dashes.',
}

/** Every way to take a sum whose dashes are settled. */
function waysOfSum(text: string, unit: LengthUnit): Way[] | Wrong {
  const parts = terms(text)
  if ('wrong' in parts) return parts
  let ways = [nothingYet]
  for (const term of parts) {
    const part = readPart(term.text, unit)
    if ('wrong' in part) return part
    ways = withPart(ways, part, term.takenAway)
    if (ways.length > 9) return tooManyWays
  }
  return ways
}

/** Every way to take a text. A way of taking its dashes that makes no sense drops out if another does. */
function waysOf(text: string, unit: LengthUnit): Way[] | Wrong {
  const readings = dashReadings(text)
  if (readings === undefined) return tooManyWays
  const tried = readings.map((reading) => waysOfSum(reading, unit))
  const ways = tried.flatMap((one) => ('wrong' in one ? [] : one))
  return ways.length > 0 ? ways : (tried.find((one) => 'wrong' in one) ?? tooManyWays)
}

/** Why a length is not taken by the field, with the way out; undefined when it is. */
function refusal(
  mm: number,
  typed: string,
  { allowZero = false, max = 10000 }: LengthLimits,
): string | undefined {
  const what = quoted(typed)
  if (mm < 0) return `${what} comes to less than nothing. Check which length is taken from which.`
  if (mm === 0) return allowZero ? undefined : `${what} comes to nothing. Type a length over 0.`
  if (mm < least) return `${what} is too small to mark. Check the figures and the unit.`
  if (mm <= max) return undefined
  const size = mm <= 1e6 ? ` is ${writeBoth(mm, 'mm')},` : ' is'
  return `${what}${size} over the ${writeBoth(max, 'mm')} that this field takes. Check the figures and the unit.`
}

function question(typed: string, options: number): string {
  if (options === 1) return `${quoted(typed)} has three figures after its mark. Is this what you mean?`
  return `${quoted(typed)} can be read in ${options === 2 ? 'two' : options} ways. Which do you mean?`
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
 * asked about unless only one meaning can be made (see readPart). mm is the double nearest to the exact value:
 * 36 5/8" is 930.275. Never throws on a text.
 */
export function readLength(text: string, unit: LengthUnit, limits: LengthLimits = {}): Reading {
  const typed = text.trim()
  if (typed.length > longestText)
    return { kind: 'problem', message: `${quoted(typed)} is too long for a length. Type it as 1830 or 72".` }
  const plain = plainText(typed)
  if (plain === '') return { kind: 'empty' }
  const ways = waysOf(plain, unit)
  if ('wrong' in ways) return { kind: 'problem', message: ways.wrong }
  const options = choices(ways, unit, (mm) => refusal(mm, typed, limits) === undefined)
  const first = options[0]
  if (!first) {
    const mm = Math.min(...ways.map(({ meaning }) => toNumber(meaning.mm)))
    return { kind: 'problem', message: refusal(mm, typed, limits) ?? tooManyWays.wrong }
  }
  if (options.length > 4) return { kind: 'problem', message: tooManyWays.wrong }
  if (options.length === 1 && !ways.some((way) => way.askAlways))
    return { kind: 'length', mm: first.mm, echo: first.said }
  return { kind: 'ask', question: question(typed, options.length), options }
}
