import type { HangingLeaf, LeafName } from '../gate/leaf.ts'

/** Words with a capital at their head. */
export const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1)

/** 'bottom', 'bottom and top', 'bottom, middle and top'. */
export const listed = (names: string[]): string =>
  names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`

/** What the two leaves of a gate are called together: those of a pair, or the halves of a stable door. '' where there is one only. */
export const bothLeaves = (names: readonly LeafName[]): '' | 'both leaves' | 'both halves' =>
  names.length < 2 ? '' : names.includes('lower half') ? 'both halves' : 'both leaves'

/** Something that is said of one leaf, or of both at once: who is '' on a single leaf, else 'Both leaves', 'First leaf', 'Lower half' and the like. */
export type Said<T> = { who: string; leaf: HangingLeaf; value: T }

/** As it is compared: a millionth of a millimetre between two leaves is no difference. */
const alike = (value: unknown): string =>
  JSON.stringify(value, (_, part: unknown) => (typeof part === 'number' ? Number(part.toFixed(6)) : part))

/** What is to be said of each leaf, once where it is the same for both. */
export function saidByLeaf<T>(leaves: readonly HangingLeaf[], of: (leaf: HangingLeaf) => T): Said<T>[] {
  const said = leaves.map((leaf) => ({ who: capital(leaf.name), leaf, value: of(leaf) }))
  const [first, second] = said
  if (!first) return []
  if (!second) return [{ ...first, who: '' }]
  if (alike(first.value) !== alike(second.value)) return said
  return [{ ...first, who: capital(bothLeaves(leaves.map(({ name }) => name))) }]
}

/** A title with whom it is said of after it: 'Boards, from the hanging edge: both leaves'. */
export const titled = (title: string, who: string): string =>
  who === '' ? title : `${title}: ${who.toLowerCase()}`
