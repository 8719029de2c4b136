import type { Advice, Exposure } from './advice.ts'
import { sourceWords, type Fact } from './fact.ts'
import type { FixingMetal, TimberFacts } from './timberFacts.ts'

/** Metals that fixings come in, best first in wet timber. */
export type Metal = 'stainless' | 'galvanised' | 'zinc plated' | 'plain steel'

/**
 * What fixings should be made of in a timber: what its species wants, stainless on the coast whatever it is. A timber that
 * isn't listed, or is treated, wants hot-dip galvanised at least.
 */
export function fixingMetal(timber: TimberFacts, { coast }: Pick<Exposure, 'coast'>): Fact<FixingMetal> {
  const listed = timber.fixings ?? {
    value: 'galvanised',
    source: 'common practice outdoors',
    certainty: 'common practice',
  }
  if (!coast || listed.value === 'stainless') return listed
  return { value: 'stainless', source: 'common practice on the coast', certainty: 'common practice' }
}

/** The grade of stainless steel for a place: A4 (316) within reach of sea spray, else A2 (304). Common practice. */
export const stainlessGrade = ({ coast }: Pick<Exposure, 'coast'>): string =>
  coast ? 'A4 (316)' : 'A2 (304)'

function whyStainless(timber: TimberFacts, coast: boolean): string {
  const { name, stainsIron, corrodes } = timber
  if (stainsIron?.value && corrodes?.value) return `Iron stains ${name}, and its acids eat zinc-coated steel.`
  if (stainsIron?.value) return `Iron stains ${name}.`
  if (corrodes?.value) return `The acids in ${name} eat zinc-coated steel.`
  return coast ? 'Sea air eats zinc-coated steel.' : `Zinc-coated steel doesn’t last in ${name}.`
}

const unsuitable = (wanted: FixingMetal, chosen: Metal): boolean =>
  wanted === 'galvanised'
    ? chosen === 'zinc plated' || chosen === 'plain steel'
    : wanted === 'stainless'
      ? chosen !== 'stainless'
      : chosen === 'zinc plated' || chosen === 'plain steel'

function remedyFor(wanted: FixingMetal, grade: string): string {
  if (wanted === 'stainless') return `Use stainless fixings and ironmongery, ${grade}.`
  if (wanted === 'stainless preferred') return `Use stainless, ${grade}, for choice, else hot-dip galvanised.`
  return `Use hot-dip galvanised or stainless, ${grade}; bright zinc is for indoors.`
}

/**
 * What metal to use in a timber. With the metal in hand it is a caution where that doesn't suit, and nothing where it does;
 * without, a note of what to use.
 */
export function metalAdvice(timber: TimberFacts, exposure: Exposure, chosen?: Metal): Advice[] {
  const wanted = fixingMetal(timber, exposure)
  const wrong = chosen !== undefined && unsuitable(wanted.value, chosen)
  if (chosen !== undefined && !wrong) return []
  const damp = timber.treated
    ? `Copper in treated ${timber.name} eats bare and thinly coated steel.`
    : `Damp ${timber.name} rusts bare and thinly coated steel.`
  const stain = timber.stainsIron?.value ? `; ${sourceWords(timber.stainsIron)}` : ''
  return [
    {
      id: 'timber-metal',
      level: wrong ? 'caution' : 'note',
      message: wanted.value === 'galvanised' ? damp : whyStainless(timber, exposure.coast),
      remedy: remedyFor(wanted.value, stainlessGrade(exposure)),
      source: `${wanted.source}${stain}`,
      certainty: wanted.certainty,
    },
  ]
}
