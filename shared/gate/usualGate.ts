import * as v from 'valibot'
import type { LengthUnit } from '../job/job.ts'
import type { DraftSpec, GateSpec } from './spec.ts'

/** A gate that the workshop makes again and again: its name, the unit it was drawn in, and the whole of it as it was kept. */
export type UsualGate = { id: number; name: string; unit: LengthUnit; spec: GateSpec; keptAt: string }

const id = v.pipe(
  v.number('a whole number'),
  v.integer('a whole number'),
  v.minValue(1, 'a whole number over 0'),
)
const name = v.pipe(
  v.string('a name'),
  v.trim(),
  v.minLength(1, 'a name'),
  v.maxLength(100, 'a name of up to 100 characters'),
)

/** What the requests about usual gates take. spec is read by its own rules where it is answered. */
export const usualTakes = {
  'usual.list': v.strictObject({}),
  'usual.add': v.strictObject({ name, unit: v.picklist(['mm', 'in'], 'mm or in'), spec: v.unknown() }),
  'usual.rename': v.strictObject({ id, name }),
  'usual.remove': v.strictObject({ id }),
} as const

/** What they give: the usual gates as they stand, by name. */
export type UsualReplies = {
  'usual.list': UsualGate[]
  'usual.add': UsualGate[]
  'usual.rename': UsualGate[]
  'usual.remove': UsualGate[]
}

/** A change of the gate as the job takes it. */
export type Laid = { path: string; value: unknown }

/** What belongs to how a gate is made. Sizes, hand, opening, site and tools belong to the job, and so do two leaves or a stable door. */
const construction = [
  'construction',
  'top',
  'boards',
  'ledges',
  'braces',
  'frame',
  'fixings',
  'ironmongery',
] as const

/** What else a new job takes over, before anything of its own is known. */
const beginning = ['leaves', 'hung', 'opens', 'openTo', 'stable', 'meeting'] as const

const sameHeights = (draft: DraftSpec, usual: GateSpec): boolean =>
  draft.size.from === 'leaf' && usual.size.from === 'leaf' && draft.size.height === usual.size.height

/** A usual gate made for another height: its ledges and its ironmongery stand where the rule puts them there. */
function freed(usual: GateSpec): GateSpec {
  return {
    ...usual,
    ledges: { ...usual.ledges, heights: 'auto' },
    ironmongery: usual.ironmongery.map(({ heights: _, ...piece }) => piece),
  }
}

/** Timbers that a usual gate describes itself, beside the job's own; weather where a gap is left to it and the job has none. */
function companions(draft: DraftSpec, usual: GateSpec): Laid[] {
  const laid: Laid[] = []
  if (usual.timbers) laid.push({ path: 'spec.timbers', value: { ...draft.timbers, ...usual.timbers } })
  if (usual.boards.gap === 'auto' && !draft.climate && usual.climate)
    laid.push({ path: 'spec.climate', value: usual.climate })
  return laid
}

/**
 * The changes that lay a usual gate's way of making over a job's gate, which keeps its sizes and its site. Heights set by hand go back to the rule where the two
 * aren't of one height. fresh: the job is new, and takes one or two leaves, hand and opening over as well, its sizes still to come.
 */
export function layOver(draft: DraftSpec, usual: GateSpec, fresh = false): Laid[] {
  const from = sameHeights(draft, usual) ? usual : freed(usual)
  const keys = fresh ? [...construction, ...beginning] : construction
  const laid: Laid[] = keys.map((key) => ({ path: `spec.${key}`, value: from[key] ?? null }))
  const gap = usual.size.meetingGap
  if (fresh && usual.leaves === 2 && gap !== undefined)
    laid.push({ path: 'spec.size.meetingGap', value: gap })
  return [...laid, ...companions(draft, usual)]
}
