import type { Result } from '../problem.ts'
import { notYet } from './notYet.ts'
import { parseShape } from './parseSpec.ts'
import { draftShape, specShape, type DraftSpec, type GateSpec } from './spec.ts'
import { specProblems } from './specRules.ts'

/**
 * Reads a spec where it comes in from outside: shape, then the rules between keys, then what can't be drawn yet. All
 * problems at once.
 */
export function admitSpec(input: unknown): Result<GateSpec> {
  const shaped = parseShape(specShape, input)
  if (!shaped.ok) return shaped
  const problems = [...specProblems(shaped.value), ...notYet(shaped.value)]
  return problems.length > 0 ? { ok: false, problems } : shaped
}

/** Reads a draft where it comes in: as `admitSpec`, but the sizes may still be missing. */
export function admitDraft(input: unknown): Result<DraftSpec> {
  const shaped = parseShape(draftShape, input)
  if (!shaped.ok) return shaped
  const problems = [...specProblems(shaped.value), ...notYet(shaped.value)]
  return problems.length > 0 ? { ok: false, problems } : shaped
}
