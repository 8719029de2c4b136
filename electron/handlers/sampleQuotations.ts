import { dayFrom } from '../../db/demo/dayFrom.ts'
import type { SampleOption, SampleQuotation } from '../../db/demo/sampleQuotations.ts'
import { specOf } from '../../shared/gate/parseSpec.ts'
import type { GateSpec } from '../../shared/gate/spec.ts'
import { placedAt } from '../../shared/job/specPath.ts'
import type { Paper } from '../../shared/job/job.ts'
import type { PaperFormat } from '../../shared/papers/page.ts'
import type { Gives, RequestName, Takes } from '../../shared/contract.ts'
import { plainEntry, type EstimateEntry } from '../../shared/pricing/terms.ts'
import type { Result } from '../../shared/problem.ts'
import { answer } from './answer.ts'
import type { Context } from './context.ts'

/** A sample job and the quotation it is to have. */
export type QuotedSample = { jobId: number; quotation: SampleQuotation }

type Ask = <N extends RequestName>(name: N, payload: Takes<N>) => Promise<Gives<N>>

class SampleRefused extends Error {}

/** Asks as a window would on that day, at ten in the morning. */
const askOn =
  (context: Context, day: string): Ask =>
  async <N extends RequestName>(name: N, payload: Takes<N>) => {
    const result = (await answer(
      { ...context, now: () => `${day}T10:00:00.000Z`, dayOf: () => day },
      name,
      payload,
    )) as Result<Gives<N>>
    if (!result.ok)
      throw new SampleRefused(`${name}: ${result.problems.map(({ message }) => message).join('; ')}`)
    return result.value
  }

function finishIn({ book }: Context, name: string | undefined): EstimateEntry['finish'] {
  const item = book.prices.book().items.find((one) => one.kind === 'finish' && one.name === name)
  return item ? { itemId: item.id, coats: null } : null
}

/** The job's gate with what differs in an option; null where nothing does. */
function specIn({ book }: Context, jobId: number, { gate }: SampleOption): GateSpec | null {
  const job = book.jobs.open(jobId)
  const spec = job && specOf(job.entry.spec)
  if (!spec || !gate) return null
  return Object.entries(gate).reduce<GateSpec>(
    (changed, [path, value]) => placedAt(changed, path.split('.'), value) as GateSpec,
    spec,
  )
}

async function quote(
  context: Context,
  { jobId, quotation }: QuotedSample,
  format: PaperFormat,
): Promise<void> {
  const today = context.dayOf(context.now())
  const ask = askOn(context, dayFrom(today, quotation.issued))
  for (const option of quotation.options) {
    const entry = { ...plainEntry, ...option.entry, finish: finishIn(context, option.finish) }
    const spec = specIn(context, jobId, option)
    await ask('options.add', { jobId, option: { name: option.name, spec, entry } })
  }
  const version = context.book.jobs.open(jobId)?.version ?? 0
  const paper: Paper = await ask('quotations.issue', { jobId, format, version })
  const { accepted, done = [] } = quotation
  if (accepted) {
    const { option, on, note } = accepted
    await ask('quotations.accept', { paperId: paper.id, option, acceptedOn: dayFrom(today, on), note })
  }
  for (const { on, ...entry } of done) await ask('workDone.add', { jobId, ...entry, on: dayFrom(today, on) })
}

/**
 * Prices and quotes sample jobs through the same requests that a window sends, each on its own day at that day's prices. What is refused comes
 * back in words.
 */
export async function quoteSamples(
  context: Context,
  samples: QuotedSample[],
  format: PaperFormat,
): Promise<string[]> {
  const refused: string[] = []
  for (const sample of samples) {
    try {
      await quote(context, sample, format)
    } catch (error) {
      if (!(error instanceof SampleRefused)) throw error
      refused.push(error.message)
    }
  }
  return refused
}
