import { readdirSync } from 'node:fs'
import type { Page } from '@playwright/test'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { requestOf } from '../../build/bench/buyingRequests.ts'
import { inProject } from '../../build/paths.ts'
import { work, type PlanAsk, type PlanTold } from '../../renderer/timber/planWork.ts'
import { checkPlan } from '../../shared/cutting/buyingPlan/checkPlan.ts'
import { buyingPlan } from '../../shared/cutting/buyingPlan/plan.ts'
import type { BuyingPlan } from '../../shared/cutting/buyingPlan/planModel.ts'
import type { BuyRequest } from '../../shared/cutting/buyingPlan/request.ts'
import { shuffled } from '../buyingPlan/smallRequests.ts'
import { bench, type Bench } from './onScreen.ts'

/** Long enough that no clock ends a plan here: only the work does. */
const limitMs = 3_600_000
const runs = [1, 2, 3]

const inSection = (section: string, { parts, stock, rack = [] }: BuyRequest) => ({
  parts: parts.map((part, n) => ({ ...part, section, mark: `gate ${n % 3}` })),
  stock: stock.map((one) => ({ ...one, section })),
  rack: rack.map((one) => ({ ...one, section })),
})

/** A job's boards, ledges and braces in one request, each of a seed of its own. */
function jobOf(seed: number, rack: boolean): BuyRequest {
  const [boards, ledges] = [requestOf('job', seed, { rack }), requestOf('job', seed + 1, { rack })]
  const [one, two] = [inSection('boards', boards), inSection('ledges', ledges)]
  return {
    ...boards,
    parts: [...one.parts, ...two.parts],
    stock: [...one.stock, ...two.stock],
    rack: [...one.rack, ...two.rack],
  }
}

const requests: [what: string, request: BuyRequest][] = [
  ['a job', jobOf(20_261_126, false)],
  ['a job with offcuts on the rack', jobOf(20_261_131, true)],
  ['a week', requestOf('week', 20_261_129)],
  ['a week with offcuts on the rack', requestOf('week', 20_261_128, { rack: true })],
]

/** The same request with its rows in another order. */
const mixed = (request: BuyRequest, run: number): BuyRequest => ({
  ...request,
  parts: shuffled(request.parts, run),
  stock: shuffled(request.stock, run + 10),
  rack: shuffled(request.rack ?? [], run + 20),
})

const askFor = (request: BuyRequest): PlanAsk => ({
  ...{ ask: 'plan', requests: { plain: request, paired: null }, limitMs },
})

/** All that was told of plans, section by section, each plan with its certificate. */
const bytesOf = (told: readonly PlanTold[]): string =>
  JSON.stringify(
    told
      .flatMap((step) => (step.told === 'planned' ? [step] : []))
      .sort((a, b) => (a.section < b.section ? -1 : a.section > b.section ? 1 : 0)),
  )

const lastPlans = (told: readonly PlanTold[]): Map<string, BuyingPlan> =>
  new Map(told.flatMap((step) => (step.told === 'planned' ? [[step.section, step.plan]] : [])))

function inNode(request: BuyRequest): PlanTold[] {
  const told: PlanTold[] = []
  work(askFor(request), (step) => told.push(step))
  return told
}

/** The planner as it was built, found among the files that the page is given. */
function builtPlanner(): string {
  const files = readdirSync(inProject('build/out/renderer/assets')).filter((name) =>
    /^planWorker.*\.js$/.test(name),
  )
  expect(files).toHaveLength(1)
  return `/assets/${files[0]}`
}

/** Asks the built planner in a worker of the page, under the page's own policy of what may be loaded. */
const inBrowser = (page: Page, request: BuyRequest): Promise<PlanTold[]> =>
  page.evaluate(
    ([planner, ask]) =>
      new Promise<PlanTold[]>((resolve, reject) => {
        const worker = new Worker(planner, { type: 'module' })
        const told: PlanTold[] = []
        worker.addEventListener('error', () => reject(new Error('the planner stopped')))
        worker.addEventListener('message', ({ data }: MessageEvent<PlanTold>) => {
          told.push(data)
          if (data.told !== 'done') return
          worker.terminate()
          resolve(told)
        })
        worker.postMessage(ask)
      }),
    [builtPlanner(), askFor(request)] as const,
  )

describe('the same request, its rows in any order, in Node and in a worker of the browser', () => {
  let desk: Bench
  let page: Page
  const refused: string[] = []
  beforeAll(async () => {
    desk = await bench()
    page = await desk.window()
    page.on('console', (line) => line.type() === 'error' && refused.push(line.text()))
  })
  afterAll(() => desk.clear())

  it.each(requests)('gives the same bytes three times over for %s, proof and all', async (_what, request) => {
    const first = inNode(request)
    const bytes = bytesOf(first)
    for (const plan of lastPlans(first).values()) expect(plan.status).toBe('proven')
    for (const run of runs) {
      expect(bytesOf(inNode(mixed(request, run)))).toBe(bytes)
      expect(bytesOf(await inBrowser(page, run === 1 ? request : mixed(request, run + 100)))).toBe(bytes)
    }
  })

  it.each(requests)('gives %s the same bytes three times over when planned at once', (_what, request) => {
    const bytes = runs.map((run) => {
      const plan = buyingPlan(run === 1 ? request : mixed(request, run + 200))
      if (!plan.ok) throw new Error(JSON.stringify(plan.problems))
      expect(checkPlan(request, plan.value)).toEqual({ faults: [], bound: plan.value.cost })
      return JSON.stringify(plan.value)
    })
    expect(new Set(bytes).size).toBe(1)
  })

  it('ran under a policy that lets in nothing but the program’s own files, and broke none of it', async () => {
    const policy = await page.evaluate(async () =>
      (await fetch(location.href)).headers.get('content-security-policy'),
    )
    expect(policy).toContain("default-src 'none'")
    expect(policy).toContain("script-src 'self'")
    expect(policy).not.toMatch(/unsafe|worker-src/)
    expect(refused).toEqual([])
  })
})
