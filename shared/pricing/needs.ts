import type { Section } from '../gate/spec.ts'
import type { WorkRate } from './item.ts'

/** What the standard times are kept for. Each is counted from the design; minutes are the workshop's own. */
export const operations = [
  'set up',
  'cut',
  'rip',
  'bevel',
  'board',
  'fixing',
  'notch',
  'tenon',
  'shaped top board',
  'hinge',
  'lock',
  'latch',
  'bolt',
  'finish square metre',
  'site visit',
  'hang leaf',
] as const
export type Operation = (typeof operations)[number]

/** Where an operation is done, which says at what rate it is charged. */
export const operationRates: Record<Operation, WorkRate> = {
  'set up': 'hour',
  cut: 'hour',
  rip: 'hour',
  bevel: 'hour',
  board: 'hour',
  fixing: 'hour',
  notch: 'hour',
  tenon: 'hour',
  'shaped top board': 'hour',
  hinge: 'hour',
  lock: 'hour',
  latch: 'hour',
  bolt: 'hour',
  'finish square metre': 'hour',
  'site visit': 'site hour',
  'hang leaf': 'site hour',
}

/** Minutes for one of each operation. */
export type StandardTimes = Record<Operation, number>

/**
 * Timber of one section: the pieces as blanks, mm, that have to be cut from lengths bought. sawnToShape: it is sawn to a curve, so any
 * section of its timber and thickness at least as wide will do.
 */
export type TimberNeed = {
  kind: 'timber'
  section: Section
  use: 'boards' | 'ledges' | 'braces' | 'frame'
  pieces: { mark: string; length: number; quantity: number }[]
  sawnToShape?: boolean
}
export type FixingNeed = {
  kind: 'fixing'
  form: 'screw' | 'nail'
  diameter: number
  length: number
  count: number
}
/** piece is the spec's id of it; name as the spec has it. */
export type IronmongeryNeed = { kind: 'ironmongery'; piece: string; name: string; count: number }
/** areaM2: every face and edge that is coated, once. */
export type FinishNeed = { kind: 'finish'; areaM2: number }
export type WorkNeed = { kind: 'work'; operation: Operation; count: number }

/** Everything a gate takes: what an estimate is worked out from. Follows from spec and design alone. */
export type Needs = {
  timber: TimberNeed[]
  fixings: FixingNeed[]
  ironmongery: IronmongeryNeed[]
  finish: FinishNeed
  work: WorkNeed[]
}
