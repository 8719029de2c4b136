import * as v from 'valibot'
import { sectionShape, workshopShape } from './gate/spec.ts'
import { parseShape } from './gate/parseSpec.ts'
import { fieldTexts } from './job/fieldTexts.ts'
import type { Customer, Difference, Job, Overlap, Paper } from './job/job.ts'
import { notesTakes, type NotesReplies } from './notes/requests.ts'
import type { FolderKind } from './folderWarning.ts'
import { languageTakes, languageTag, type LanguageReplies } from './language/requests.ts'
import type { Result } from './problem.ts'
import type { GateSpec, Section, Workshop } from './gate/spec.ts'
import type { LengthUnit } from './job/job.ts'
import type { PaperFormat } from './papers/page.ts'
import type { StandardTimes } from './pricing/needs.ts'
import { cuttingShape } from './ordering/cuttingSettings.ts'
import type { CuttingSettings } from './ordering/orderModel.ts'
import { openBookTakes, type OpenBookReplies } from './openBook/requests.ts'
import { jobBookTakes, type JobBookReplies } from './job/requests.ts'
import { usualTakes, type UsualReplies } from './gate/usualGate.ts'
import { keepingTakes, type KeepingReplies } from './keeping/requests.ts'
import { orderTakes, type OrderReplies } from './ordering/requests.ts'
import { handShape, undoTakes, type UndoReplies } from './undo/requests.ts'
import { printerShape, type Printer } from './papers/fullSize/printer.ts'
import {
  benchPaperTakes,
  fullSizeKindsShape,
  labelChoiceShape,
  type BenchPaperReplies,
} from './papers/requests.ts'
import { moneyTakes, type MoneyReplies } from './pricing/requests.ts'
import { businessShape, moneyShape, timesShape, type Business } from './pricing/shapes.ts'
import type { MoneySettings } from './pricing/terms.ts'

/** A section the workshop keeps, offered when a gate is designed. A job copies it, so that a later edit moves no job. source: 'common practice' or 'this workshop'. */
export type KeptSection = {
  id: number
  use: 'boards' | 'ledges' | 'braces'
  section: Section
  source?: string
}

/** The workshop's own settings. money: how it charges; times: minutes for each operation; business: how it stands on a customer's paper; cutting: what is lost at the saw; printer: how far out it is; language: the tag of the words on screens and papers, '' for British English. */
export type Settings = {
  name: string
  unit: LengthUnit
  paper: PaperFormat
  language: string
  workshop: Workshop
  money: MoneySettings
  times: StandardTimes
  business: Business
  cutting: CuttingSettings
  printer: Printer
  /** Whether somebody has been through the first questions. */
  welcomed: boolean
}

/** What the window shows before anything is opened. folderLies: on this machine, on another, or in a folder kept the same on others; either of those is warned of. */
export type BookSummary = {
  workshopName: string
  jobs: number
  sampleJobs: number
  folder: string
  folderLies: FolderKind
  settings: Settings
}

/** A paper's own bytes, checked against its hash just now. */
export type PaperBytes = { paper: Paper; base64: string }

const id = v.pipe(
  v.number('a whole number'),
  v.integer('a whole number'),
  v.minValue(1, 'a whole number over 0'),
)
const { short: shortText, unit } = fieldTexts
const format = v.picklist(['a4', 'letter'], 'a4 or letter')
const sheets = ['worked figures', 'fitting sheet', 'part labels', 'care note', 'full-size sheets'] as const
const sheet = v.picklist(sheets, `one of ${sheets.join(', ')}`)
const nothing = v.strictObject({})

const change = v.strictObject({
  path: v.pipe(
    v.string('a dotted path'),
    v.regex(/^[a-zA-Z]+(\.[a-zA-Z0-9]+)*$/, 'a dotted path'),
    v.maxLength(100, 'a dotted path'),
  ),
  value: v.unknown(),
  was: v.optional(v.unknown()),
  typed: v.optional(shortText),
})

