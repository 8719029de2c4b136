/** When a job is promised, as it stands to today: before today, up to this Sunday, in the week after, or later. */
export const dueSpans = ['late', 'this week', 'next week'] as const
export type DueSpan = (typeof dueSpans)[number]

/** Days since 1 January 1970 of an ISO day. Throws RangeError on what is no day. */
function dayNumber(iso: string): number {
  const [, year, month, day] = /^(\d{4})-(\d{2})-(\d{2})$/.exec(iso) ?? []
  const number = Date.UTC(Number(year), Number(month) - 1, Number(day)) / 864e5
  if (!Number.isFinite(number)) throw new RangeError(`a day is written like 2026-05-31, not ${iso}`)
  return number
}

/** The week's days left after a day: 0 on a Sunday, 6 on a Monday. 1 January 1970 was a Thursday. */
const daysLeft = (day: number): number => (7 - ((day + 4) % 7)) % 7

const two = (number: number): string => String(number).padStart(2, '0')

/** Year, month and day of a day's number, by the civil calendar (H. Hinnant's days_from_civil turned round). */
function isoOf(number: number): string {
  const shifted = number + 719_468
  const era = Math.floor(shifted / 146_097)
  const dayOfEra = shifted - era * 146_097
  const yearOfEra = Math.floor(
    (dayOfEra -
      Math.floor(dayOfEra / 1460) +
      Math.floor(dayOfEra / 36_524) -
      Math.floor(dayOfEra / 146_096)) /
      365,
  )
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100))
  const march = Math.floor((5 * dayOfYear + 2) / 153)
  const day = dayOfYear - Math.floor((153 * march + 2) / 5) + 1
  const month = march < 10 ? march + 3 : march - 9
  const year = yearOfEra + era * 400 + (month <= 2 ? 1 : 0)
  return `${year}-${two(month)}-${two(day)}`
}

/** The last day of next week, ISO: weeks run from Monday to Sunday. Of Wednesday '2026-03-04' it is '2026-03-15'. */
export function endOfNextWeek(today: string): string {
  const day = dayNumber(today)
  return isoOf(day + daysLeft(day) + 7)
}

/** Where a promised day lies, ISO days both; undefined for one after next week. On Wednesday 4 March, Sunday the 8th is this week. */
export function dueSpan(due: string, today: string): DueSpan | undefined {
  const [day, from] = [dayNumber(due), dayNumber(today)]
  if (day < from) return 'late'
  const away = day - from - daysLeft(from)
  if (away <= 0) return 'this week'
  return away <= 7 ? 'next week' : undefined
}

/** Every job in hand stands in one of these: promised in a span of days, further off, or for no day yet. */
export const promiseSpans = [...dueSpans, 'later', 'no day'] as const
export type PromiseSpan = (typeof promiseSpans)[number]

/** Where a job in hand stands by its promised day; null for none: 'no day'. */
export const promiseSpan = (due: string | null, today: string): PromiseSpan =>
  due === null ? 'no day' : (dueSpan(due, today) ?? 'later')

/** The first and the last day of a span, ISO, a side that is open left out; 'none' for jobs without a day. */
export type SpanDays = { from?: string; upTo?: string } | 'none'

/** Of Wednesday '2026-03-04': late up to the 3rd, this week the 4th to the 8th, next week the 9th to the 15th, later from the 16th. */
export function spanDays(span: PromiseSpan, today: string): SpanDays {
  const from = dayNumber(today)
  const [thisWeek, nextWeek] = [from + daysLeft(from), from + daysLeft(from) + 7]
  switch (span) {
    case 'late':
      return { upTo: isoOf(from - 1) }
    case 'this week':
      return { from: today, upTo: isoOf(thisWeek) }
    case 'next week':
      return { from: isoOf(thisWeek + 1), upTo: isoOf(nextWeek) }
    case 'later':
      return { from: isoOf(nextWeek + 1) }
    case 'no day':
      return 'none'
  }
}
