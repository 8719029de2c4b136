import { parseRequest, type RequestName, type Takes } from '../../shared/contract.ts'
import { unwritable } from '../../shared/gate/unwritable.ts'
import { mostRiseLines } from '../../shared/pricing/requests.ts'
import { bad, type Problem, type Result } from '../../shared/problem.ts'
import { inSlices } from './inSlices.ts'

/** A list up to this long is read at once, in a few ms. */
const readAtOnce = 1000
/** As many problems as anybody reads. */
const mostProblems = 100

type WithPrices = { prices: unknown[] }

const isLong = (payload: unknown): payload is WithPrices =>
  typeof payload === 'object' &&
  payload !== null &&
  'prices' in payload &&
  Array.isArray(payload.prices) &&
  payload.prices.length > readAtOnce

function read<N extends RequestName>(name: N, payload: unknown): Result<Takes<N>> {
  const problem = unwritable(payload)
  return problem ? bad(problem) : parseRequest(name, payload)
}

const moved = (problem: Problem, from: number): Problem => ({
  ...problem,
  field: problem.field.replace(/^prices\[(\d+)\]/, (_, place: string) => `prices[${from + Number(place)}]`),
})

/** A piece of a list from outside, by its places: its own methods make what its 'constructor' says. */
function piece(list: readonly unknown[], from: number): unknown[] {
  const found: unknown[] = []
  for (let at = from; at < Math.min(list.length, from + readAtOnce); at += 1) found.push(list[at])
  return found
}

function* readingSteps<N extends RequestName>(
  name: N,
  payload: WithPrices,
): Generator<void, Result<Takes<N>>> {
  const taken: unknown[] = []
  const problems: Problem[] = []
  const parts: { value: Takes<N> | null } = { value: null }
  for (let from = 0; from < payload.prices.length; from += readAtOnce) {
    const prices = piece(payload.prices, from)
    const part = read(name, { ...payload, prices })
    if (!part.ok) problems.push(...part.problems.map((problem) => moved(problem, from)))
    else {
      parts.value = part.value
      if ('prices' in part.value) for (const price of part.value.prices) taken.push(price)
    }
    // What is wrong beside the list is wrong with every part of it, and said once.
    if (problems.length >= mostProblems || problems.some(({ field }) => !field.startsWith('prices['))) break
    yield
  }
  const { value } = parts
  return problems.length > 0 || value === null
    ? { ok: false, problems: problems.slice(0, mostProblems) }
    : { ok: true, value: { ...value, prices: taken } }
}

/** Reads a request's payload; a long list of prices a piece at a time, so that a merchant's whole list doesn't hold the window up. */
export async function readRequest<N extends RequestName>(
  name: N,
  payload: unknown,
): Promise<Result<Takes<N>>> {
  if (!isLong(payload)) return read(name, payload)
  if (payload.prices.length > mostRiseLines)
    return bad({
      code: 'refused',
      field: 'prices',
      message: `got a list of ${payload.prices.length}, accepted is up to ${mostRiseLines} prices at once`,
    })
  return inSlices(readingSteps(name, payload))
}
