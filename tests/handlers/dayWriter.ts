import { openedBook } from '../../electron/openedBook.ts'
import type { Job, JobRow, Paper } from '../../shared/job/job.ts'
import type { QuotationInput } from '../../shared/papers/quotationInput.ts'
import type { Rise } from '../../shared/pricing/price.ts'
import type { PriceBook } from '../../shared/pricing/book.ts'
import type { RisePreview } from '../../shared/pricing/quotation.ts'

/**
 * Run by itself in a time zone (TZ): opens a sample book at a moment, raises every price from a day, issues a quotation and says the days
 * that it got: `node dayWriter.ts BOOK MOMENT RISEN-FROM`.
 */
const [path = '', at = '', risenFrom = ''] = process.argv.slice(2)
const painted = async (input: unknown) => ({
  bytes: new TextEncoder().encode(JSON.stringify(input)),
  pages: 1,
})
const book = await openedBook({
  path,
  now: () => at,
  makeCard: painted,
  makeQuotation: painted,
  makeBenchPaper: painted,
  print: null,
  log: (line) => process.stderr.write(`${line}\n`),
})

async function ask<T>(name: string, payload: unknown): Promise<T> {
  const result = await book.answer(name, payload)
  if (!result.ok) throw new Error(`${name}: ${JSON.stringify(result.problems)}`)
  return result.value as T
}

const { rows } = await ask<{ rows: JobRow[] }>('jobs.list', { search: '', stage: null })
const quoted = rows.find(({ stage }) => stage === 'quoted')
const { id, version } = await ask<Job>('jobs.open', { id: quoted?.id })
const { prices } = await ask<PriceBook>('prices.book', {})
const risen = prices
  .filter(
    (one, place) =>
      prices.findIndex((other) =>
        (['itemId', 'supplierId', 'unit', 'size'] as const).every((key) => other[key] === one[key]),
      ) === place,
  )
  .map(({ itemId, supplierId, unit, size, pence }) => ({
    ...{ itemId, supplierId, unit, size, startsOn: risenFrom },
    pence: pence * 2,
  }))
const { stamp } = await ask<RisePreview>('prices.preview', { prices: risen })
await ask<Rise>('prices.apply', { prices: risen, origin: 'twice as much', stamp })
const issue = { jobId: id, format: 'a4', version }
const { id: paperId } = await ask<Paper>('quotations.issue', issue)
const { base64 } = await ask<{ base64: string }>('papers.bytes', { id: paperId })
const { header, money } = JSON.parse(Buffer.from(base64, 'base64').toString('utf8')) as QuotationInput
const sources = money.options.flatMap(({ estimate }) => estimate.lines.map(({ how }) => how.source))
process.stdout.write(
  JSON.stringify({
    on: money.on,
    issuedOn: header.issuedOn,
    validUntil: money.validUntil,
    risen: sources.some((words) => words.includes('twice as much')),
  }),
)
await book.close()
