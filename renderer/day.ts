import { spoken } from './language/said.ts'

const months = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec']
const weekdays = ['sun', 'mon', 'tue', 'wed', 'thu', 'fri', 'sat']

/** How days are written where the words are from: whether the month comes first, and the months' names, short and long. */
function waysOf(locale: string): { monthFirst: boolean; names: string[][] } {
  const order = new Intl.DateTimeFormat(locale, { day: 'numeric', month: 'numeric' }).formatToParts(0)
  const named = (month: 'short' | 'long') => {
    const write = new Intl.DateTimeFormat(locale, { day: 'numeric', month, timeZone: 'UTC' })
    const nameIn = (at: number) =>
      write.formatToParts(Date.UTC(2026, at, 15)).find(({ type }) => type === 'month')?.value ?? ''
    return months.map((_, at) => bareName(nameIn(at)))
  }
  return {
    monthFirst:
      order.findIndex(({ type }) => type === 'month') < order.findIndex(({ type }) => type === 'day'),
    names: [named('short'), named('long')],
  }
}
const bareName = (name: string): string => name.toLowerCase().replace(/\.$/, '')

/** The number of a month by its name, in English or where the words are from; 0 where it is none. */
function monthNamed(name: string, names: string[][]): number {
  const own = names.map((list) => list.indexOf(bareName(name))).find((at) => at >= 0)
  return (own ?? months.indexOf(name.slice(0, 3))) + 1
}

/** What became of a text typed into a day field: an ISO day, nothing, or a sentence with the way out. */
export type DayReading =
  { kind: 'day'; iso: string } | { kind: 'empty' } | { kind: 'problem'; message: string }

const two = (number: number): string => String(number).padStart(2, '0')
const isoOf = (day: Date): string => `${day.getFullYear()}-${two(day.getMonth() + 1)}-${two(day.getDate())}`

const ahead = (today: Date, days: number): string =>
  isoOf(new Date(today.getFullYear(), today.getMonth(), today.getDate() + days))

/** The ISO day of a date that the calendar has, else undefined. */
function dayOf(year: number, month: number, date: number): string | undefined {
  const day = new Date(year, month - 1, date)
  return day.getMonth() === month - 1 && day.getDate() === date ? isoOf(day) : undefined
}

/** A day without a year is the next one: this year's, or next year's when this year's is more than a month gone. */
function withoutYear(month: number, date: number, today: Date): string | undefined {
  const year = today.getFullYear()
  const gone = new Date(year, month - 1, date).getTime() < today.getTime() - 31 * 864e5
  return dayOf(gone ? year + 1 : year, month, date)
}

function nearby(words: string, today: Date): string | undefined {
  if (words === 'today') return ahead(today, 0)
  if (words === 'tomorrow') return ahead(today, 1)
  const span = /^(?:in )?(\d{1,2}) ?(day|week|month)s?$/.exec(words)
  if (span) {
    const count = Number(span[1])
    if (span[2] === 'month')
      return isoOf(new Date(today.getFullYear(), today.getMonth() + count, today.getDate()))
    return ahead(today, span[2] === 'week' ? count * 7 : count)
  }
  const weekday = weekdays.indexOf(words.replace(/^next /, '').slice(0, 3))
  if (weekday === -1 || !/^(next )?(sun|mon|tues?|wed(nes)?|thu(rs?)?|fri|sat(ur)?)(day)?$/.test(words))
    return undefined
  return ahead(today, ((weekday - today.getDay() + 6) % 7) + 1)
}

const spelt = '\\p{L}[\\p{L}\\p{M}]{1,11}\\.?'
const dayFirst = new RegExp(
  `^(\\d{1,2})(?:st|nd|rd|th|\\.)?(?:[ ./-]+(?:de )?)(\\d{1,2}|${spelt})(?:[ ./,-]+(?:de )?(\\d{2}|\\d{4}))?$`,
  'u',
)
const nameFirst = new RegExp(`^(${spelt})[ ./-]+(\\d{1,2})(?:st|nd|rd|th)?(?:[ ./,-]+(\\d{2}|\\d{4}))?$`, 'u')

function written(words: string, today: Date): string | undefined {
  const iso = /^(\d{4})-(\d{1,2})-(\d{1,2})$/.exec(words)
  if (iso) return dayOf(Number(iso[1]), Number(iso[2]), Number(iso[3]))
  const { monthFirst, names } = waysOf(spoken.locale)
  const named = nameFirst.exec(words)
  const [, first = '', second = '', year] = named
    ? [null, named[2], named[1], named[3]]
    : (dayFirst.exec(words) ?? [])
  if (first === '') return undefined
  const figures = /^\d/.test(second)
  const [date, month] =
    figures && monthFirst
      ? [second, Number(first)]
      : [first, figures ? Number(second) : monthNamed(second, names)]
  if (month < 1) return undefined
  if (year === undefined) return withoutYear(month, Number(date), today)
  return dayOf(year.length === 2 ? 2000 + Number(year) : Number(year), month, Number(date))
}

/**
 * A day as people say it, day before month: 3/6, 3/6/26, 3 June, 3 Jun 2026, 2026-06-03, tomorrow, Friday, 2 weeks; in figures the month first
 * where the words are from a place that writes so (6/3/26 in America). today decides what has no year.
 */
export function readDay(text: string, today: Date): DayReading {
  const words = text.trim().toLowerCase().replace(/\s+/g, ' ')
  if (words === '') return { kind: 'empty' }
  const iso = nearby(words, today) ?? written(words, today)
  if (iso) return { kind: 'day', iso }
  return {
    kind: 'problem',
    message: waysOf(spoken.locale).monthFirst
      ? `“${text.trim()}” is no day I know. Write it as June 3, 6/3/26, Friday or 2 weeks.`
      : `“${text.trim()}” is no day I know. Write it as 3 June, 3/6/26, Friday or 2 weeks.`,
  }
}
