import { calledIn, describeGate } from '../../shared/describe/describeGate.ts'
import type { AppliedFinish } from '../../shared/describe/described.ts'
import type { Settings } from '../../shared/contract.ts'
import type { Job } from '../../shared/job/job.ts'
import { needsOf } from '../../shared/pricing/needsOf.ts'
import { offerLines } from '../../shared/pricing/offerLines.ts'
import { plannedTimber } from '../../shared/pricing/planTimber.ts'
import type { JobOption, QuotedMoney, QuotedOption } from '../../shared/pricing/quotation.ts'
import { standingBook, type StandingBook } from '../../shared/pricing/standingBook.ts'
import { plainEntry } from '../../shared/pricing/terms.ts'
import { estimateFrom } from '../../shared/pricing/workEstimate.ts'
import { bad, good, type Problem, type Result } from '../../shared/problem.ts'
import { makeableGate, makeableSpec, type MakeableGate } from './cardInput.ts'
import type { Context } from './context.ts'
import { inSlices } from './inSlices.ts'

/** A job priced, ready to be written as a quotation. gate is the first option's; options are the rows it was priced from. */
export type Quote = { money: QuotedMoney; gate: MakeableGate; options: JobOption[]; settings: Settings }

type Desk = { job: Job; settings: Settings; prices: StandingBook }
type Version = Pick<JobOption, 'name' | 'spec' | 'entry'>

const dayLength = 24 * 60 * 60 * 1000

/** A day so many days after another, both ISO. */
const dayAfter = (day: string, days: number): string =>
  new Date(Date.parse(`${day}T00:00:00Z`) + days * dayLength).toISOString().slice(0, 10)

/** A job without options is quoted as it is drawn. */
const versionsOf = (options: JobOption[]): Version[] =>
  options.length > 0 ? options : [{ name: 'As drawn', spec: null, entry: plainEntry }]

function finishOf({ prices }: Desk, { entry }: Version): AppliedFinish | null {
  const item = entry.finish && prices.items.byId(entry.finish.itemId)
  return item?.kind === 'finish' ? { name: item.name, coats: entry.finish?.coats ?? item.facts.coats } : null
}

/** What keeps an option from going out: each line without a price, by its own words. */
const unpriced = ({ name, estimate }: QuotedOption, place: number): Problem[] =>
  estimate.missing.map((id) => {
    const line = estimate.lines.find((one) => one.id === id)
    const words = line?.words ?? 'the tax: no rate has started by this day; enter one under Workshop'
    return { code: 'no-price', field: `options[${place}].${id}`, message: `${name}: ${words}` }
  })

/** One option priced at the desk's prices. Throws RangeError past ten million pounds. */
function priced(desk: Desk, version: Version, { spec, design }: MakeableGate): QuotedOption {
  const { job, settings, prices } = desk
  const { name, entry } = version
  const needs = needsOf(spec, design)
  const { money, times, cutting } = settings
  const asked = { needs, entry, settings: money, times, cutting, buyTimber: plannedTimber }
  const estimate = estimateFrom(prices, asked)
  const told = { spec, design, unit: job.unit, called: calledIn(job.title), finish: finishOf(desk, version) }
  const offer = offerLines({ estimate, settings: money })
  return { name, spec, description: describeGate(told), needs, entry, estimate, offer }
}

function quoteOption(desk: Desk, version: Version): Result<{ option: QuotedOption; gate: MakeableGate }> {
  const gate = version.spec === null ? makeableGate(desk.job) : makeableSpec(version.spec)
  if (!gate.ok) return gate
  try {
    return good({ option: priced(desk, version, gate.value), gate: gate.value })
  } catch (error) {
    if (!(error instanceof RangeError)) throw error
    const message = `${version.name}: the price can’t be worked out; look through the sums put by hand`
    return bad({ code: 'refused', field: '', message })
  }
}

/** Options one at a time: planning the timber of each may take some hundredths of a second. */
function* quoteSteps(desk: Desk, versions: Version[]): Generator<void, ReturnType<typeof quoteOption>[]> {
  const results: ReturnType<typeof quoteOption>[] = []
  for (const version of versions) {
    yield
    results.push(quoteOption(desk, version))
  }
  return results
}

/**
 * Prices every option of a job at the prices that hold on a day. Refused with all that is wrong: a gate that can't be made as entered, a line
 * that nothing in the price book prices.
 */
export async function quoteJob({ book }: Context, job: Job, on: string): Promise<Result<Quote>> {
  const options = book.options.list(job.id)
  const settings = book.settings.read()
  const prices = standingBook(await inSlices(book.prices.bookSteps()), on)
  const results = await inSlices(quoteSteps({ job, settings, prices }, versionsOf(options)))
  const problems = results.flatMap((result, place) =>
    result.ok ? unpriced(result.value.option, place) : result.problems,
  )
  const made = results.flatMap((result) => (result.ok ? [result.value] : []))
  const first = made[0]
  if (problems.length > 0 || !first) return bad(...problems)
  const { money, times } = settings
  const quoted = { on, validUntil: dayAfter(on, money.validDays), options: made.map(({ option }) => option) }
  return good({ money: { settings: money, times, ...quoted }, gate: first.gate, options, settings })
}
