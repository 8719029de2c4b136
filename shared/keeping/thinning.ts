import type { BookCopy } from './keepingModel.ts'

/** How many copies are kept, one for each day, week and month that has any. */
const kept = { days: 7, weeks: 4, months: 12 }

/** For how many days a copy stays that was made before something that could go wrong (an import, a restore), or on being asked for. */
const specialDays = 30

const dayLength = 86_400_000
const dayOf = (at: string): string => at.slice(0, 10)
const numberOf = (day: string): number => Math.floor(Date.parse(`${day}T00:00:00Z`) / dayLength)

/** Weeks begin on a Monday; day 0 of the count, 1 January 1970, was a Thursday. */
const weekOf = (at: string): string => String(Math.floor((numberOf(dayOf(at)) + 3) / 7))
const monthOf = (at: string): string => at.slice(0, 7)

/** The newest copy of each of the latest periods that have one. copies: the newest first. */
function newestOfEach(copies: BookCopy[], periodOf: (at: string) => string, most: number): BookCopy[] {
  const newest = new Map<string, BookCopy>()
  for (const copy of copies) if (!newest.has(periodOf(copy.at))) newest.set(periodOf(copy.at), copy)
  return [...newest.values()].slice(0, most)
}

/** Put aside, not made as a copy: never thrown away by the program. */
const putAside = ({ why }: BookCopy): boolean => why === 'replaced' || why === 'damaged'

const beforeMigration = ({ why }: BookCopy): boolean => why === 'migration'

const usual = ({ why }: BookCopy): boolean => why === 'daily' || why === 'closing'

/**
 * Which copies may go. Kept are the newest of each of the latest 7 days, 4 weeks (Monday to Sunday) and 12 months that have a copy: days on which
 * the book wasn't used don't count, so that a long holiday takes nothing away. Copies made on being asked for, or before an import or a restore,
 * stay 30 days whatever else there is; so do copies from before the layout changed, which count for no day, and the last of those stays on:
 * it is the one book that the program before this one could open. Books put aside stay always. `today`: ISO day.
 */
export function copiesToDrop(copies: readonly BookCopy[], today: string): BookCopy[] {
  const newestFirst = copies.filter((copy) => !putAside(copy)).sort((a, b) => (a.at < b.at ? 1 : -1))
  const made = newestFirst.filter((copy) => !beforeMigration(copy))
  const stays = new Set([
    ...newestFirst.filter(beforeMigration).slice(0, 1),
    ...newestOfEach(made, dayOf, kept.days),
    ...newestOfEach(made, weekOf, kept.weeks),
    ...newestOfEach(made, monthOf, kept.months),
    ...newestFirst.filter(
      (copy) => !usual(copy) && numberOf(today) - numberOf(dayOf(copy.at)) <= specialDays,
    ),
  ])
  return newestFirst.filter((copy) => !stays.has(copy))
}
