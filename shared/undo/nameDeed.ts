import { writeLength, writeShortMm } from '../units/writeLength.ts'
import { paperDate } from '../papers/paperDate.ts'
import { valueAt } from '../job/specPath.ts'
import { cellNames, entryOf, keysOf, type Step } from './step.ts'
import { customerCell, entryName, settingCell, settingName } from './words.ts'

/** How a job came into the book, where it wasn't started by its form. */
export type Came = 'from a file' | 'made again'

const mostLetters = 32
const short = (words: string): string =>
  words.length > mostLetters ? `${words.slice(0, mostLetters - 1).trimEnd()}…` : words

const many = (count: number, one: string, more: string): string =>
  count === 1 ? `1 ${one}` : `${count} ${more}`
const changeOf = (what: string, was: string, is: string): string =>
  was === 'nothing' ? `${what} ${is}` : `${what} ${was} → ${is}`

/** Values that no unit belongs to stand as they are: counts, angles. */
const bare = /(leaves|count|openTo|angle|diameter|lengths|tempC|rhPercent|gustMs|personKg|massKg|quantity)$/

const day = /^\d{4}-\d{2}-\d{2}$/
/** What was chosen of a list, 'ledged-braced'; a name that the person wrote keeps its hyphens. */
const chosenWords = /^[a-z]+(-[a-z]+)+$/

function said(path: string, value: unknown, unit: Step['unit']): string | undefined {
  if (value === null || value === undefined || value === '') return 'nothing'
  if (typeof value === 'number')
    return bare.test(path)
      ? writeShortMm(value, 2)
      : unit === 'in'
        ? writeLength(value, 'in')
        : writeShortMm(value)
  if (typeof value !== 'string') return undefined
  if (day.test(value)) return paperDate(value)
  if (path === 'unit' && value === 'in') return 'inches'
  return short(chosenWords.test(value) ? value.replaceAll('-', ' ') : value)
}

/** 'Width 900 → 915', or the entry's name alone where its value is too long to say. */
function entryDeed(path: string, step: Step, cell: string): string {
  const [was, is] = [step.was?.[cell], step.is?.[cell]].map((value) => said(path, value, step.unit))
  const what = entryName(path)
  if (path === 'notes' || was === undefined || is === undefined) return what
  if (path === 'stage') return `${what}: ${is}`
  return changeOf(what, was, is)
}

const small = (words: string): string => words.charAt(0).toLowerCase() + words.slice(1)

/** What was done to one job: each entry changed, or how many they were. */
function jobDeed(step: Step): string {
  const cells = cellNames(step)
  const values = cells.filter((cell) => !cell.startsWith('entry.typed.'))
  const shown = values.length > 0 ? values : cells
  const [first, ...others] = shown
  if (first === undefined) return 'Job changed'
  if (others.length === 0) return entryDeed(entryOf(first), step, first)
  const names = [...new Set(shown.map((cell) => entryName(entryOf(cell))))]
  const [one = '', two = ''] = names
  return names.length === 1
    ? one
    : names.length === 2
      ? `${one} and ${small(two)}`
      : `${names[0]} and ${names.length - 1} more`
}

function settingDeed(step: Step): string {
  const key = String(step.key['key'])
  const cells = step.is && step.was ? cellNames(step) : step.of === '' ? [] : [step.of]
  const only = cells.length === 1 ? cells[0] : undefined
  const own = only === undefined ? undefined : settingCell(only)
  const is = only === undefined ? step.is?.['value'] : (step.is?.[only] ?? valueAt(step.is, keysOf(only)))
  if (own !== undefined && typeof is === 'number') return `Settings: ${own} ${writeShortMm(is)} mm`
  if (own !== undefined) return `Settings: ${own}`
  const plain = typeof is === 'string' ? ` ${short(is)}` : ''
  return `Settings: ${settingName(key)}${['name', 'unit', 'paper'].includes(key) ? plain : ''}`
}

/** A rise by where it came from: by a percentage, by hand, from a merchant's list. */
export function riseName(origin: string, lines: number): string {
  const prices = many(lines, 'price', 'prices')
  const percent = /^([−-]?)\s*([\d.,]+\s*%)(.*)$/.exec(origin)
  if (percent)
    return `Prices ${percent[1] ? 'lowered' : 'raised'} by ${percent[2]}${short(percent[3] ?? '')}: ${prices}`
  if (origin === 'by hand') return `Prices by hand: ${prices}`
  return `Merchant’s list ‘${short(origin)}’ brought in: ${prices}`
}

const kinds = (steps: readonly Step[], table: string): Step[] => steps.filter((step) => step.table === table)

/** One thing put in, taken out or set right. */
const rowDeed = (what: string, { was, is, of }: Step): string => {
  const name = of === '' ? '' : ` ‘${short(of)}’`
  return was === null
    ? `${what} added${name}`
    : is === null
      ? `${what} removed${name}`
      : `${what} changed${name}`
}

function rackDeed(pieces: readonly Step[]): string {
  const [first] = pieces
  if (!first) return 'Rack'
  const all = many(pieces.length, 'piece', 'pieces')
  const of = first.of === '' ? '' : ` ‘${short(first.of)}’`
  if (pieces.every(({ was }) => was === null)) return `Rack: ${all} put on${pieces.length === 1 ? of : ''}`
  if (pieces.every(({ is }) => is?.['left_on'] !== undefined && is['left_on'] !== null))
    return `Rack: ${all} taken off${pieces.length === 1 ? of : ''}`
  return pieces.length === 1 ? `Rack: piece set right${of}` : `Rack counted: ${all} changed`
}

