const months = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
]

/** A day as it is written on a paper: '2026-05-03' or a moment on that day is '3 May 2026'. What is no date is given back as it came. */
export function paperDate(iso: string): string {
  const found = /^(\d{4})-(\d{2})-(\d{2})/.exec(iso)
  const month = months[Number(found?.[2]) - 1]
  return found && month ? `${Number(found[3])} ${month} ${found[1]}` : iso
}
