import { leastCost } from './checkBound.ts'
import { lengthsFaults } from './checkLengths.ts'
import { taskOf, type Steps } from './checkTask.ts'
import type { BuyingPlan, Certificate } from './planModel.ts'
import type { BuyRequest } from './request.ts'

/** What an independent look at a plan found: faults in words, none when it holds; bound: the pence that its certificates do show. */
export type Checked = { faults: string[]; bound: number }

/** The pence that a section's certificate shows that no plan goes below: never more than the certificate's own plan costs. */
function* shownBound(request: BuyRequest, certificate: Certificate): Steps<number | string> {
  const task = taskOf(request, certificate)
  return typeof task === 'string'
    ? task
    : Math.min(certificate.cost, yield* leastCost(task, certificate.proof))
}

function* sectionChecked(request: BuyRequest, plan: BuyingPlan, certificate: Certificate): Steps<Checked> {
  const { section, cost, bound } = certificate
  yield
  const shown = yield* shownBound(request, certificate)
  const paid = plan.lengths.reduce(
    (sum, one) => sum + (one.section === section ? one.pence * one.count : 0),
    0,
  )
  const faults = paid === cost ? [] : [`${section}: costs ${paid}, its certificate says ${cost}`]
  if (typeof shown === 'string') return { faults: [shown, ...faults], bound: 0 }
  if (shown < bound) faults.unshift(`${section}: a bound of ${bound} is claimed, ${shown} is shown`)
  return { faults, bound: shown }
}

/** What the plan says of itself beside what is shown: its bound, and whether it is proven. */
function claimFaults({ cost, bound, status, shown }: BuyingPlan, isShown: number): string[] {
  const isProven = bound === cost
  return [
    ...(bound > isShown ? [`bound: ${bound} is claimed, ${isShown} is shown`] : []),
    ...(status === (isProven ? 'proven' : 'best-found') && shown.cost === isProven
      ? []
      : [`status: ${status} at ${cost} with a bound of ${bound}`]),
  ]
}

const named = (sections: readonly { section: string }[]): string =>
  JSON.stringify(sections.map(({ section }) => section).sort())

function* boundChecked(request: BuyRequest, plan: BuyingPlan): Steps<Checked> {
  const sections = [...new Set(request.parts.map(({ section }) => section))].map((section) => ({ section }))
  if (named(plan.certificate) !== named(sections))
    return { faults: ['certificate: not one for each section'], bound: 0 }
  const faults: string[] = []
  let bound = 0
  for (const certificate of plan.certificate) {
    const checked = yield* sectionChecked(request, plan, certificate)
    faults.push(...checked.faults)
    bound += checked.bound
  }
  return { faults: [...faults, ...claimFaults(plan, bound)], bound }
}

/**
 * Looks at a plan with nothing of the solver's, a piece at a time: cuts fit their lengths, every part is cut, nothing is taken more often than
 * it is to be had, costs, waste and ways of cutting add up, and each bound follows from its certificate in whole numbers. Only the duals and the
 * splits are taken from the plan. A proof that makes no sense at all throws RangeError or TypeError.
 */
export function* checkSteps(request: BuyRequest, plan: BuyingPlan): Steps<Checked> {
  const faults = yield* lengthsFaults(request, plan)
  const { faults: more, bound } = yield* boundChecked(request, plan)
  return { faults: [...faults, ...more], bound }
}

/** The same look all at once, for where nobody waits. */
export function checkPlan(request: BuyRequest, plan: BuyingPlan): Checked {
  const steps = checkSteps(request, plan)
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value
  }
}
