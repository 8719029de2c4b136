import type { Check } from '../gate/checks.ts'
import type { Step } from '../gate/steps/step.ts'
import type { LengthUnit } from '../job/job.ts'
import type { Block } from './flow.ts'
import type { Measure, PageMark } from './page.ts'
import { heading } from './table.ts'
import { lineHeight, linesAt, setLines, type Setting } from './words.ts'

const size = 11

/** A boxed exclamation mark: a warning that stands without colour. */
const warningSign = (x: number, y: number): PageMark[] => [
  { kind: 'box', x, y: y - 3.6, width: 4.4, height: 4.4, stroke: { width: 0.35, ink: 'black' } },
  {
    kind: 'text',
    x: x + 2.2,
    y: y - 0.1,
    text: '!',
    size: 11,
    weight: 'semibold',
    ink: 'black',
    anchor: 'middle',
  },
]

/** Words beside a warning sign, as one block. */
export function warning(text: string, width: number, measure: Measure): Block {
  const lines = setLines([{ text, weight: 'regular' }], { width: width - 7, size, measure })
  return {
    height: lines.length * lineHeight(size) + 0.9,
    marks: (x, y) => [
      ...warningSign(x, y + 4),
      ...linesAt(lines, { x: x + 7, y: y + 3.7, size, ink: 'black' }),
    ],
  }
}

function step(number: number, made: Step, { width, measure }: Omit<Setting, 'size'>): Block {
  const runs = [
    { text: `${made.title}. `, weight: 'semibold' as const },
    { text: made.text, weight: 'regular' as const },
  ]
  const lines = setLines(runs, { width: width - 9, size, measure })
  const cautions = made.cautions.length > 0 ? [warning(made.cautions.join(' '), width - 9, measure)] : []
  const own = lines.length * lineHeight(size) + 0.7
  return {
    height: own + cautions.reduce((sum, block) => sum + block.height, 0),
    above: 0.9,
    marks: (x, y) => {
      const marks: PageMark[] = [
        {
          kind: 'text',
          x: x + 6,
          y: y + 3.7,
          text: String(number),
          size: 13,
          weight: 'semibold',
          ink: 'black',
          anchor: 'end',
        },
        ...linesAt(lines, { x: x + 9, y: y + 3.7, size, ink: 'black' }),
      ]
      let at = y + own
      for (const block of cautions) {
        marks.push(...block.marks(x + 9, at))
        at += block.height
      }
      return marks
    },
  }
}

/** Lengths of a step that stand in both units, the job's own first: '1820 mm (71 ⅝″)' in an inch job is '71 ⅝″ (1820 mm)'. */
export const inJobUnit = (text: string, unit: LengthUnit): string =>
  unit === 'mm' ? text : text.replace(/(−?\d+(?:\.\d+)?) mm \(([^()]*″)\)/g, '$2 ($1 mm)')

/** The heights of a shaped top stand in a table of their own on the card; the step points to it. */
const withTable = (text: string): string =>
  text.replace(
    /Heights from the foot at these distances from the hanging edge, mm: [^A-Z]*\. (?=[A-Z])/,
    'Mark the heights of the table from the foot, every 50 mm from the hanging edge. ',
  )

const asPrinted = (made: Step, unit: LengthUnit): Step => ({
  ...made,
  text: inJobUnit(withTable(made.text), unit),
})

/** The order of making or of hanging, numbered, each step with the cautions that belong to it. */
export const stepBlocks = (
  steps: Step[],
  { stage, unit, width }: { stage: Step['stage']; unit: LengthUnit; width: number },
  measure: Measure,
): Block[] => [
  heading(`Order of ${stage}`),
  ...steps
    .filter((one) => one.stage === stage)
    .map((made, i) => step(i + 1, asPrinted(made, unit), { width, measure })),
]

/** What was found when the gate was checked and the maker should weigh; what has one remedy is said together. Nothing when there is nothing. */
export function cautionBlocks(checks: Check[], width: number, measure: Measure): Block[] {
  const cautions = checks.filter((check) => check.level === 'caution')
  if (cautions.length === 0) return []
  const byRemedy = new Map<string, string[]>()
  for (const { remedy, message } of cautions) byRemedy.set(remedy, [...(byRemedy.get(remedy) ?? []), message])
  return [
    heading('Look at these first', { width, measure }),
    ...[...byRemedy].map(([remedy, messages]) =>
      warning([...messages, remedy].join(' ').trim(), width, measure),
    ),
  ]
}
