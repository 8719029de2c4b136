import { fillSampleBook } from '../../db/demo/fillSampleBook.ts'
import type { PaperFormat } from '../../shared/papers/page.ts'
import type { Result } from '../../shared/problem.ts'
import { answer } from './answer.ts'
import type { Context } from './context.ts'
import { quoteSamples } from './sampleQuotations.ts'

/** Issues a sample job's card through the same request that a window sends. */
export const issueSampleCard = (
  context: Context,
  jobId: number,
  format: PaperFormat,
): Promise<Result<unknown>> =>
  answer(context, 'papers.issue', { jobId, format, version: context.book.jobs.open(jobId)?.version })

/** Issues the cards of sample jobs through the same request a window sends. Throws when one is refused: the sample is the program's own. */
export async function issueSampleCards(context: Context, jobIds: number[]): Promise<void> {
  for (const jobId of jobIds) {
    const issued = await issueSampleCard(context, jobId, 'a4')
    if (!issued.ok)
      throw new Error(`the card of sample job ${jobId} is refused: ${JSON.stringify(issued.problems)}`)
  }
}

/** The made-up workshop's jobs, prices, cards and quotations, in a book that has no sample jobs. Gives how many jobs were added. */
export async function addSample(context: Context): Promise<number> {
  const { jobs, cards, quotations } = fillSampleBook(context.book, { today: context.dayOf(context.now()) })
  await issueSampleCards(context, cards)
  const refused = await quoteSamples(context, quotations, 'a4')
  if (refused.length > 0) throw new Error(`a sample quotation is refused: ${refused.join('; ')}`)
  return jobs
}
