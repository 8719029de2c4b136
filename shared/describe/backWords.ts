import type { Leaf } from '../gate/leaf.ts'
import type { Section } from '../gate/spec.ts'
import { capital, countWord, listed } from './countWords.ts'
import { firstLeaf, type Telling } from './described.ts'
import { timberWords } from './timberWords.ts'

/** A section with its timber where the gate is of several: '145 × 28 mm (…) in European oak'. */
const piece = ({ spec, sizes, one }: Telling, section: Section): string =>
  `${sizes.section(section)}${one === undefined ? ` in ${timberWords(section.species, spec)}` : ''}`

const alike = (a: Section, b: Section): boolean =>
  a.width === b.width && a.thickness === b.thickness && a.species === b.species

/** The frame round the boards, its stiles and rail said together where they are of one section. */
function frameWords(telling: Telling): string[] {
  const { frame } = telling.spec
  if (!frame) return []
  const { stile, topRail } = frame
  const parts = alike(stile, topRail)
    ? `stiles and a top rail, ${piece(telling, stile)},`
    : `stiles ${piece(telling, stile)} and a top rail ${piece(telling, topRail)}`
  const made = frame.tenon > 0 ? ' mortised and tenoned together' : ''
  const held = frame.rebate > 0 ? 'holds the boards in a rebate' : 'stands round the boards'
  return [`${telling.kind === 'single' ? 'The' : 'Each'} frame, of ${parts}${made}, ${held}.`]
}

function ledgeEnds({ spec: { ledges } }: Telling): string {
  const ends = ledges.end.cut === 'square' ? [] : [`${ledges.end.cut} ends`]
  const upper = (ledges.weather ?? 0) > 0 ? ['upper edges sloped to shed water'] : []
  const both = [...ends, ...upper]
  return both.length === 0 ? '' : `, with ${listed(both)}`
}

/** How many, said once where every leaf has as many: 'two ledges'. */
function numbered(leaves: readonly Leaf[], of: (leaf: Leaf) => number, one: string): string {
  const counts = [...new Set(leaves.map(of))].filter((count) => count > 0).sort((a, b) => a - b)
  const most = counts.at(-1) ?? 0
  return `${counts.map(countWord).join(' or ')} ${most === 1 ? one : `${one}s`}`
}

const whose = { single: '', pair: ' on each', stable: ' on each half' }

function ledgeWords(telling: Telling): string {
  const { spec, kind, design } = telling
  const { section, topSection } = spec.ledges
  const count = numbered(design.leaves, ({ ledges }) => ledges.length, 'ledge')
  const own = topSection && !alike(section, topSection) ? `, the top one ${piece(telling, topSection)}` : ''
  const many = firstLeaf(telling).ledges.length === 1 ? 'is' : 'are'
  return `Behind the boards${whose[kind]} ${many} ${count}, ${piece(telling, section)}${own}${ledgeEnds(telling)}.`
}

/** The braces, and what they are for: their feet stand at the hinge side, so that they carry the weight. */
function braceWords(telling: Telling): string[] {
  const { spec, design, kind, called } = telling
  if (!spec.braces) return []
  const { run, ends, section } = spec.braces
  const several = design.leaves.some(({ braces }) => braces.length > 1)
  const number = numbered(design.leaves, ({ braces }) => braces.length, 'brace')
  const line = several ? [run === 'in-line' ? 'in one line from bottom to top' : 'one above another'] : []
  const notched = ends === 'notched' ? ['let into the ledges'] : []
  const how = [piece(telling, section), ...line, ...notched].join(', ')
  const does = several ? 'rise from the hinge side, carry' : 'rises from the hinge side, carries'
  return [
    `${capital(number)}${whose[kind]}, ${how}, ${does} ${kind === 'stable' ? 'its' : `the ${called}’s`} weight and ${several ? 'keep' : 'keeps'} it from sagging.`,
  ]
}

/** Where the leaves of a pair meet. */
function meetingWords({ spec, sizes, kind }: Telling): string[] {
  if (kind !== 'pair') return []
  const lap = spec.meeting?.lap
  const by = lap === undefined ? '' : ` by ${sizes.small(lap)}`
  const edge = spec.meeting?.edge ?? 'square'
  if (edge === 'rebated') return [`Where the two meet, one closes over the other${by} in a rebate.`]
  if (edge === 'strip') return [`A cover strip on one closes over the other${by} where the two meet.`]
  return ['The two meet edge to edge.']
}

/** What is behind the boards: frame, ledges, braces and what they do, and the meeting edges of a pair. */
export const backWords = (telling: Telling): string[] => [
  ...frameWords(telling),
  ledgeWords(telling),
  ...braceWords(telling),
  ...meetingWords(telling),
]
