import type { AppliedFinish } from '../../shared/describe/described.ts'
import type { Handover } from '../../shared/papers/jobCardInput.ts'
import type { Context } from './context.ts'

/**
 * The finish of the option a job was sold on, as its line of the price book has it: null where that option leaves the gate bare. undefined where
 * nothing was accepted, or the line is gone, so that a customer is told nothing that isn't known.
 */
function finishOf({ book }: Context, jobId: number): AppliedFinish | null | undefined {
  const sold = book.quotations.accepted(jobId)
  if (!sold) return undefined
  const { finish } = sold.entry
  if (finish === null) return null
  const item = book.prices.item(finish.itemId)
  return item?.kind === 'finish' ? { name: item.name, coats: finish.coats ?? item.facts.coats } : undefined
}

/** What a job's care note needs beside its gate: the workshop as it stands on a customer's paper, and the finish it put on. */
export function handoverOf(context: Context, jobId: number): Handover {
  const { business } = context.book.settings.read()
  const finish = finishOf(context, jobId)
  return finish === undefined ? { business } : { business, finish }
}
