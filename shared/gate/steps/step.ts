import type { Fitting } from '../../ironmongery/fitting.ts'
import type { CutRow } from '../../cutting/cutList.ts'
import { writeInches, writeShortMm } from '../../units/writeLength.ts'
import type { DrillChoice, Hole } from '../holes.ts'
import type { HangingLeaf } from '../leaf.ts'
import type { LeafPlan } from '../leafPlan.ts'
import type { LeafSwing } from '../leafSwing.ts'
import type { GateSpec } from '../spec.ts'

/** One step in the order of making or of hanging. cautions stand beside the step where the danger is. */
export type Step = { title: string; text: string; cautions: string[]; stage: 'making' | 'hanging' }

/** What the steps are written from: the gate as entered and everything worked out for it. plans are in the order of the leaves. */
export type StepSource = {
  spec: GateSpec
  plans: readonly LeafPlan[]
  leaves: readonly HangingLeaf[]
  cuts: readonly CutRow[]
  holes: readonly Hole[]
  fittings: readonly Fitting[]
  swing: readonly LeafSwing[]
}

/**
 * One leaf on the bench, or two that are made alike. label goes before the titles of its steps where there is more than one to make;
 * alike is how many are made to these sizes.
 */
export type BenchLeaf = StepSource & { leaf: HangingLeaf; plan: LeafPlan; label: string; alike: number }

/** A length for the steps: 1830 mm. */
export const mm = (length: number): string => `${writeShortMm(length)} mm`

/** A length for the steps in both units: 1830 mm (72 ¹⁄₁₆″). */
export const both = (length: number): string => `${mm(length)} (${writeInches(length)})`

/** An angle for the steps: 33.6°. */
export const degrees = (angle: number): string => `${writeShortMm(angle)}°`

/** A count with its word: 1 board, 9 boards. */
export const counted = (number: number, one: string): string => `${number} ${one}${number === 1 ? '' : 's'}`

/** The drill to take, or the size itself where no drill of the set is near. */
export const drillSize = ({ drill, exact }: DrillChoice): string => mm(drill ?? exact)

/** A step of making, its title with the leaf's name before it where that is needed. */
export const making = (
  { label }: Pick<BenchLeaf, 'label'>,
  title: string,
  rest: { text: string; cautions?: string[] },
): Step => ({
  title: label === '' ? title : `${label}: ${title[0]?.toLowerCase() ?? ''}${title.slice(1)}`,
  text: rest.text,
  cautions: rest.cautions ?? [],
  stage: 'making',
})

/** A step of hanging. */
export const hanging = (title: string, text: string, cautions: string[] = []): Step => ({
  title,
  text,
  cautions,
  stage: 'hanging',
})

/** Sentences one after another, each begun with a capital, empty ones left out. */
export const sentences = (...said: string[]): string =>
  said
    .filter((one) => one !== '')
    .map((one) => `${one[0]?.toUpperCase() ?? ''}${one.slice(1)}`)
    .join(' ')

/** How a leaf is hung, seen from the face: the second of a pair is the mirror of the first. */
export const hungOf = (spec: GateSpec, leaf: Pick<HangingLeaf, 'name'>): GateSpec['hung'] =>
  leaf.name === 'second leaf' ? (spec.hung === 'left' ? 'right' : 'left') : spec.hung

/** Where the hinge side lies on the bench, back up and top away from you: opposite to how the gate is hung seen from the face. */
export const hingeSideOnBench = (spec: GateSpec, leaf: Pick<HangingLeaf, 'name'>): 'left' | 'right' =>
  hungOf(spec, leaf) === 'left' ? 'right' : 'left'
