const two = (number: number): string => String(number).padStart(2, '0')

/** The day a clock shows, ISO, where the workshop is. */
export const dayOf = (now: Date): string =>
  `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`

/** The day some months before another, ISO: six before 2026-08-31 is 2026-02-28, the last day that month has. */
export function monthsBefore(day: string, months: number): string {
  const [year = 0, month = 1, date = 1] = day.split('-').map(Number)
  const first = new Date(year, month - 1 - months, 1)
  const last = new Date(first.getFullYear(), first.getMonth() + 1, 0).getDate()
  return dayOf(new Date(first.getFullYear(), first.getMonth(), Math.min(date, last)))
}