const paperWords = (step: Step): string =>
  `${step.is?.['kind'] === 'quotation' ? 'Quotation' : 'Card'} ${String(step.is?.['revision'] ?? '')} issued`.replace(
    '  ',
    ' ',
  )

/** A note or a photograph: added, taken away, put back, or what it says changed. */
function noteDeed(what: string, step: Step | undefined): string {
  const away = step?.was === null ? undefined : step?.is?.['put_away']
  if (away !== undefined) return `${what} ${away === 1 ? 'taken away' : 'put back'}`
  return `${what} ${step?.was === null ? 'added' : 'changed'}`
}

const onJob = (of: string): string => (of === '' ? '' : ` on job ${of}`)

function jobsDeed(jobs: readonly Step[], came: Came | undefined): string | undefined {
  const made = jobs.filter(({ was }) => was === null)
  const [first] = made
  if (first && came === 'from a file') return `Job ${first.of} brought in from a file`
  if (first && came === 'made again') return `Job ${first.of} made again`
  if (first) return made.length === 1 ? `Job ${first.of} started` : `${made.length} jobs started`
  const [only, ...others] = jobs
  if (only && others.length === 0) return `${jobDeed(only)}${onJob(only.of)}`
  return only ? `${jobDeed(only)} on ${jobs.length} jobs` : undefined
}

/** What came first in importance names the deed: what it did besides follows from that. */
const namers: [table: string, name: (steps: Step[], all: readonly Step[]) => string][] = [
  [
    'rises',
    ([step]) => riseName(String(step?.is?.['origin'] ?? step?.of ?? ''), Number(step?.is?.['lines'] ?? 1)),
  ],
  [
    'orders',
    ([step]) => (step?.was === null ? `Order ${step.of} placed` : `Order ${step?.of ?? ''} cancelled`),
  ],
  ['acceptances', ([step]) => `Quotation accepted${onJob(step?.of ?? '')}`],
  [
    'papers',
    (steps) =>
      steps.length === 1 && steps[0]
        ? `${paperWords(steps[0])}${onJob(steps[0].of)}`
        : `${steps.length} cards issued`,
  ],
  [
    'order_cuts',
    ([step], all) => {
      const offcuts = kinds(all, 'rack_pieces').filter(({ was }) => was === null).length
      return `Lengths cut${step?.of ? `, order ${step.of}` : ''}${offcuts > 0 ? `: ${many(offcuts, 'offcut', 'offcuts')} booked` : ''}`
    },
  ],
  ['order_receipts', ([step]) => `Timber received${step?.of ? `, order ${step.of}` : ''}`],
  ['settings', ([step]) => (step ? settingDeed(step) : 'Settings')],
  ['sections', ([step]) => (step ? rowDeed('Section', step) : 'Sections')],
  [
    'items',
    ([step, ...others]) =>
      !step
        ? 'Price line'
        : others.length > 0
          ? `${others.length + 1} price lines`
          : rowDeed('Price line', step),
  ],
  ['suppliers', ([step]) => (step ? rowDeed('Merchant', step) : 'Merchants')],
  ['supplies', ([step]) => (step ? `How ‘${short(step.of)}’ is sold` : 'How lines are sold')],
  ['options', ([step]) => (step ? `${rowDeed('Option', step)}` : 'Options')],
  ['work_done', ([step]) => (step?.is === null ? 'Work entry removed' : 'Work entered')],
  ['rack_pieces', (steps) => rackDeed(steps)],
  ['usual_gates', ([step]) => (step ? rowDeed('Usual gate', step) : 'Usual gates')],
  ['job_notes', ([step]) => noteDeed('Note', step)],
  ['photographs', ([step]) => noteDeed('Photograph', step)],
  [
    'customers',
    ([step]) => {
      const cell = step && step.was && step.is ? cellNames(step)[0] : undefined
      if (!step || cell === undefined) return 'Customer'
      const [was, is] = [step.was?.[cell], step.is?.[cell]].map((value) => said(cell, value, undefined))
      return was !== undefined && is !== undefined && cell !== 'address'
        ? changeOf(customerCell(cell), was, is)
        : customerCell(cell)
    },
  ],
]

const withJob = new Set(['options', 'work_done', 'job_notes', 'photographs', 'customers'])

/**
 * What a deed is called, in the joiner's words: 'Width 900 → 915 on job 2026-014', 'Prices raised by 4 % on everything: 37 prices', 'Section removed ‘ex 32 × 150 planed’'.
 * jobNumber: the number of the job it belongs to, '' where it belongs to none.
 */
export function nameDeed(steps: readonly Step[], jobNumber: string, came?: Came): string {
  const jobs = kinds(steps, 'jobs')
  if (jobs.some(({ was }) => was === null)) return jobsDeed(jobs, came) ?? 'Job started'
  for (const [table, name] of namers) {
    const own = kinds(steps, table)
    if (own.length > 0) return `${name(own, steps)}${withJob.has(table) ? onJob(jobNumber) : ''}`
  }
  return jobsDeed(jobs, came) ?? 'Something changed'
}
