import type { LeafName } from './leaf.ts'

/** What goes before the ids of a further leaf's figures: 'second.leaf.mass'. The first leaf's and a lower half's have none. */
export const leafPrefix: Record<LeafName, string> = {
  leaf: '',
  'first leaf': '',
  'second leaf': 'second.',
  'lower half': '',
  'upper half': 'upper.',
}
