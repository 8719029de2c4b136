import type { BookCopy, CopyReason } from '../../shared/keeping/keepingModel.ts'
import { writeTime, writeWeekday } from '../format.ts'

/** Why a copy was made, as it is said in its line. */
export const reasonWords: Record<CopyReason, string> = {
  daily: 'the day’s first use',
  closing: 'at closing',
  asked: 'asked for',
  migration: 'before Bracework was brought up to date',
  import: 'before something was brought in',
  restore: 'before another copy was opened',
  replaced: 'the book that was open before',
  damaged: 'the damaged book, as it was',
}

/** 'Mon, 2 Mar 2026, 08:00' of a copy. Its time is that on the wall. */
export const copyTime = ({ at }: Pick<BookCopy, 'at'>): string =>
  `${writeWeekday(at.slice(0, 10))}, ${writeTime(at)}`

/** '1.2 MB'; what is smaller than a tenth is said as 0.1. */
export const writeSize = (bytes: number): string => `${Math.max(0.1, bytes / 1e6).toFixed(1)} MB`
