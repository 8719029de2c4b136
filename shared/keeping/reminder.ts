/** After how many days without a copy on another disk the person is reminded, and for how many it can be put off. */
export const remindAfterDays = 14
export const putOffDays = 7

const dayLength = 86_400_000

/** What the reminder goes by, ISO times. since: when the book was first opened; ownJobs: jobs that aren't samples. */
export type ReminderFacts = {
  now: string
  since: string
  awayAt: string | null
  putOffUntil: string | null
  ownJobs: number
}

/**
 * For how many whole days no copy has left this disk, or null while there is nothing to remind of: fewer than 14, put off, or no jobs of one's own.
 * A clock that was set back counts as no time gone by, and a
 * reminder put off by a clock that ran ahead comes again.
 */
export function daysToRemindOf({ now, since, awayAt, putOffUntil, ownJobs }: ReminderFacts): number | null {
  const isPutOff =
    putOffUntil !== null &&
    Date.parse(now) < Date.parse(putOffUntil) &&
    Date.parse(putOffUntil) <= Date.parse(now) + putOffDays * dayLength
  if (ownJobs === 0 || isPutOff) return null
  const days = Math.floor((Date.parse(now) - Date.parse(awayAt ?? since)) / dayLength)
  return days >= remindAfterDays ? days : null
}
