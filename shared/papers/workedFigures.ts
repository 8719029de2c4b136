import type { LengthUnit } from '../job/job.ts'
import { headerHeight } from './cardHeader.ts'
import { figureEntries, type EntryRow, type FigureEntry } from './figureEntries.ts'
import { figureGroups } from './figureGroups.ts'
import { flow, type Block } from './flow.ts'
import { headedPages } from './headedPages.ts'
import type { JobCardInput } from './jobCardInput.ts'
import { capital } from './leafWords.ts'
import { plainMeasure } from './measure.ts'
import { margins, paperSizes, type Measure, type PaperDocument } from './page.ts'
import { heading, paragraph } from './table.ts'
import { lineHeight, linesAt, setLines, type Run } from './words.ts'
import { workedNumber, workedResult } from './workedNumber.ts'

const size = 11

/** Most lines of one entry that stay on one page together. */
const mostTogether = 12

const put = (inputs: [string, number][]): string =>
  inputs.map(([name, value]) => `${name} ${workedNumber(value)}`).join(', ')

/** One result with what ends it, so that no line begins with a stop: '2 to 8 (x 50): 1971.1 mm; '. */
function rowRuns(row: EntryRow, { unit, job, end }: { unit: string; job: LengthUnit; end: string }): Run[] {
  const own = put(row.inputs)
  const where = [row.places, row.places === '' || own === '' ? own : `(${own})`].filter(
    (words) => words !== '',
  )
  return [
    { text: where.length === 0 ? '' : `${where.join(' ')}: `, weight: 'regular' },
    { text: `${workedResult({ value: row.value, unit }, job)}${end}`, weight: 'semibold' },
  ]
}

/** The numbers put into an entry, and what came out: those that all share first. */
function numberRuns({ shared, rows, unit }: FigureEntry, job: LengthUnit): Run[] {
  const [only] = rows
  const once = unit !== '' && unit !== '°' && rows.length > 3 && job === 'mm'
  const runs = rows.flatMap((row, i): Run[] =>
    rowRuns(row, { unit: once ? '' : unit, job, end: i < rows.length - 1 ? '; ' : '.' }),
  )
  const inUnit = once && unit !== 'no.' ? `In ${unit}. ` : ''
  if (shared.length === 0) return [{ text: inUnit, weight: 'regular' }, ...runs]
  if (rows.length === 1 && only) {
    const where = only.places === '' ? '' : `${capital(only.places)}: `
    return [
      { text: `${where}${put(shared)} → `, weight: 'regular' },
      { text: `${workedResult({ value: only.value, unit }, job)}.`, weight: 'semibold' },
    ]
  }
  return [{ text: `${inUnit}All with ${put(shared)}. `, weight: 'regular' }, ...runs]
}

/** An entry as blocks: its name, formula and source, then its numbers; long ones may go on over a page. */
function entryBlocks(
  entry: FigureEntry,
  { width, job, measure }: { width: number; job: LengthUnit; measure: Measure },
): Block[] {
  const how: Run[] = [
    { text: `${entry.name}: `, weight: 'semibold' },
    { text: `${entry.formula}. Source: ${entry.source}.`, weight: 'regular' },
  ]
  const set = [
    ...setLines(how, { width, size, measure }).map((line) => ({ line, x: 0 })),
    ...setLines(numberRuns(entry, job), { width: width - 5, size, measure }).map((line) => ({ line, x: 5 })),
  ]
  const parts = Array.from({ length: Math.ceil(set.length / mostTogether) }, (_, i) =>
    set.slice(i * mostTogether, (i + 1) * mostTogether),
  )
  return parts.map((part, i): Block => ({
    height: part.length * lineHeight(size),
    above: i === 0 ? 2 : 0,
    marks: (x, y) =>
      part.flatMap(({ line, x: inset }, row) =>
        linesAt([line], { x: x + inset, y: y + 3.5 + row * lineHeight(size), size, ink: 'black' }),
      ),
  }))
}

/** What was noted when the gate was checked and no caution: worth reading once. */
function noteBlocks({ design }: Pick<JobCardInput, 'design'>, width: number, measure: Measure): Block[] {
  const notes = design.checks.filter(({ level }) => level === 'note')
  if (notes.length === 0) return []
  return [
    heading('Worth knowing'),
    ...notes.map(({ message, remedy }) => paragraph(`${message} ${remedy}`.trim(), { width, measure })),
  ]
}

/**
 * The worked figures of a gate as pages of their own: every figure of the design with its formula, the numbers put in, what it came to and
 * where the rule is from, under what it belongs to; figures worked alike stand in one entry, and what is the same for both leaves is said
 * once. Numbers to five figures that count.
 */
export function workedFigures(input: JobCardInput, measure: Measure = plainMeasure): PaperDocument {
  const { design, format, unit } = input
  const sheet = paperSizes[format]
  const width = sheet.width - margins.left - margins.right
  const blocks = [
    ...noteBlocks(input, width, measure),
    ...figureGroups(figureEntries(design)).flatMap(({ title, entries }) => [
      heading(title),
      ...entries.flatMap((entry) => entryBlocks(entry, { width, job: unit, measure })),
    ]),
  ]
  const frame = { x: margins.left, top: margins.top + headerHeight, bottom: sheet.height - margins.bottom }
  return headedPages(input, { paper: 'worked figures', pages: flow(blocks, frame, { ...frame }) }, measure)
}
