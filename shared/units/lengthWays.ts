import { decimal, negated, plus } from './decimal.ts'
import { readPart, type LengthPart, type PartMeaning } from './lengthPart.ts'
import { dashReadings, terms } from './lengthSum.ts'
import type { LengthUnit } from '../job/job.ts'

/** One way to take a whole text. askAlways: to be confirmed even if it is the only one. */
export type Way = { meaning: PartMeaning; askAlways: boolean }

type Wrong = { wrong: string }

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

/** Said when more could be meant than a person can be asked to choose from. */
export const tooManyWays =
  'This can be read in too many ways. Leave out the marks between thousands, and the dashes.'

/** Every way to take a sum whose dashes are settled. */
function waysOfSum(text: string, unit: LengthUnit): Way[] | Wrong {
  const parts = terms(text)
  if ('wrong' in parts) return parts
  let ways = [nothingYet]
  for (const term of parts) {
    const part = readPart(term.text, unit)
    if ('wrong' in part) return part
    ways = withPart(ways, part, term.takenAway)
    if (ways.length > 9) return { wrong: tooManyWays }
  }
  return ways
}

/**
 * Every way to take a typed length, likeliest first; text comes plain (plainText), unit is the job's. A way of taking
 * its dashes that makes no sense drops out if another does. What is wrong, when none makes sense.
 */
export function waysToTake(text: string, unit: LengthUnit): Way[] | Wrong {
  const readings = dashReadings(text)
  if (readings === undefined) return { wrong: tooManyWays }
  const tried = readings.map((reading) => waysOfSum(reading, unit))
  const ways = tried.flatMap((one) => ('wrong' in one ? [] : one))
  return ways.length > 0 ? ways : (tried.find((one) => 'wrong' in one) ?? { wrong: tooManyWays })
}
