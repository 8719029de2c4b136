import { spoken } from './said.ts'

/**
 * Writes days or times in one way, as the place writes them whose words are spoken. What it writes with is made once for a place: making it takes a
 * hundred times longer than writing one day, and a list writes hundreds.
 */
export function dateWriter(how: Intl.DateTimeFormatOptions): (at: Date) => string {
  const made = new Map<string, Intl.DateTimeFormat>()
  return (at) => {
    const place = spoken.locale
    const writes = made.get(place) ?? new Intl.DateTimeFormat(place, how)
    made.set(place, writes)
    return writes.format(at)
  }
}
