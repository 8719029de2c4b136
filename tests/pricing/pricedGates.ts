import { design } from '../../shared/gate/design.ts'
import type { Design } from '../../shared/gate/designModel.ts'
import type { GateSpec } from '../../shared/gate/spec.ts'
import type { Needs } from '../../shared/pricing/needs.ts'
import { needsOf } from '../../shared/pricing/needsOf.ts'
import { wholeGates } from '../drawing/wholeGates.ts'
import { addFinish, addRates, emptyBook, stock } from './aBook.ts'

export type NeededGate = { name: string; spec: GateSpec; design: Design; needs: Needs }

/** The forty example gates with what each takes. */
export const neededGates: readonly NeededGate[] = wholeGates.map(({ name, spec }) => {
  const outcome = design(spec)
  if (!outcome.made) throw new Error(`${name} can’t be made`)
  return { name, spec, design: outcome.design, needs: needsOf(spec, outcome.design) }
})

/** A book that prices everything the forty gates take, and the finish in it. */
export function fullBook() {
  const book = emptyBook()
  addRates(book)
  const finish = addFinish(book)
  for (const { needs } of neededGates) stock(book, needs)
  return { book, finish }
}
