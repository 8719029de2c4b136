const day = (at: Date): string => at.toDateString()

/** When something was done, as it is said: '14:05' today, 'yesterday 14:05', else 'Tue 3 March, 14:05'. */
export function whenDone(at: string, now: Date): string {
  const then = new Date(at)
  const time = then.toLocaleTimeString('en-GB', { hour: '2-digit', minute: '2-digit' })
  if (day(then) === day(now)) return time
  const yesterday = new Date(now.getFullYear(), now.getMonth(), now.getDate() - 1)
  if (day(then) === day(yesterday)) return `yesterday ${time}`
  return `${then.toLocaleDateString('en-GB', { weekday: 'short', day: 'numeric', month: 'long' })}, ${time}`
}
