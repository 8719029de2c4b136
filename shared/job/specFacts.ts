import type { DraftSpec, GateSpec, Section } from '../gate/spec.ts'
import { writeBoth } from '../units/writeLength.ts'
import type { LengthUnit } from './job.ts'

/** One thing that can be said about a gate, in the joiner's words, and how it stands. */
export type Fact = [what: string, stands: string]

type AnySpec = GateSpec | DraftSpec

const figure = (value: number): string => String(Math.round(value * 100) / 100)

const ledgeEnds = (end: AnySpec['ledges']['end']): string =>
  end.cut === 'square' ? 'square' : `${end.cut} ${figure(end.angle)}°`

const edges = { hanging: 'hanging edge', closing: 'closing edge', both: 'both edges' }

const constructions = {
  ledged: 'ledged',
  'ledged-braced': 'ledged and braced',
  'framed-ledged-braced': 'framed, ledged and braced',
}

function sectionFacts(part: string, section: Section | undefined, unit: LengthUnit): Fact[] {
  if (!section) return []
  const { name, species, thickness, width, tongue, groove } = section
  const facts: Fact[] = [
    [`${part} section`, name],
    [`${part} timber`, species],
    [`${part} thickness`, writeBoth(thickness, unit)],
    [part === 'board' ? 'board cover width' : `${part} section width`, writeBoth(width, unit)],
  ]
  if (tongue !== undefined) facts.push([`${part} tongue`, writeBoth(tongue, unit)])
  if (groove !== undefined) facts.push([`${part} groove`, writeBoth(groove, unit)])
  return facts
}

function boardingFacts({ boards }: AnySpec, unit: LengthUnit): Fact[] {
  return [
    ...sectionFacts('board', boards.section, unit),
    ['gap between boards', boards.gap === 'auto' ? 'from the climate' : writeBoth(boards.gap, unit)],
    ['boards ripped at', edges[boards.rip]],
    ['tongues point to', boards.tongues === 'to-closing' ? 'closing edge' : 'hanging edge'],
    ['trim at board ends', writeBoth(boards.endTrim, unit)],
  ]
}

function ledgeFacts({ ledges }: AnySpec, unit: LengthUnit): Fact[] {
  const heights =
    ledges.heights === 'auto' ? 'usual places' : ledges.heights.map((mm) => writeBoth(mm, unit)).join(', ')
  return [
    ...sectionFacts('ledge', ledges.section, unit),
    ...sectionFacts('top ledge', ledges.topSection, unit),
    ['number of ledges', ledges.count === 'auto' ? 'as usual for the height' : String(ledges.count)],
    ['ledge inset, hanging side', writeBoth(ledges.hangingInset, unit)],
    ['ledge inset, closing side', writeBoth(ledges.closingInset, unit)],
    ['ledge ends', ledgeEnds(ledges.end)],
    ['ledge heights', heights],
    ['weathering of the ledges', `${figure(ledges.weather ?? 0)}°`],
  ]
}

function braceFacts({ braces }: AnySpec, unit: LengthUnit): Fact[] {
  if (!braces) return []
  return [
    ...sectionFacts('brace', braces.section, unit),
    ['brace foot setback', writeBoth(braces.footSetback, unit)],
    ['brace head setback', writeBoth(braces.headSetback, unit)],
    ['braces', braces.run === 'each-bay' ? 'one in each bay' : 'in line'],
    ['brace ends', braces.ends],
  ]
}

function fixingFacts({ fixings, ironmongery }: AnySpec): Fact[] {
  const pieces = ironmongery.map(({ name, quantity }) => `${quantity} × ${name}`).join(', ')
  return [
    ['fixings', `${fixings.kind}s ${figure(fixings.diameter)} mm`],
    ['fixing lengths in stock', `${fixings.lengths.map(figure).join(', ')} mm`],
    ['ironmongery', pieces === '' ? 'none' : pieces],
  ]
}

function workshopFacts({ workshop }: AnySpec): Fact[] {
  if (!workshop) return []
  const saw = ({ name, kerf, tooth, guideLeft, guideRight }: (typeof workshop.saws)[number]): string =>
    [`${name}: kerf ${figure(kerf)}`, `tooth ${figure(tooth)}`]
      .concat(guideLeft === undefined ? [] : `guide left ${figure(guideLeft)}`)
      .concat(guideRight === undefined ? [] : `guide right ${figure(guideRight)}`)
      .join(', ')
  return [
    ['saws', workshop.saws.map(saw).join('; ')],
    ['drill set', workshop.drills.map(figure).join(', ')],
    ['clearance of holes', `${figure(workshop.clearance)} mm`],
    ['rule for lead holes', workshop.leadRule.replace('-', ' ')],
  ]
}

const given = (mm: number | null, unit: LengthUnit): string =>
  mm === null ? 'not given' : writeBoth(mm, unit)

const meetingFacts = ({ meetingGap }: AnySpec['size'], unit: LengthUnit): Fact[] =>
  meetingGap === undefined ? [] : [['meeting gap', given(meetingGap, unit)]]

function sizeFacts({ size }: AnySpec, unit: LengthUnit): Fact[] {
  if (size.from === 'opening')
    return [
      ['opening widths', size.widths.map((mm) => given(mm, unit)).join(', ')],
      [
        'opening heights, hanging side and closing side',
        size.heights.map((mm) => given(mm, unit)).join(', '),
      ],
      ['hanging gap', given(size.hangingGap, unit)],
      ['closing gap', given(size.closingGap, unit)],
      ['ground gap', given(size.groundGap, unit)],
      ['head gap', size.headGap === undefined ? 'none' : given(size.headGap, unit)],
      ...meetingFacts(size, unit),
    ]
  return [
    ['leaf width', given(size.width, unit)],
    ['leaf height', given(size.height, unit)],
    ...meetingFacts(size, unit),
  ]
}

/** What was entered for a gate, fact by fact, in the order a joiner thinks of them. Lengths in both units, the job's first. */
export const specFacts = (spec: AnySpec, unit: LengthUnit): Fact[] => [
  ['construction', constructions[spec.construction]],
  ['hung', `on the ${spec.hung}, seen from the face`],
  ['opens', spec.opens === 'to-face' ? 'to the face' : 'to the back'],
  ...sizeFacts(spec, unit),
  ...boardingFacts(spec, unit),
  ...ledgeFacts(spec, unit),
  ...braceFacts(spec, unit),
  ...fixingFacts(spec),
  ...workshopFacts(spec),
]
