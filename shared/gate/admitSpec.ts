import type { Problem, Result } from '../problem.ts'
import { notYet } from './notYet.ts'
import { parseBy } from './parseSpec.ts'
import { draftShape, specShape, type DraftSpec, type GateSpec } from './spec.ts'
import { specProblems } from './specRules.ts'

/** The rules between keys, then what no form or paper shows yet. */
const admission = (spec: GateSpec | DraftSpec): Problem[] => [...specProblems(spec), ...notYet(spec)]

/** Reads a spec where it comes in from outside: as `parseSpec`, and refused where a card of it would be made in part. */
export const admitSpec = (input: unknown): Result<GateSpec> => parseBy(specShape, admission, input)

/** Reads a draft where it comes in: as `admitSpec`, but the sizes may still be missing. */
export const admitDraft = (input: unknown): Result<DraftSpec> => parseBy(draftShape, admission, input)
