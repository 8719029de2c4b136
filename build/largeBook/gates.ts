import { catalogue } from '../../shared/ironmongery/catalogue.ts'
import type { DraftSpec, GateSpec } from '../../shared/gate/spec.ts'
import { parseDraft } from '../../shared/gate/parseSpec.ts'
import type { LengthUnit } from '../../shared/job/job.ts'
import { exampleSpecs } from '../bench/exampleSpecs.ts'
import type { Draws } from '../bench/seeded.ts'
import { variedSpecs } from '../bench/variedSpecs.ts'

/** How many different gates there are before each job gets sizes of its own. */
const patterns = 240

const species = [
  'European redwood',
  'European redwood',
  'European redwood',
  'European larch',
  'iroko',
  'western redcedar',
  'European oak',
  'sweet chestnut',
  'Douglas-fir',
]

const tops = [
  { shape: 'level' },
  { shape: 'level' },
  { shape: 'level' },
  { shape: 'bowed', rise: 120 },
  { shape: 'dipped', rise: 90 },
  { shape: 'raked', rise: 150, high: 'hanging' },
] as const

const ofSpecies = (spec: GateSpec, name: string): GateSpec => ({
  ...spec,
  boards: { ...spec.boards, section: { ...spec.boards.section, species: name } },
  ledges: { ...spec.ledges, section: { ...spec.ledges.section, species: name } },
  ...(spec.braces && { braces: { ...spec.braces, section: { ...spec.braces.section, species: name } } }),
})

const piece = (kind: 'hinge' | 'latch' | 'bolt', draws: Draws): DraftSpec['ironmongery'][number] => {
  const { id, name } = draws.one(catalogue.filter((entry) => entry.kind === kind))
  return { id, kind, name, quantity: kind === 'hinge' ? 2 : 1 }
}

function pattern(base: GateSpec, draws: Draws): DraftSpec {
  const leaves = draws.between(1, 9) === 1 ? 2 : 1
  const spec: DraftSpec = {
    ...ofSpecies(base, draws.one(species)),
    size: { from: 'leaf', width: 900, height: 1800, ...(leaves === 2 && { meetingGap: 6 }) },
    top: draws.one(tops),
    leaves,
    ironmongery: [
      piece('hinge', draws),
      piece('latch', draws),
      ...(draws.between(1, 3) === 1 ? [piece('bolt', draws)] : []),
    ],
  }
  const read = parseDraft(spec)
  if (!read.ok) throw new Error(`a generated gate is no spec: ${JSON.stringify(read.problems)}`)
  return read.value
}

export type InventedGate = { spec: DraftSpec; unit: LengthUnit }

/** Gates drawn from the examples with other timbers, tops and ironmongery; the maker gives each job one with sizes of its own. */
export function inventedGates(draws: Draws): () => InventedGate {
  const bases = variedSpecs(exampleSpecs(), patterns, draws.between(1, 1_000_000))
  const made = bases.map(({ spec, unit }) => ({ spec: pattern(spec, draws), unit }))
  return () => {
    const { spec, unit } = draws.one(made)
    const [width, height] = [draws.between(620, 1250), draws.between(900, 2150)]
    const sixteenths = (mm: number): number => (Math.round((mm / 25.4) * 16) / 16) * 25.4
    const sizes = unit === 'in' ? { width: sixteenths(width), height: sixteenths(height) } : { width, height }
    return { spec: { ...spec, size: { ...spec.size, from: 'leaf' as const, ...sizes } }, unit }
  }
}
