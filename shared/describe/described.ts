import type { Design } from '../gate/designModel.ts'
import type { GateSpec } from '../gate/spec.ts'
import type { LengthUnit } from '../job/job.ts'
import type { SizeWords } from './sizeWords.ts'

/** What a customer calls it. The spec doesn't know: `calledIn` reads it out of the job's title. */
export type Called = 'gate' | 'door'

/** A finish put on at the workshop: its name as the price book has it, and how many coats. */
export type AppliedFinish = { name: string; coats: number }

/**
 * A gate to be told in plain words: as entered and as worked out (a design without stops), in the unit whose figures come first. called
 * is 'gate' unless said. finish: what is put on; null for left bare; left out where nothing shall be said of it.
 */
export type Described = {
  spec: GateSpec
  design: Pick<Design, 'leaves'>
  unit: LengthUnit
  called?: Called
  finish?: AppliedFinish | null
}

/** The same made ready: what it is called settled, sizes as words, its one timber if it has only one. */
export type Telling = Described & {
  called: Called
  sizes: SizeWords
  one: string | undefined
  kind: 'single' | 'pair' | 'stable'
}

/** The first leaf of a gate being told. Throws RangeError for a design without one, which can't be quoted. */
export function firstLeaf({ design }: Pick<Described, 'design'>) {
  const [leaf] = design.leaves
  if (!leaf) throw new RangeError('a design without a leaf can’t be described')
  return leaf
}
