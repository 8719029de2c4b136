import { expect, it } from 'vitest'
import { inSlices } from '../../electron/handlers/inSlices.ts'
import { longestWait } from '../../build/bench/loopWaits.ts'
import { requestOf } from '../../build/bench/buyingRequests.ts'
import { buyingPlan } from '../../shared/cutting/buyingPlan/plan.ts'
import { checkPlan, checkSteps } from '../../shared/cutting/buyingPlan/checkPlan.ts'

/** A week whose proof takes a tenth of a second and more to follow. */
const request = requestOf('week', 20_261_126)
const made = buyingPlan(request, { mostEffort: 5e8 })
if (!made.ok) throw new Error(JSON.stringify(made.problems))
const plan = made.value

it('a plan is looked over a piece at a time before it is placed: nothing else waits over 50 ms', async () => {
  // What else the machine does only ever adds: the least of three goes is nearest to what it needs.
  const goes: number[] = []
  while (goes.length < 3 && !goes.some((longest) => longest <= 50)) {
    goes.push(
      await longestWait(async () => {
        expect((await inSlices(checkSteps(request, plan))).faults).toEqual([])
      }),
    )
  }
  expect(Math.min(...goes), `each go: ${goes.join(', ')}`).toBeLessThanOrEqual(50)
})

it('the look at a long proof lets others have many turns', async () => {
  const seen = { turns: 0, going: true }
  const look = (): void => {
    seen.turns += 1
    if (seen.going) setImmediate(look)
  }
  setImmediate(look)
  const looked = await inSlices(checkSteps(request, plan))
  seen.going = false
  expect(seen.turns).toBeGreaterThan(5)
  expect(looked).toEqual(checkPlan(request, plan))
})
