import { buyingPlan } from '../../shared/cutting/buyingPlan/plan.ts'
import { checkPlan } from '../../shared/cutting/buyingPlan/checkPlan.ts'
import type { BuyingPlan } from '../../shared/cutting/buyingPlan/planModel.ts'
import { parseBuyRequest } from '../../shared/cutting/buyingPlan/request.ts'
import { parseSpecText } from '../../shared/gate/specText.ts'
import { bad } from '../../shared/problem.ts'
import { finish, refused, type Ending } from './commandLine.ts'
import { readTextFile } from './readTextFile.ts'

/** What a request asks for at most, kept by the clock; without a limit the search ends by its own measure of work. */
function stopAfter(limitMs: number | undefined): () => boolean {
  if (limitMs === undefined) return () => false
  const end = performance.now() + limitMs
  return () => performance.now() > end
}

/** The plan with by how much it may be dearer than the best there is: pence, and in words. */
function withGap({ version, status, cost, bound, ...rest }: BuyingPlan) {
  const gap = cost - bound
  const sum = gap < 100 ? `${gap}p` : `£${(gap / 100).toFixed(2)}`
  const said = gap === 0 ? 'no cheaper way there is' : `at most ${sum} dearer than the best there is`
  return { version, status, cost, bound, gap, said, ...rest }
}

/** `buy REQUEST.json`: the cheapest lengths for a request as JSON, looked at by the independent checker before it is printed. */
async function buy(args: string[]): Promise<Ending> {
  const [path, ...more] = args
  if (path === undefined || more.length > 0 || path.startsWith('-')) {
    const message = `got ${args.length === 0 ? 'nothing' : args.join(' ')}, one request file is accepted: REQUEST.json`
    return refused([{ code: 'arguments', field: 'arguments', message }])
  }
  const text = await readTextFile(path, 'a request file')
  const parsed = text.ok ? parseSpecText(text.value, 'a buying request') : bad(...text.problems)
  const request = parsed.ok ? parseBuyRequest(parsed.value) : bad(...parsed.problems)
  if (!request.ok) return refused(request.problems)
  const plan = buyingPlan(request.value, { stop: stopAfter(request.value.timeLimitMs) })
  if (!plan.ok) return refused(plan.problems)
  const { faults } = checkPlan(request.value, plan.value)
  if (faults.length > 0)
    return {
      code: 1,
      out: '',
      errors: [`The plan did not pass its own check and is not printed: ${faults.join('; ')}.`],
    }
  return { code: 0, out: `${JSON.stringify(withGap(plan.value), null, 2)}\n`, errors: [] }
}

finish(await buy(process.argv.slice(2)))
