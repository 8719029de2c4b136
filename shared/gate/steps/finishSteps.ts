import { timberNamed } from '../../timber/species.ts'
import { making, sentences, type Step, type StepSource } from './step.ts'

const whole = { label: '' }

function finishStep({ spec }: StepSource): Step {
  const treated = timberNamed(spec.boards.section.species, spec.timbers)?.treated ?? false
  return making(whole, 'Finish', {
    text: sentences(
      'Treat or seal every cut end and every hole, the foot above all, before and after hanging.',
      treated ? 'Brush preservative on each cut: it opens untreated wood.' : '',
      spec.frame ? '' : 'Get the finish into the joints between boards, which open as they dry.',
    ),
    cautions: [
      'Preservative-treated timber and finishes: gloves, mask, fresh air, wash hands, never burn the offcuts. Lay oily rags out flat to dry.',
      ...(spec.construction === 'ledged'
        ? ['A leaf without a brace drops in time: fit for narrow, light or sheltered doors only.']
        : []),
    ],
  })
}

function liftStep({ leaves }: StepSource): Step {
  const masses = leaves.map(
    ({ name, massKg }) => `${leaves.length > 1 ? `${name} ` : ''}about ${Math.round(massKg)} kg`,
  )
  const heaviest = Math.max(...leaves.map(({ massKg }) => massKg))
  return making(whole, 'Lift and move', {
    text: `Carry each leaf upright by its ledges: ${masses.join(', ')}, give or take a tenth.`,
    cautions: [
      heaviest > 40
        ? 'Heavy for two: use a trolley, straps or more hands.'
        : 'Lift with two people, backs straight.',
      'Prop or tie a leaf standing on edge: it can fall and crush. Keep fingers out of the hanging edge while it is hung.',
      'Public, large or powered gates: follow local codes and ask a licensed engineer or installer.',
    ],
  })
}

/** Finish and lifting, once for all leaves. */
export const finishSteps = (source: StepSource): Step[] => [finishStep(source), liftStep(source)]
