import type { Check } from './checks.ts'
import type { BraceLoad, Ledge } from './leaf.ts'

const braceNamed = (name: BraceLoad['name']): string => (name === 'single' ? 'brace' : `${name} brace`)
const whole = (newtons: number): string => `${Math.round(newtons)} N`
const capital = (text: string): string => `${text[0]?.toUpperCase()}${text.slice(1)}`

function toeChecks({ name, toe, heldBy }: BraceLoad, ledge: Ledge): Check[] {
  if (!toe)
    return [
      {
        id: 'strength-unknown',
        level: 'note',
        message: `How strong the ${ledge.name} ledge’s timber is isn’t known, so the foot of the ${braceNamed(name)} isn’t checked.`,
        figures: [`brace.${name}.thrust`],
        remedy: 'Give the timber’s strength class.',
        field: 'ledges.section.species',
      },
    ]
  if (toe.stress <= toe.allowed) return []
  return [
    {
      id: 'toe-crushes',
      level: 'caution',
      message: `The foot of the ${braceNamed(name)} presses ${toe.stress.toFixed(2)} N/mm² on the ${ledge.name} ledge; ${toe.allowed.toFixed(2)} is what it bears.`,
      figures: [`brace.${name}.toeStress`, `brace.${name}.toeAllowed`],
      remedy:
        heldBy.by === 'notch'
          ? 'Cut the notch deeper or the end flush, use a wider or thicker brace, or make the leaf lighter.'
          : 'Use a wider or thicker brace, or make the leaf lighter.',
      field: 'braces.section',
    },
  ]
}

function slideChecks({ name, alongLedgeN, heldBy }: BraceLoad, ledge: Ledge): Check[] {
  const { by, count, holdN } = heldBy
  if (holdN === null || alongLedgeN <= holdN) return []
  const pushes = `${capital(braceNamed(name))}: its foot pushes ${whole(alongLedgeN)} along the ${ledge.name} ledge;`
  if (by === 'notch')
    return [
      {
        id: 'notch-end-short',
        level: 'caution',
        message: `${pushes} the end grain beyond the notch holds ${whole(holdN)}.`,
        figures: [`brace.${name}.alongLedge`, `brace.${name}.hold`],
        remedy: 'Set the foot farther in from the ledge’s end.',
        field: 'braces.footSetback',
      },
    ]
  return [
    {
      id: 'brace-slides',
      level: 'caution',
      message: `${pushes} ${count === 0 ? 'no fixing stands in its lower half' : `the ${count} in its lower half hold ${whole(holdN)}`}.`,
      figures: [`brace.${name}.alongLedge`, `brace.${name}.hold`],
      remedy: 'Notch the ends, use thicker or longer fixings, or make the leaf lighter.',
      field: 'braces.ends',
    },
  ]
}

/** What there is to say of a brace under its load: the ledge crushed at its foot, or the foot not held back. */
export const braceLoadChecks = (load: BraceLoad, ledge: Ledge): Check[] => [
  ...toeChecks(load, ledge),
  ...slideChecks(load, ledge),
]
