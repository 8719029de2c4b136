import { design } from '../../shared/gate/design.ts'
import { standardDraft } from '../../shared/gate/standardSpec.ts'
import type { GateSpec } from '../../shared/gate/spec.ts'
import type { JobCardInput } from '../../shared/papers/jobCardInput.ts'

/** The gate a new job starts from, at a garden gate's usual size. */
export const standardGate = (): GateSpec => ({
  ...standardDraft(),
  size: { from: 'leaf', width: 915, height: 1830 },
})

/** All that a gate's job card is made from, for an invented customer. Throws when the gate can't be made. */
export function cardInput(spec: GateSpec): JobCardInput {
  const outcome = design(spec)
  if (!outcome.made) throw new Error('the bench needs a gate that can be made')
  const customer = { name: 'An invented customer', address: '', town: 'Much Mallet', phone: '', email: '' }
  const header = {
    workshop: 'A made-up workshop',
    number: '2026-001',
    title: 'Side gate',
    customer,
    due: '2026-12-18',
    notes: '',
    revision: 1,
    issuedAt: '2026-11-25T10:00:00.000Z',
  }
  return { header, spec, design: outcome.design, unit: 'mm', format: 'a4', draft: false }
}
