import { readFileSync } from 'node:fs'
import { checkPlan } from '../../shared/cutting/buyingPlan/checkPlan.ts'
import { buyingPlan } from '../../shared/cutting/buyingPlan/plan.ts'
import type { BuyRequest } from '../../shared/cutting/buyingPlan/request.ts'

/** What a process of its own is asked: to plan a request within a limit by the clock and look the plan over, or nothing. */
export type ChildAsk = { request: BuyRequest; limitMs: number } | null

/** Its most memory at any time, kB, and what is wrong with the plan. */
export type ChildTold = { peak: number; faults: string[] }

/** The process's own peak. Linux gives a new process its parent's in resourceUsage, so its own table is read where there is one. */
function peakMemory(): number {
  try {
    const [, own] = /^VmHWM:\s+(\d+) kB$/m.exec(readFileSync('/proc/self/status', 'utf8')) ?? []
    if (own !== undefined) return Number(own)
  } catch (error) {
    if (!(error instanceof Error && 'code' in error && error.code === 'ENOENT')) throw error
  }
  return process.resourceUsage().maxRSS
}

function faultsOf({ request, limitMs }: NonNullable<ChildAsk>): string[] {
  const until = performance.now() + limitMs
  const plan = buyingPlan(request, { stop: () => performance.now() > until })
  return plan.ok ? checkPlan(request, plan.value).faults : plan.problems.map(({ message }) => message)
}

const ask = JSON.parse(readFileSync(0, 'utf8')) as ChildAsk
const told: ChildTold = { faults: ask ? faultsOf(ask) : [], peak: peakMemory() }
process.stdout.write(JSON.stringify(told))
