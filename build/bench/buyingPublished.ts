import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { checkPlan } from '../../shared/cutting/buyingPlan/checkPlan.ts'
import { buyingPlan } from '../../shared/cutting/buyingPlan/plan.ts'
import type { BuyRequest } from '../../shared/cutting/buyingPlan/request.ts'
import { inProject } from '../paths.ts'
import { ownClock, sayCounted, within, type Counted, type LongCount } from './longCount.ts'

/** A published set: its folder, whether it has one stock length that costs 1, and how many are asked to be proven. */
type Published = { name: string; folder: string; isSingle: boolean; asked: string }

const sets: Published[] = [
  { name: 'waescher', folder: 'Waescher_CSP', isSingle: true, asked: '17 of 17' },
  { name: 'monaci', folder: 'Crainic1', isSingle: false, asked: '300 of 300' },
  { name: 'belov', folder: 'Belov1', isSingle: false, asked: '38 of 50, aim 47' },
  { name: 'hard28', folder: 'Hard28_CSP', isSingle: true, asked: '17 of 28' },
]

const limitMs = 10_000
const section = 'timber'

/** An instance file, stock lengths (how long, how many, what they cost) and then parts, as a request without kerf or trim. */
function requestIn(text: string, isSingle: boolean): BuyRequest {
  const numbers = text.split(/\s+/).filter(Boolean).map(Number)
  const take = () => numbers.shift() ?? 0
  const parts = (count: number) =>
    Array.from({ length: count }, () => ({ section, length: take(), quantity: take() }))
  const bare = { version: 1 as const, kerf: 0, endTrim: 0, leastOffcut: 1 }
  if (isSingle) {
    const count = take()
    return { ...bare, stock: [{ section, length: take(), pence: 1 }], parts: parts(count) }
  }
  const stock = Array.from({ length: take() }, () => ({
    ...{ section, length: take(), available: take(), pence: take() },
  }))
  return { ...bare, stock, parts: parts(take()) }
}

/** What the published tables say that each instance costs at the least, where they know it. */
function knownOptima(): Map<string, number> {
  const rows = ['optima-single.tsv', 'optima-several.tsv'].flatMap((name) =>
    readFileSync(inProject(`tests/fixtures/cutting/${name}`), 'utf8')
      .trim()
      .split('\n')
      .map((row) => row.split('\t')),
  )
  return new Map(
    rows.flatMap(([name = '', lower, upper]) => (lower === upper ? [[name, Number(lower)] as const] : [])),
  )
}

/** Plans one instance, looks at the plan with the checker and at its cost beside the published optimum. */
function counted(name: string, request: BuyRequest, optimum: number | undefined): Counted {
  const clock = ownClock()
  const start = clock.now()
  const plan = buyingPlan(request, { stop: () => clock.often() - start > limitMs })
  const ms = clock.now() - start
  if (!plan.ok) return { name, ms, left: 1, faults: plan.problems.map(({ message }) => message) }
  const { cost, bound } = plan.value
  const { faults } = checkPlan(request, plan.value)
  const isOther = optimum !== undefined && (cost < optimum || bound > optimum)
  if (isOther) faults.push(`DIFFERENT: ${bound} to ${cost}, published ${optimum}`)
  return { name, ms, left: (cost - bound) / cost, faults }
}

const countOf =
  ({ name, folder, isSingle, asked }: Published): LongCount =>
  (span, say) => {
    const all = process.env['BENCHMARK_FOLDER']
    if (all === undefined || all === '') {
      say(`${name}: not looked at; BENCHMARK_FOLDER names the folder that holds ${folder}`)
      return Promise.resolve()
    }
    const optima = knownOptima()
    const files = readdirSync(join(all, folder))
      .filter((file) => file.endsWith('.txt'))
      .sort()
    const places = within(files.length, span)
    const runs = places.map((place) => {
      const file = files[place - 1] ?? ''
      const instance = file.replace(/\.txt$/, '')
      const request = requestIn(readFileSync(join(all, folder, file), 'utf8'), isSingle)
      return counted(instance, request, optima.get(instance))
    })
    sayCounted({ name, limitMs, asked, of: files.length, places }, runs, say)
    return Promise.resolve()
  }

/** How many of the published instances are proven, where BENCHMARK_FOLDER names a folder kept beside the project that holds them. */
export const publishedCounts = new Map<string, LongCount>(sets.map((set) => [set.name, countOf(set)]))
