import type { LeafName } from '../../gate/leaf.ts'
import type { GateSpec } from '../../gate/spec.ts'

/**
 * Whether a leaf seen from a side has its hanging edge at the right. From the back a right-hung gate has it at the left; the face, the other hand
 * and the second leaf of a pair each turn it over.
 */
export function hangsRight(
  { hung }: Pick<GateSpec, 'hung'>,
  leaf: LeafName,
  seenFrom: 'face' | 'back',
): boolean {
  const turns = [hung === 'left', leaf === 'second leaf', seenFrom === 'face']
  return turns.filter((turned) => turned).length % 2 === 1
}

/** A leaf's own distance from its hanging edge as one from the left, mm. */
export const acrossFrom =
  (width: number, right: boolean) =>
  (x: number): number =>
    right ? width - x : x
