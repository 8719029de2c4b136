import { sourceWords, type Certainty, type Fact } from './fact.ts'
import type { TimberFacts } from './timberFacts.ts'

/**
 * One piece of advice on a timber, in a sentence for the joiner, with what to do about it, where it comes from and how sure
 * it is. Advice never stops a gate from being made.
 */
export type Advice = {
  id: string
  level: 'caution' | 'note'
  message: string
  remedy: string
  source: string
  certainty: Certainty
}

/** Where the timber stands: touching the ground or always wet; painted, stained or oiled and kept so; within reach of sea spray. */
export type Exposure = { groundContact: boolean; coated: boolean; coast: boolean }

/** A bare gate leaf, clear of the ground, inland. */
export const bareLeaf: Exposure = { groundContact: false, coated: false, coast: false }

/** Use classes of EN 335 that a gate meets: 3.1 out of the ground and coated, 3.2 out of the ground and bare, 4 in the ground. */
export type UseClass = '3.1' | '3.2' | '4'

/** The use class a part stands in. The split of 3 into 3.1 and 3.2 is from memory of EN 335. */
export function useClass({ groundContact, coated }: Exposure): Fact<UseClass> {
  if (groundContact) return { value: '4', source: 'EN 335 / BS 8417', certainty: 'second-hand' }
  return { value: coated ? '3.1' : '3.2', source: 'EN 335, from memory', certainty: 'memory' }
}

/** A durability class or a span of them as numbers, 1 best to 5 worst: '3–4' is 3 to 4. Undefined where none can be read. */
export function durabilitySpan(text: string): { best: number; worst: number } | undefined {
  const classes = (text.match(/[1-5]/g) ?? []).map(Number)
  return classes.length > 0 ? { best: Math.min(...classes), worst: Math.max(...classes) } : undefined
}

/** A timber's name where a sentence opens with it. */
const opening = (name: string): string => name.charAt(0).toUpperCase() + name.slice(1)

const classWords = ({ best, worst }: { best: number; worst: number }): string =>
  best === worst ? `${best}` : `${best} to ${worst}`

const rule = 'durability against use class after EN 460, from memory'

/** A sentence on durability, from which memory alone can decide no more than a caution. */
const onDurability = (timber: TimberFacts, level: Advice['level'], told: [string, string]): Advice => ({
  id: 'timber-durability',
  level,
  message: told[0],
  remedy: told[1],
  source: timber.durability ? `${sourceWords(timber.durability)}; ${rule}` : rule,
  certainty: 'memory',
})

function untreatedAdvice(timber: TimberFacts, exposure: Exposure): Advice[] {
  const { name } = timber
  const { value: place } = useClass(exposure)
  const span = timber.durability && durabilitySpan(timber.durability.value)
  if (!span)
    return [
      onDurability(timber, 'note', [
        `How long ${name} lasts outdoors isn’t known here.`,
        'Ask the merchant for its durability class.',
      ]),
    ]
  if (place === '4' && span.worst > 1)
    return [
      onDurability(timber, 'caution', [
        `${opening(name)} is of durability class ${classWords(span)} and untreated, too little for use class 4, in the ground.`,
        'Keep it out of the ground, or have it treated for use class 4.',
      ]),
    ]
  // Above the ground the wood dries between showers, and memory alone must not raise an alarm on every softwood gate.
  if (span.best >= 3 && span.worst >= 4)
    return [
      onDurability(timber, 'note', [
        `${opening(name)} is of durability class ${classWords(span)} and untreated, in use class ${place}.`,
        'Have it treated for use class 3, or choose a more durable timber.',
      ]),
    ]
  if (span.worst >= 3)
    return [
      onDurability(timber, 'note', [
        `${opening(name)} varies in how long it lasts outdoors.`,
        'Choose straight heartwood and keep end grain from standing wet.',
      ]),
    ]
  return []
}

/** Sapwood rots whatever the heartwood does; treated timber must have its cut ends treated again, and be handled with care. */
function sapwoodOrTreatment({ name, treated }: TimberFacts): Advice {
  if (treated)
    return {
      id: 'timber-treated',
      level: 'note',
      message: `${opening(name)} is treated: every cut opens untreated wood, and its dust and smoke are poisonous.`,
      remedy: 'Brush preservative on each cut; wear gloves and a dust mask; never burn the offcuts.',
      source: 'common practice',
      certainty: 'common practice',
    }
  return {
    id: 'timber-sapwood',
    level: 'note',
    message: `The sapwood of ${name} is not durable.`,
    remedy: 'Keep sapwood out of the gate, or treat it.',
    source: 'EN 350, from memory',
    certainty: 'memory',
  }
}

/** What to know of how long a timber lasts where it stands. Timber changed right through has no sapwood to speak of. */
export const durabilityAdvice = (timber: TimberFacts, exposure: Exposure): Advice[] => [
  ...(timber.treated ? [] : untreatedAdvice(timber, exposure)),
  ...(timber.changedThrough && !timber.treated ? [] : [sapwoodOrTreatment(timber)]),
]

/**
 * What a timber's dust can do; working it wants extraction and a mask whatever it is. A note among the checks: the caution stands
 * beside the step in which the dust is made.
 */
export function dustAdvice({ name, dust }: TimberFacts): Advice[] {
  if (!dust || dust.value === 'ordinary') return []
  return [
    {
      id: 'timber-dust',
      level: 'note',
      message:
        dust.value === 'asthma'
          ? `Dust of ${name} can bring on asthma.`
          : `Dust of ${name}, a hardwood, harms the nose and lungs.`,
      remedy: 'Work it with extraction and a fitted dust mask, and keep to the local rules on dust.',
      source: dust.source,
      certainty: dust.certainty,
    },
  ]
}
