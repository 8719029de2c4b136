const two = (number: number): string => String(number).padStart(2, '0')

/** The time on the wall of a moment: '14:05'. */
export const clockOf = (moment: Date): string => `${two(moment.getHours())}:${two(moment.getMinutes())}`

/** A time as a person writes it: 14:05, 14.05, 1405, 9:30, 2pm, 2.30 pm. Undefined for anything else. '2.30 pm' is '14:30'. */
export function readClock(words: string): string | undefined {
  const found = /^(\d{1,2})(?:[:.h ]?([0-5]\d))?\s*(am|pm)?$/.exec(words.trim().toLowerCase())
  if (!found) return undefined
  const [, hourWords = '', minutes, half] = found
  const hour = Number(hourWords)
  if (half === undefined && minutes === undefined) return undefined
  if (half === undefined) return hour < 24 ? `${two(hour)}:${minutes}` : undefined
  if (hour < 1 || hour > 12) return undefined
  return `${two((hour % 12) + (half === 'pm' ? 12 : 0))}:${minutes ?? '00'}`
}
