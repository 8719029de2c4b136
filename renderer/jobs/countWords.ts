/** What is told of the jobs found: their number, and whether that is all there are. */
export type CountTold = { found: number; total: number; sought: boolean; filtered: boolean; limited: boolean }

/** The most lines a list shows. */
const mostRows = 1000

const many = (count: number): string => `${count.toLocaleString('en-GB')} ${count === 1 ? 'job' : 'jobs'}`

/** '37 jobs', 'The newest 1,000 of 20,431 jobs', 'In very many jobs: the newest 500 that have it. Add a word to find older ones.' */
export function countWords({ found, total, sought, filtered, limited }: CountTold): string {
  if (limited) return `In very many jobs: the newest ${found} that have it. Add a word to find older ones.`
  if (found < mostRows) return many(found)
  if (sought) return `The nearest ${found.toLocaleString('en-GB')} jobs. Add a word to find fewer.`
  const of = filtered || total <= found ? '' : ` of ${total.toLocaleString('en-GB')}`
  return `The newest ${found.toLocaleString('en-GB')}${of} jobs. Type a word to find an older one.`
}
