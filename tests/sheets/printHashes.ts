import { createHash } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { makeBenchPaper } from '../../electron/makeBenchPaper.ts'
import { makeCard } from '../../electron/makeCard.ts'
import { makeQuotation } from '../../electron/makeQuotation.ts'
import type { DayListInput } from '../../shared/papers/dayList/dayListInput.ts'
import type { JobCardInput } from '../../shared/papers/jobCardInput.ts'
import type { TimberOrderInput } from '../../shared/papers/order/timberOrderInput.ts'
import type { QuotationInput } from '../../shared/papers/quotationInput.ts'

/** What one run is to print. */
export type PrintRun = {
  card: JobCardInput
  quotation: QuotationInput
  order: TimberOrderInput
  day: DayListInput
}

/** Where and how a run printed, and the sum of each paper's bytes, made twice. */
export type PrintedSums = { zone: string; locale: string; sums: Record<string, [string, string]> }

const sheets = ['job card', 'worked figures', 'fitting sheet', 'care note', 'part labels'] as const

/** Every paper of a run as its makers make it. */
async function printedOnce({ card, quotation, order, day }: PrintRun): Promise<Record<string, string>> {
  const sum = ({ bytes }: { bytes: Uint8Array }) => createHash('sha256').update(bytes).digest('hex')
  const out: Record<string, string> = {}
  for (const sheet of sheets) out[sheet] = sum(await makeCard(card, sheet))
  out['quotation'] = sum(await makeQuotation(quotation))
  out['timber order'] = sum(await makeBenchPaper({ paper: 'timber order', input: order }))
  out['day list'] = sum(await makeBenchPaper({ paper: 'day list', input: day }))
  return out
}

const file = process.argv[2]
if (file !== undefined) {
  const run = JSON.parse(readFileSync(file, 'utf8')) as PrintRun
  const [first, second] = [await printedOnce(run), await printedOnce(run)]
  const { timeZone, locale } = Intl.DateTimeFormat().resolvedOptions()
  const sums = Object.fromEntries(
    Object.entries(first).map(([name, sum]) => [name, [sum, second[name] ?? '']]),
  )
  process.stdout.write(JSON.stringify({ zone: timeZone, locale, sums }))
}
