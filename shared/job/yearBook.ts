/**
 * One month of a year. begun: jobs taken in; promised: jobs promised for a day of it; hung: jobs last moved to hung in it. worthPence: net
 * totals of the quotations accepted in it (of a job accepted twice the last); timberPence: orders of timber placed in it, as they were priced.
 */
export type MonthOfYear = {
  begun: number
  promised: number
  hung: number
  worthPence: number
  timberPence: number
}

/** A kind of gate in a year: how many jobs for it were begun and how many hung. leaves 2 is a pair; stable: two half leaves. */
export type KindOfYear = {
  construction: string
  leaves: number
  stable: boolean
  begun: number
  hung: number
}

/** A year month by month, January first. years: those the book knows anything of, the latest first. The sample's jobs count too while they are there. */
export type YearBook = { year: number; years: number[]; months: MonthOfYear[]; kinds: KindOfYear[] }