/** One entry a request: what it takes. What it gives stands in `Replies`. */
const takes = {
  'book.summary': nothing,
  ...jobBookTakes,
  'jobs.open': v.strictObject({ id }),
  'jobs.create': v.strictObject({
    customerName: shortText,
    town: shortText,
    phone: shortText,
    title: shortText,
    due: v.nullable(fieldTexts.day),
  }),
  'jobs.change': v.strictObject({
    id,
    changes: v.pipe(
      v.array(change),
      v.minLength(1, 'at least one change'),
      v.maxLength(100, 'up to 100 changes'),
    ),
    hand: handShape,
  }),
  'jobs.repeat': v.strictObject({ id }),
  'customers.find': v.strictObject({ search: shortText }),
  'papers.list': v.strictObject({ jobId: id }),
  'papers.issue': v.strictObject({ jobId: id, format, version: v.pipe(v.number(), v.integer()) }),
  'papers.bytes': v.strictObject({ id }),
  'papers.draft': v.strictObject({ jobId: id, format }),
  'papers.sheet': v.strictObject({
    jobId: id,
    format,
    sheet,
    labels: v.optional(labelChoiceShape),
    fullSize: v.optional(fullSizeKindsShape),
  }),
  'papers.compare': v.strictObject({ earlier: id, later: v.nullable(id) }),
  'settings.change': v.strictObject({
    name: v.optional(shortText),
    unit: v.optional(unit),
    paper: v.optional(format),
    language: v.optional(languageTag),
    workshop: v.optional(workshopShape),
    money: v.optional(moneyShape),
    times: v.optional(timesShape),
    business: v.optional(businessShape),
    cutting: v.optional(cuttingShape),
    printer: v.optional(printerShape),
    welcomed: v.optional(v.boolean('yes or no')),
  }),
  'sections.list': nothing,
  'sections.add': v.strictObject({ use: v.picklist(['boards', 'ledges', 'braces']), section: sectionShape }),
  'sections.change': v.strictObject({ id, section: sectionShape }),
  'sections.remove': v.strictObject({ id }),
  'sample.remove': nothing,
  ...moneyTakes,
  ...orderTakes,
  ...benchPaperTakes,
  /** The job's file that was pressed in a folder, once. */
  'job.handed': nothing,
  ...openBookTakes,
  ...keepingTakes,
  ...undoTakes,
  ...usualTakes,
  'papers.gate': v.strictObject({ id }),
  ...notesTakes,
  ...languageTakes,
} as const

type Replies = MoneyReplies &
  JobBookReplies &
  OrderReplies &
  BenchPaperReplies &
  OpenBookReplies &
  KeepingReplies &
  UndoReplies &
  UsualReplies &
  NotesReplies &
  LanguageReplies & {
    'papers.gate': { spec: GateSpec }
    'book.summary': BookSummary
    'jobs.open': Job
    'jobs.create': Job
    'jobs.change': { job: Job; overlaps: Overlap[] }
    'jobs.repeat': Job
    'customers.find': Customer[]
    'papers.list': Paper[]
    'papers.issue': Paper
    'papers.bytes': PaperBytes
    'papers.draft': { base64: string }
    'papers.sheet': { base64: string }
    'papers.compare': Difference[]
    'settings.change': Settings
    'sections.list': KeptSection[]
    'sections.add': KeptSection[]
    'sections.change': KeptSection[]
    'sections.remove': KeptSection[]
    'sample.remove': { removed: number }
    'job.handed': { name: string; text: string } | null
  }

export type RequestName = keyof typeof takes
export type Takes<N extends RequestName> = v.InferOutput<(typeof takes)[N]>
export type Gives<N extends RequestName> = Replies[N]
export const requestNames = Object.keys(takes) as RequestName[]
export const isRequestName = (name: unknown): name is RequestName =>
  typeof name === 'string' && Object.hasOwn(takes, name)

/** Reads a request's payload; the problems name the fields. */
export const parseRequest = <N extends RequestName>(name: N, payload: unknown): Result<Takes<N>> =>
  parseShape(takes[name], payload)
