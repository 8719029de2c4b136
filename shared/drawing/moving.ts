import type { Check } from '../gate/checks.ts'
import { isStop } from '../gate/checks.ts'
import { design } from '../gate/design.ts'
import type { Design } from '../gate/designModel.ts'
import { parseSpec } from '../gate/parseSpec.ts'
import type { GateSpec } from '../gate/spec.ts'
import type { LengthUnit } from '../job/job.ts'
import { canHold, placedAt, valueAt } from '../job/specPath.ts'
import { standingHeights, standingLedges, type Hold } from './holds.ts'

/** What a part moves by in a job of that unit, mm: 1, or a sixteenth of an inch. */
export const moveStep = (unit: LengthUnit): number => (unit === 'mm' ? 1 : 25.4 / 16)

const tidy = (mm: number): number => Math.round(mm * 1e4) / 1e4

/** A place brought to the nearest whole step, and within the limits: to the last whole step inside them, or to the limit where none is. */
export function snapped(
  mm: number,
  { limits, unit }: { limits: [number, number]; unit: LengthUnit },
): number {
  const [least, most] = limits
  const step = moveStep(unit)
  const to = Math.round(mm / step) * step
  if (to < least) return tidy(Math.min(Math.ceil(least / step - 1e-6) * step, most))
  if (to > most) return tidy(Math.max(Math.floor(most / step + 1e-6) * step, least))
  return tidy(to)
}

/** The place so many whole steps on from one, as an arrow key goes: 310.4 and one step up is 311. */
export function stepsOn(
  mm: number,
  steps: number,
  { limits, unit }: { limits: [number, number]; unit: LengthUnit },
): number {
  const step = moveStep(unit)
  const from = steps > 0 ? Math.floor(mm / step + 1e-6) : Math.ceil(mm / step - 1e-6)
  return snapped((from + steps) * step, { limits, unit })
}

/** A change of an entry of the spec, as the job takes it. */
export type SpecChange = { path: string; value: unknown }

/** Kept to a thousandth, so that a height taken over from a rule isn't a string of figures. */
const plain = (mm: number): number => Math.round(mm * 1000) / 1000

/**
 * The change that puts a value in an entry. A place in a list that a rule fills (ledge or hinge heights) makes the list the joiner's own: the other
 * heights stay where they stand.
 */
export function changeOf(
  spec: GateSpec,
  made: Design,
  { field, value }: { field: string; value: number },
): SpecChange {
  const listed = /^(ledges|ironmongery\.(\d+))\.heights\.(\d+)$/.exec(field)
  const rule = listed ? `${listed[1]}.heights` : ''
  if (!listed || Array.isArray(valueAt(spec, rule.split('.')))) return { path: `spec.${field}`, value }
  const standing =
    listed[2] === undefined ? standingLedges(made) : standingHeights(spec, made, Number(listed[2]))
  const own = standing.map((mm, index) => (index === Number(listed[3]) ? value : plain(mm)))
  return { path: `spec.${rule}`, value: own }
}

/** The change that gives a hold's entry back to its rule: ledges by the usual margins, ironmongery by its usual heights. */
export const backToRule = ({ rule }: Pick<Hold, 'rule'>): SpecChange => ({
  path: `spec.${rule}`,
  value: rule === 'ledges.heights' ? 'auto' : null,
})

/** Why a gate can't be made with a change, as the checks say it, or null. What the spec itself refuses reads as a check too. */
export function refusalOf(spec: GateSpec, { path, value }: SpecChange): Check | null {
  const keys = path.split('.').slice(1)
  if (!canHold(spec, keys)) return null
  const read = parseSpec(placedAt(spec, keys, value ?? undefined))
  if (!read.ok) {
    const [problem] = read.problems
    return {
      id: 'entry',
      level: 'stop',
      message: `This can’t be: ${problem?.message ?? ''}.`,
      figures: [],
      remedy: '',
      field: problem?.field ?? '',
    }
  }
  const outcome = design(read.value)
  return outcome.made ? null : (outcome.stopped.checks.find(isStop) ?? null)
}

/**
 * A hold on its way. good is the last place found that the gate can be made with; past the nearest one found that it can't, with why. What is
 * wanted is tried first, then the middle between the two, one place a time, so that no drawing waits for a search.
 */
export type Way = { good: number; past: { value: number; why: Check } | null }

/** One try on the way to what is wanted. done: nothing is left to try. */
export function nextOnWay(
  way: Way,
  wanted: number,
  { unit, tried }: { unit: LengthUnit; tried: (value: number) => Check | null },
): { way: Way; done: boolean } {
  const step = moveStep(unit)
  const { good, past } = way
  const beyond = past !== null && (past.value > good ? wanted >= past.value : wanted <= past.value)
  if (!beyond) {
    const why = wanted === good ? null : tried(wanted)
    if (!why) return { way: { good: wanted, past: null }, done: true }
    return { way: { good, past: { value: wanted, why } }, done: Math.abs(wanted - good) <= step * 1.001 }
  }
  const apart = past.value - good
  if (Math.abs(apart) <= step * 1.001) return { way, done: true }
  const between = tidy(Math.round((good + apart / 2) / step) * step)
  if (between === good || between === past.value) return { way, done: true }
  const why = tried(between)
  const on: Way = why ? { good, past: { value: between, why } } : { good: between, past }
  return { way: on, done: Math.abs((on.past?.value ?? on.good) - on.good) <= step * 1.001 }
}
