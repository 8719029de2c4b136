import type { Step } from './step.ts'

const reasons: [table: string, why: (step: Step) => string | undefined][] = [
  ['papers', () => 'Issued papers stand; issue a new one.'],
  ['acceptances', () => 'What a customer accepted stands; issue a new quotation if it is agreed otherwise.'],
  [
    'orders',
    ({ was, of }) =>
      was === null
        ? `A placed order stands; open order ${of} and cancel it there.`
        : `A cancelled order stays cancelled; place a new one.`,
  ],
]

/** Why a deed can't be taken back, in a sentence with what to do instead; null when it can. A job from a file brings its own papers: it can be put away with them. */
export function whyFixed(steps: readonly Step[]): string | null {
  if (steps.some(({ table, was }) => table === 'jobs' && was === null)) return null
  for (const [table, why] of reasons) {
    const step = steps.find((one) => one.table === table)
    const said = step && why(step)
    if (said) return said
  }
  return null
}
