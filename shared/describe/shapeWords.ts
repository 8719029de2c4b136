import { planLeaves } from '../gate/leafPlan.ts'
import { listed } from './countWords.ts'
import { firstLeaf, type Telling } from './described.ts'

const constructions = {
  ledged: 'ledged',
  'ledged-braced': 'ledged and braced',
  'framed-ledged-braced': 'framed, ledged and braced',
} as const

/** 'a bowed top', said with what it is; nothing of a level one. */
const topped = ({ spec: { top } }: Telling): string =>
  top.shape === 'level' ? '' : ` with a ${top.shape === 'raked' ? 'sloping' : top.shape} top`

function whatAndHowLarge(telling: Telling): string {
  const { spec, sizes, called, kind } = telling
  const { width } = firstLeaf(telling)
  const construction = constructions[spec.construction]
  const [plan] = planLeaves(spec).value
  const height = kind === 'stable' ? wholeStable(telling) : (plan?.height ?? firstLeaf(telling).height)
  const size = sizes.box({ width, height }, spec.top.shape === 'level' ? '' : ' at the highest point')
  if (kind === 'single') return `A ${construction} ${called}${topped(telling)}, ${size}.`
  if (kind === 'stable') return `A ${construction} stable door in two halves${topped(telling)}, ${size}.`
  const gap = spec.size.meetingGap ?? 0
  const between = gap > 0 ? `, with the ${sizes.small(gap)} gap between them` : ''
  return `A pair of ${construction} ${called}s${topped(telling)}, each ${size}; the two together are ${sizes.length(2 * width + gap)} wide${between}.`
}

/** Height of both halves of a stable door with the gap between them, mm. */
const wholeStable = ({ spec, design }: Telling): number =>
  design.leaves.reduce((sum, leaf) => sum + leaf.height, spec.stable?.gap ?? 0)

function halves({ spec, design, sizes }: Telling): string[] {
  const [lower, upper] = design.leaves
  if (!spec.stable || !lower || !upper) return []
  const gap = spec.stable.gap > 0 ? `, with a gap of ${sizes.small(spec.stable.gap)} between them` : ''
  return [
    `The lower half is ${sizes.length(lower.height)} high and the upper ${sizes.length(upper.height)}${gap}.`,
  ]
}

function opening({ spec: { size, leaves }, sizes, called }: Telling): string[] {
  if (size.from !== 'opening') return []
  const several = leaves === 2
  const [width, height] = [Math.min(...size.widths), Math.min(...size.heights)]
  const gaps = [
    `${sizes.small(size.hangingGap)} at ${several ? 'each' : 'the'} hinge side`,
    ...(several ? [] : [`${sizes.small(size.closingGap)} at the latch side`]),
    `${sizes.small(size.groundGap)} under the ${called}${several ? 's' : ''}`,
    ...(size.headGap === undefined ? [] : [`${sizes.small(size.headGap)} over ${several ? 'them' : 'it'}`]),
  ]
  const made = several ? 'They are made' : 'It is made'
  const measured = `${sizes.length(width)} at its narrowest and ${sizes.length(height)} at its lowest`
  return [`${made} to fit your opening as measured, ${measured}, leaving ${listed(gaps)}.`]
}

function topLineWords({ spec: { top }, sizes, kind }: Telling): string[] {
  if (top.shape === 'level') return []
  const rise = sizes.length(top.rise)
  if (top.shape === 'raked') {
    if (kind === 'pair')
      return [`The tops slope ${top.high === 'closing' ? 'up' : 'down'} by ${rise} to where the two meet.`]
    return [`The top slopes by ${rise}, higher at the ${top.high === 'hanging' ? 'hinge' : 'latch'} side.`]
  }
  if (kind === 'pair')
    return [
      `The two tops make one curve, ${rise} ${top.shape === 'bowed' ? 'higher' : 'lower'} in the middle than at its ends.`,
    ]
  return [
    `The top is a curve, ${rise} ${top.shape === 'bowed' ? 'higher' : 'lower'} in the middle than at its ends.`,
  ]
}

const footLine = ({ spec, kind }: Telling): string[] =>
  spec.foot === 'follows-ground'
    ? [`${kind === 'pair' ? 'Their feet are' : 'Its foot is'} cut to follow the slope of the ground.`]
    : []

/** What it is, how large, how it stands in its opening, its halves, the timber it is made of, the line of its top and of its foot. */
export const shapeWords = (telling: Telling): string[] => [
  whatAndHowLarge(telling),
  ...halves(telling),
  ...opening(telling),
  ...topLineWords(telling),
  ...footLine(telling),
  ...(telling.one === undefined ? [] : [`Made throughout in ${telling.one}.`]),
]
