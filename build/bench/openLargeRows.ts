import { bookSizes, withLargeBook, type OpenLarge } from '../largeBook/openLarge.ts'
import { median, quantile, written, type Effort, type Measured } from './row.ts'
import { seeded } from './seeded.ts'

/** Against the same with 1,000 jobs: a hundred times the jobs may cost half as much again. */
const aim = 1.5

const timed = async (work: () => unknown): Promise<number> => {
  const start = performance.now()
  await work()
  return performance.now() - start
}

type Compared = { small: number[]; large: number[] }

/** The same asked of a book of 1,000 and of one of 100,000 jobs, turn about. what says what is asked of a book of so many. */
const compared = (
  effort: Effort,
  rounds: number,
  what: (open: OpenLarge, count: number) => () => unknown,
) => {
  const { small, large } = bookSizes(effort)
  return withLargeBook(small, (one) =>
    withLargeBook(large, async (other): Promise<Compared> => {
      const times: Compared = { small: [], large: [] }
      const [askOne, askOther] = [what(one, small), what(other, large)]
      for (let round = 0; round < 10; round += 1) await Promise.all([askOne(), askOther()])
      for (let round = 0; round < rounds; round += 1) {
        times.small.push(await timed(askOne))
        times.large.push(await timed(askOther))
      }
      return times
    }),
  )
}

function measured(name: string, { small, large }: Compared, said: string[]): Measured {
  const ratio = median(large) / median(small)
  return {
    row: {
      ...{ name, value: median(large), unit: 'ms', against: 'the same with 1,000 jobs', ratio, aim },
      holds: ratio <= aim,
    },
    said: [
      `median ${written(median(large))} ms against ${written(median(small))} ms; p95 ${written(quantile(large, 0.95))} ms against ${written(quantile(small, 0.95))} ms`,
      ...said,
    ],
  }
}

/** All that opening a job asks for: the job, its papers, its versions. */
export async function openLarge(effort: Effort): Promise<Measured> {
  const draws = seeded(7)
  const times = await compared(effort, effort.quick ? 20 : 300, ({ ask }, count) => async () => {
    const id = draws.between(20, count)
    await ask('jobs.open', { id })
    await ask('papers.list', { jobId: id })
    await ask('options.list', { jobId: id })
  })
  return measured('open-100k', times, ['the job, its papers and its versions, of any job of the book'])
}

/** The work in hand, as the board of jobs asks for it. */
export async function boardLarge(effort: Effort): Promise<Measured> {
  const times = await compared(
    effort,
    effort.quick ? 20 : 200,
    ({ ask }) =>
      () =>
        ask('jobs.board', { by: 'stage' }),
  )
  return measured('board-100k', times, ['by stage; both books have as many jobs in hand (60)'])
}
