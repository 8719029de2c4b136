import { leastCost } from './checkBound.ts'
import { offered, offerKey, roomOf, tally, taskOf, tenths } from './checkTask.ts'
import type { BuyingPlan, Certificate } from './planModel.ts'
import type { BuyRequest } from './request.ts'

/** What an independent look at a plan found: faults in words, none when it holds; bound: the pence that its certificates do show. */
export type Checked = { faults: string[]; bound: number }

const partKey = (section: string, { length, mark }: { length: number; mark?: string | undefined }): string =>
  JSON.stringify([section, length, mark ?? null])

function lengthFaults(request: BuyRequest, plan: BuyingPlan): string[] {
  return plan.lengths.flatMap((one, index) => {
    const spare = one.cuts.reduce(
      (left, { length }) => left - tenths(length) - tenths(request.kerf),
      roomOf(request, one),
    )
    const offcut = Math.max(0, spare - tenths(request.kerf))
    return [
      ...(spare < 0 ? [`lengths[${index}]: its cuts don't fit, ${-spare / 10} mm too much`] : []),
      ...(tenths(one.offcut) === offcut ? [] : [`lengths[${index}]: its offcut is ${offcut / 10}`]),
      ...(Number.isInteger(one.count) && one.count > 0 && one.cuts.length > 0
        ? []
        : [`lengths[${index}]: cuts nothing`]),
    ]
  })
}

function sumFaults(request: BuyRequest, plan: BuyingPlan): string[] {
  const wanted = tally(request.parts.map((part) => [partKey(part.section, part), part.quantity]))
  const cut = tally(
    plan.lengths.flatMap(({ section, cuts, count }) =>
      cuts.map((one): [string, number] => [partKey(section, one), count]),
    ),
  )
  const taken = tally(plan.lengths.map((one) => [offerKey(one.section, one), one.count]))
  const have = offered(request)
  const cost = plan.lengths.reduce((total, { pence, count }) => total + pence * count, 0)
  return [
    ...[...new Set([...wanted.keys(), ...cut.keys()])]
      .filter((key) => wanted.get(key) !== cut.get(key))
      .map((key) => `${key}: ${wanted.get(key) ?? 0} wanted, ${cut.get(key) ?? 0} cut`),
    ...[...taken]
      .filter(([key, count]) => count > (have.get(key) ?? 0))
      .map(([key]) => `${key}: not to be had so often`),
    ...(cost === plan.cost ? [] : [`cost: the lengths come to ${cost} pence, not ${plan.cost}`]),
  ]
}

/** The pence that a section's certificate shows that no plan goes below: never more than the certificate's own plan costs. */
function shownBound(request: BuyRequest, certificate: Certificate): number | string {
  const task = taskOf(request, certificate)
  return typeof task === 'string' ? task : Math.min(certificate.cost, leastCost(task, certificate.proof))
}

function boundFaults(request: BuyRequest, plan: BuyingPlan): Checked {
  const sections = [...new Set(request.parts.map(({ section }) => section))].sort().join('\n')
  if (
    plan.certificate
      .map(({ section }) => section)
      .sort()
      .join('\n') !== sections
  )
    return { faults: ['certificate: not one for each section'], bound: 0 }
  const faults: string[] = []
  let bound = 0
  for (const certificate of plan.certificate) {
    const { section, cost } = certificate
    const shown = shownBound(request, certificate)
    if (typeof shown === 'string') faults.push(shown)
    else bound += shown
    if (typeof shown === 'number' && shown < certificate.bound)
      faults.push(`${section}: a bound of ${certificate.bound} is claimed, ${shown} is shown`)
    const paid = plan.lengths.reduce(
      (sum, one) => sum + (one.section === section ? one.pence * one.count : 0),
      0,
    )
    if (paid !== cost) faults.push(`${section}: costs ${paid}, its certificate says ${cost}`)
  }
  if (plan.bound > bound) faults.push(`bound: ${plan.bound} is claimed, ${bound} is shown`)
  if (
    plan.status !== (plan.bound === plan.cost ? 'proven' : 'best-found') ||
    plan.shown.cost !== (plan.bound === plan.cost)
  )
    faults.push(`status: ${plan.status} at ${plan.cost} with a bound of ${plan.bound}`)
  return { faults, bound }
}

/**
 * Looks at a plan with nothing of the solver's: cuts fit their lengths, every part is cut, nothing is taken more often than it is to be had,
 * costs add up, and each bound follows from its certificate in whole numbers. Only the duals and the splits are taken from the plan.
 */
export function checkPlan(request: BuyRequest, plan: BuyingPlan): Checked {
  const { faults, bound } = boundFaults(request, plan)
  return { faults: [...lengthFaults(request, plan), ...sumFaults(request, plan), ...faults], bound }
}
