const two = (number: number): string => String(number).padStart(2, '0')

/**
 * The day of a moment (ISO) by the calendar on the wall of this machine, ISO: in London's summer '2026-06-30T23:30:00.000Z'
 * is '2026-07-01', in New York still '2026-06-30'. Every day that a price, a quotation or a paper gets comes from here.
 */
export function dayOf(at: string): string {
  const moment = new Date(at)
  return `${moment.getFullYear()}-${two(moment.getMonth() + 1)}-${two(moment.getDate())}`
}

/** The moments (ISO) at which a year's twelve months begin by that calendar, and the next year does: thirteen. */
export const monthStarts = (year: number): string[] =>
  Array.from({ length: 13 }, (_, month) => new Date(year, month, 1).toISOString())

/** The time on the wall of a moment (ISO), without a zone: '2026-07-01T00:30:00' of '2026-06-30T23:30:00.000Z' in London's summer. Copies are named by it. */
export function wallTimeOf(at: string): string {
  const moment = new Date(at)
  return `${dayOf(at)}T${two(moment.getHours())}:${two(moment.getMinutes())}:${two(moment.getSeconds())}`
}
