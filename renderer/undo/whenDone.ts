import { writeTime } from '../format.ts'
import { dateWriter } from '../language/dateWriter.ts'

const weekday = dateWriter({ weekday: 'short', day: 'numeric', month: 'long' })
const day = (at: Date): string => at.toDateString()

/** When something was done, as it is said: '14:05' today, 'yesterday 14:05', else 'Tue 3 March, 14:05'. */
export function whenDone(at: string, now: Date): string {
  const then = new Date(at)
  const time = writeTime(at)
  if (day(then) === day(now)) return time
  const yesterday = new Date(now.getFullYear(), now.getMonth(), now.getDate() - 1)
  if (day(then) === day(yesterday)) return `yesterday ${time}`
  return `${weekday(then)}, ${time}`
}
