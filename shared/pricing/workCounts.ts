import type { Design } from '../gate/designModel.ts'
import type { HangingLeaf } from '../gate/leaf.ts'
import type { GateSpec } from '../gate/spec.ts'
import { operations, type Operation, type WorkNeed } from './needs.ts'

/** Which operation a piece of ironmongery is put on by: a handle or anything else is screwed on like a bolt. */
const fittedBy = {
  hinge: 'hinge',
  latch: 'latch',
  lock: 'lock',
  bolt: 'bolt',
  handle: 'bolt',
  other: 'bolt',
} as const satisfies Record<GateSpec['ironmongery'][number]['kind'], Operation>

const fitted = (spec: GateSpec, operation: Operation): number =>
  spec.ironmongery
    .filter(({ kind }) => fittedBy[kind] === operation)
    .reduce((sum, { quantity }) => sum + quantity, 0)

const sumOver = (leaves: readonly HangingLeaf[], count: (leaf: HangingLeaf) => number): number =>
  leaves.reduce((sum, leaf) => sum + count(leaf), 0)

/** How every part's two ends are cut: each end is one cut, angled cut, notch or tenon. */
function endCounts(spec: GateSpec, { leaves, cuts }: Pick<Design, 'leaves' | 'cuts'>) {
  const pieces = cuts.reduce((sum, { quantity }) => sum + quantity, 0)
  const ledges = sumOver(leaves, (leaf) => leaf.ledges.length)
  const braces = sumOver(leaves, (leaf) => leaf.braces.length)
  const rails = sumOver(leaves, (leaf) => leaf.frame.filter(({ name }) => name === 'top rail').length)
  const notched = sumOver(leaves, (leaf) => leaf.braces.filter(({ notch }) => notch !== null).length)
  const tenoned = spec.frame ? ledges + rails : 0
  const angledLedges = !spec.frame && spec.ledges.end.cut !== 'square' ? ledges : 0
  const angled = angledLedges + braces - notched
  return {
    cut: 2 * (pieces - notched - tenoned - angled),
    bevel: 2 * angled,
    notch: 2 * notched,
    tenon: 2 * tenoned,
  }
}

/** Every length sawn along the grain: edges of boards, weathered edges of ledges, both edges of a meeting strip. */
function rips(spec: GateSpec, { leaves, cuts }: Pick<Design, 'leaves' | 'cuts'>): number {
  const edges = sumOver(leaves, ({ boards }) =>
    boards.reduce((sum, { strip }) => sum + Number(strip.hanging > 0) + Number(strip.closing > 0), 0),
  )
  const weathered = (spec.ledges.weather ?? 0) > 0 ? sumOver(leaves, ({ ledges }) => ledges.length) : 0
  const strips = cuts.filter(({ marks }) => marks.includes('meeting strip')).length
  return edges + weathered + 2 * strips
}

/** Ends cut to a line once the leaf is together: heads under a shaped top (a framed leaf's rail instead), feet that follow the ground. */
function shapedEnds(spec: GateSpec, leaves: readonly HangingLeaf[]): number {
  const shaped = (leaf: HangingLeaf) => spec.top.shape !== 'level' && leaf.name !== 'lower half'
  const heads = sumOver(leaves, (leaf) => (!shaped(leaf) ? 0 : spec.frame ? 1 : leaf.boards.length))
  const feet = sumOver(leaves, ({ boards }) => boards.filter(({ feet: [a, b] }) => a !== b).length)
  return heads + feet
}

/**
 * How often each operation is done for a gate, counted from its design; one that isn't done is left out. A leaf of nine boards on two
 * square ledges with a flush brace has 2 × (9 + 2) square cuts and 2 angled ones. A site visit is counted once: how many there are is
 * for the joiner to say. areaM2 is what is coated.
 */
export function workCounts(
  spec: GateSpec,
  design: Pick<Design, 'leaves' | 'cuts'>,
  areaM2: number,
): WorkNeed[] {
  const { leaves } = design
  const counts: Record<Operation, number> = {
    'set up': 1,
    ...endCounts(spec, design),
    rip: rips(spec, design),
    board: sumOver(leaves, ({ boards }) => boards.length),
    fixing: sumOver(leaves, ({ fixings }) => fixings.length),
    'shaped top board': shapedEnds(spec, leaves),
    hinge: fitted(spec, 'hinge'),
    lock: fitted(spec, 'lock'),
    latch: fitted(spec, 'latch'),
    bolt: fitted(spec, 'bolt'),
    'finish square metre': areaM2,
    'site visit': 1,
    'hang leaf': leaves.length,
  }
  return operations
    .filter((operation) => counts[operation] > 0)
    .map((operation) => ({ kind: 'work', operation, count: counts[operation] }))
}
