import { stages, type LengthUnit } from '../job/job.ts'
import { paperDate } from '../papers/paperDate.ts'
import type { Happening, HappeningKind } from './happening.ts'
import { specChange } from './specChange.ts'

/** A change as it is kept: what stood in a field before and after, null for nothing, and when. */
export type KeptEntry = { path: string; before: unknown; after: unknown; at: string }

/** The most of a long text that a line of the log repeats, signs. */
const mostQuoted = 120

/** Words in quotation marks, cut where they are long. */
export function quoted(value: unknown): string {
  const words = (typeof value === 'string' ? value : '').replace(/\s+/g, ' ').trim()
  if (words === '') return 'nothing'
  return `“${words.length > mostQuoted ? `${words.slice(0, mostQuoted).trimEnd()}…` : words}”`
}

const isEmpty = (value: unknown): boolean => value === null || value === undefined || value === ''

/** 'Telephone: “01632 960001”, was “01632 960002”'. */
function replaced(name: string, before: unknown, after: unknown): string {
  if (isEmpty(before)) return `${name}: ${quoted(after)}`
  return `${name}: ${quoted(after)}, was ${quoted(before)}`
}

const names: Record<string, string> = {
  title: 'What it is',
  'customer.name': 'Customer',
  'customer.address': 'Address',
  'customer.town': 'Town',
  'customer.phone': 'Telephone',
  'customer.email': 'Email',
}

const stageWord = (stage: unknown): string => {
  const known = stages.find((one) => one === stage)
  return known ? `${known[0]?.toUpperCase()}${known.slice(1)}` : 'another stage'
}

const unitWord = (unit: unknown): string => (unit === 'in' ? 'inches' : 'mm')

const dayOf = (day: unknown): string => (typeof day === 'string' ? paperDate(day) : 'no day')

const nameIn = (value: unknown): string =>
  typeof value === 'object' && value !== null && 'name' in value && typeof value.name === 'string'
    ? value.name
    : ''

/** The versions of a gate that are priced. */
function optionTold({ before, after }: KeptEntry): string {
  const [was, is] = [nameIn(before), nameIn(after)]
  if (after === null) return `Version ${quoted(was)} taken out`
  return was === is
    ? `What is priced in ${is === '' ? 'the version' : quoted(is)} changed`
    : `Version ${quoted(is)}, was called ${quoted(was)}`
}

const madeFrom: Record<string, (change: KeptEntry) => string> = {
  stage: ({ before, after }) => `Moved on from ${stageWord(before)} to ${stageWord(after)}`,
  due: ({ before, after }) =>
    after === null
      ? `No longer promised for ${dayOf(before)}`
      : `Promised for ${dayOf(after)}${before === null ? '' : `, was ${dayOf(before)}`}`,
  unit: ({ before, after }) => `Measured in ${unitWord(after)}, was ${unitWord(before)}`,
  notes: ({ before, after }) =>
    isEmpty(before) ? `Standing note: ${quoted(after)}` : `Standing note changed. It said ${quoted(before)}`,
  number: ({ before, after }) => `Its number here is ${String(after)}, since ${String(before)} was taken`,
  madeAgainFrom: ({ after }) => `Made again from job ${String(after)}`,
  broughtIn: ({ after }) => `Brought in from another book, where it was job ${String(after)}`,
}

const back = (change: KeptEntry): boolean => change.after === false

const notePattern = /^note\.(\d+)\.(words|when|putAway)$/
function noteTold(change: KeptEntry): string {
  const what = notePattern.exec(change.path)?.[2]
  if (what === 'putAway') return back(change) ? 'A note put back' : 'A note taken away'
  if (what === 'when') return `A note put under ${String(change.after)}, was ${String(change.before)}`
  return `A note mended. It said ${quoted(change.before)}`
}

const photographPattern = /^photograph\.(\d+)\.(words|putAway)$/
function photographTold(change: KeptEntry): string {
  const [, place = '', what] = photographPattern.exec(change.path) ?? []
  if (what === 'putAway') return `Photograph ${place} ${back(change) ? 'put back' : 'taken away'}`
  return replaced(`Photograph ${place}`, change.before, change.after)
}

function kindOf(path: string): HappeningKind {
  if (path.startsWith('spec.') || path === 'unit') return 'gate'
  if (path === 'stage') return 'stage'
  if (path.startsWith('option.')) return 'papers'
  if (path === 'notes' || notePattern.test(path)) return 'notes'
  return photographPattern.test(path) ? 'photographs' : 'job'
}

function wordsOf(change: KeptEntry, unit: LengthUnit): string {
  const { path, before, after } = change
  if (path.startsWith('spec.')) return specChange([path.slice('spec.'.length), before, after], unit)
  if (path.startsWith('option.')) return optionTold(change)
  if (notePattern.test(path)) return noteTold(change)
  if (photographPattern.test(path)) return photographTold(change)
  const name = names[path]
  return name ? replaced(name, before, after) : (madeFrom[path]?.(change) ?? '')
}

/** A change told in a plain sentence; undefined for one that isn't told, such as the words a length was typed in, which go with its size. */
export function changeTold(change: KeptEntry, unit: LengthUnit): Happening | undefined {
  const words = wordsOf(change, unit)
  return words === '' ? undefined : { at: change.at, kind: kindOf(change.path), words }
}

/** A hand that rests longer than this in one entry begins another line, ms: ten minutes. */
export const oneSitting = 10 * 60 * 1000

/** A stage each way is a fact of its own, and so is each thing taken away or put back. */
const standsAlone = (path: string): boolean => path === 'stage' || path.endsWith('.putAway')

/**
 * Changes with those of one entry that follow each other within ten minutes made one: from what stood before the first to what stands
 * after the last, at the last one's moment. What came back to where it was is left out. Oldest first, as they come.
 */
export function inSittings(changes: readonly KeptEntry[]): KeptEntry[] {
  const open = new Map<string, KeptEntry>()
  const done: KeptEntry[] = []
  for (const change of changes) {
    const before = standsAlone(change.path) ? undefined : open.get(change.path)
    if (before && Date.parse(change.at) - Date.parse(before.at) <= oneSitting) {
      before.after = change.after
      before.at = change.at
      continue
    }
    const begun = { ...change }
    open.set(change.path, begun)
    done.push(begun)
  }
  return done.filter(({ before, after }) => JSON.stringify(before) !== JSON.stringify(after))
}
