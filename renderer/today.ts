const two = (number: number): string => String(number).padStart(2, '0')

/** The ISO day of a moment, as the calendar on the wall has it: '2026-06-03'. */
export const dayOfMoment = (moment: Date): string =>
  `${moment.getFullYear()}-${two(moment.getMonth() + 1)}-${two(moment.getDate())}`

/** Today, as the calendar on the wall has it. */
export const today = (): string => dayOfMoment(new Date())
