import type { GateSpec } from '../gate/spec.ts'

/** How a gate is built, as it is said in a list. */
export const constructionWords: Record<GateSpec['construction'], string> = {
  ledged: 'Ledged',
  'ledged-braced': 'Ledged and braced',
  'framed-ledged-braced': 'Framed, ledged and braced',
}

export const isConstruction = (text: string): text is GateSpec['construction'] =>
  Object.hasOwn(constructionWords, text)

/** A kind of gate in words: 'Framed, ledged and braced, a pair'. */
export function kindWords({
  construction,
  leaves,
  stable,
}: {
  construction: string
  leaves: number
  stable: boolean
}): string {
  const built = isConstruction(construction) ? constructionWords[construction] : construction
  if (stable) return `${built}, a stable door`
  return leaves === 2 ? `${built}, a pair` : built
}
