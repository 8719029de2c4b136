import type { HangingLeaf } from '../../shared/gate/leaf.ts'
import type { GateSpec, Ironmongery } from '../../shared/gate/spec.ts'
import { proposeForGate, type WeighedLeaf } from '../../shared/ironmongery/propose.ts'
import { designOf } from '../fixtures/gates.ts'

/** Leaves of a design with the weights it found for them. */
export const weighed = (leaves: readonly HangingLeaf[]): WeighedLeaf[] =>
  leaves.map((leaf) => ({ leaf, weight: { massKg: leaf.massKg, centreX: leaf.centre.x } }))

/** What is proposed for a gate as entered. */
export const proposed = (spec: GateSpec): GateSpec['ironmongery'] =>
  proposeForGate(spec, weighed(designOf(spec).leaves))

/** The gate with the ironmongery proposed for it taken into its spec. */
export const withProposal = (spec: GateSpec): GateSpec => ({ ...spec, ironmongery: proposed(spec) })

/** A hinge of the workshop's own, in no list. */
export const ownHinge: Ironmongery = {
  id: 'forged-by-us',
  kind: 'hinge',
  name: 'Forged strap',
  quantity: 2,
  massKg: 1.1,
  strapLength: 520,
  maxLeafMassKg: 64,
  side: 'hanging',
}
