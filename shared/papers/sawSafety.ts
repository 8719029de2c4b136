import { sectionsOf } from '../gate/sectionsOf.ts'
import type { GateSpec } from '../gate/spec.ts'
import { hasTreatedTimber } from '../describe/timberWords.ts'
import { timberNamed } from '../timber/species.ts'
import type { Block } from './flow.ts'
import type { Measure } from './page.ts'
import { warning } from './stepBlocks.ts'
import { heading } from './table.ts'

/** What is known of the timber on a sheet: whether some is treated, and whose dust harms more than wood dust does. */
export type DustKnown = { treated: boolean; harmful: readonly string[] }

/** What is known of the timber of some gates. */
export function dustKnown(specs: readonly GateSpec[]): DustKnown {
  const harmful = specs.flatMap((spec) =>
    sectionsOf(spec).flatMap(([, { species }]) => {
      const timber = timberNamed(species, spec.timbers)
      return timber?.dust && timber.dust.value !== 'ordinary' ? [timber.name] : []
    }),
  )
  return { treated: specs.some(hasTreatedTimber), harmful: [...new Set(harmful)].sort() }
}

/**
 * Usual cautions at the saw, which defer to the saw's own instructions and local rules (common practice): guards, setting, dust, and of
 * treated timber where some is.
 */
export function sawCautions({ treated, harmful }: DustKnown): string[] {
  return [
    'Guards and riving knife on, push stick in hand, the plug out while blade or fence is set; support long lengths. The saw’s own instructions and local rules come first.',
    `Dust: extraction on and a fitted mask, eyes and ears covered.${
      harmful.length === 0 ? '' : ` Dust of ${harmful.join(' and ')} harms more than most.`
    }`,
    ...(treated
      ? ['Treated timber: gloves and mask, preservative on every fresh cut, and never burn offcuts or dust.']
      : []),
  ]
}

/** The cautions under a heading of their own, each beside its sign. */
export const safetyBlocks = (
  known: DustKnown,
  { width, measure }: { width: number; measure: Measure },
): Block[] => [
  heading('At the saw'),
  ...sawCautions(known).map((words, i, all) => {
    const block = warning(words, width, measure)
    return i < all.length - 1 ? { ...block, withNext: true } : block
  }),
]
