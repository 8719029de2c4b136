import { design } from '../../shared/gate/design.ts'
import { parseSpec } from '../../shared/gate/parseSpec.ts'
import type { GateSpec } from '../../shared/gate/spec.ts'
import type { LengthUnit } from '../../shared/job/job.ts'
import { seeded, type Draws } from './seeded.ts'

/** A gate with the unit its drawings are figured in. */
export type VariedSpec = { spec: GateSpec; unit: LengthUnit }

/** Narrowest and widest, lowest and highest leaf drawn, mm: from a wicket to a tall door. */
const [widths, heights] = [
  [620, 1250],
  [900, 2150],
] as const

function varied(base: GateSpec, { between, one }: Draws): GateSpec {
  const { boards, ledges, braces } = base
  const { section } = boards
  return {
    ...base,
    hung: one(['left', 'right']),
    size: { from: 'leaf', width: between(...widths), height: between(...heights) },
    boards: {
      ...boards,
      section: { ...section, width: section.width + between(-15, 25), thickness: between(16, 27) },
      rip: one(['hanging', 'closing', 'both']),
      gap: between(0, 4, 0.5),
      endTrim: between(5, 20),
    },
    ledges: {
      ...ledges,
      section: { ...ledges.section, width: between(95, 170) },
      count: one([2, 3, 'auto']),
      heights: 'auto',
      hangingInset: between(0, 15),
      closingInset: between(0, 18),
    },
    ...(braces && {
      braces: {
        ...braces,
        run: one(['each-bay', 'in-line']),
        footSetback: between(25, 60),
        headSetback: between(25, 60),
      },
    }),
  }
}

/** Whether a spec is admitted and makes a gate: one that is stopped early would be a cheap keystroke. */
const makesGate = (spec: GateSpec): boolean => {
  const read = parseSpec(spec)
  return read.ok && design(read.value).made
}

/**
 * count gates drawn from the examples with other sizes, boards, ledges and braces, every one of them a gate that can be made.
 * The same seed gives the same gates. Throws when the examples hardly ever make one.
 */
export function variedSpecs(examples: readonly GateSpec[], count: number, seed: number): VariedSpec[] {
  const draws = seeded(seed)
  const found: VariedSpec[] = []
  for (let tries = 0; found.length < count; tries += 1) {
    if (tries > 50 * count) throw new Error(`only ${found.length} of ${count} gates could be made`)
    const spec = varied(draws.one(examples), draws)
    const unit = draws.one(['mm', 'mm', 'in'] as const)
    if (makesGate(spec)) found.push({ spec, unit })
  }
  return found
}
