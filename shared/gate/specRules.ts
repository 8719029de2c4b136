import type { Problem } from '../problem.ts'
import { crossGrain, speciesNamed, timberNamed } from '../timber/species.ts'
import { grooveDepth } from './boarding.ts'
import { sectionsOf } from './sectionsOf.ts'
import type { DraftSpec, GateSpec } from './spec.ts'

type AnySpec = GateSpec | DraftSpec

const problem = (code: string, field: string, message: string): Problem => ({ code, field, message })

/** Narrowest cover of a board that is taken, mm: under it a leaf would run to thousands of boards. */
export const leastCover = 5

/** Keys that one construction or leaf count needs and another refuses. */
function belonging(spec: AnySpec): Problem[] {
  const out: Problem[] = []
  const braced = spec.construction !== 'ledged'
  if (braced && !spec.braces)
    out.push(problem('missing', 'braces', `missing, needed when construction is ${spec.construction}`))
  if (!braced && spec.braces)
    out.push(
      problem(
        'refused',
        'braces',
        'not accepted when construction is ledged; leave it out or choose ledged-braced',
      ),
    )
  const framed = spec.construction === 'framed-ledged-braced'
  if (framed && !spec.frame)
    out.push(problem('missing', 'frame', 'missing, needed when construction is framed-ledged-braced'))
  if (!framed && spec.frame)
    out.push(
      problem(
        'refused',
        'frame',
        `not accepted when construction is ${spec.construction}; leave it out or choose framed-ledged-braced`,
      ),
    )
  return [...out, ...pairRules(spec), ...framedRules(spec)]
}

function pairRules(spec: AnySpec): Problem[] {
  const out: Problem[] = []
  const gap = 'meetingGap' in spec.size ? spec.size.meetingGap : undefined
  if (spec.leaves === 2 && gap === undefined)
    out.push(problem('missing', 'size.meetingGap', 'missing, a pair needs the gap between its leaves in mm'))
  if (spec.leaves === 1 && gap !== undefined)
    out.push(
      problem('refused', 'size.meetingGap', 'not accepted on one leaf; leave it out or set leaves to 2'),
    )
  if (spec.leaves === 1 && spec.meeting)
    out.push(problem('refused', 'meeting', 'not accepted on one leaf; leave it out or set leaves to 2'))
  if (spec.leaves === 2 && spec.stable)
    out.push(
      problem('refused', 'stable', 'not accepted on a pair; a stable door is one opening with leaves 1'),
    )
  return out
}

function framedRules(spec: AnySpec): Problem[] {
  if (spec.construction !== 'framed-ledged-braced') return []
  const out: Problem[] = []
  for (const inset of ['hangingInset', 'closingInset'] as const)
    if (spec.ledges[inset] !== 0)
      out.push(
        problem(
          'refused',
          `ledges.${inset}`,
          `got ${spec.ledges[inset]}, only 0 is accepted on a framed gate`,
        ),
      )
  if (spec.ledges.end.cut !== 'square')
    out.push(
      problem(
        'refused',
        'ledges.end.cut',
        `got '${spec.ledges.end.cut}', only square is accepted on a framed gate`,
      ),
    )
  return out
}

/** As many heights as ledges; on a framed gate the rail is counted but has no height of its own. */
function ledgeHeights(spec: AnySpec): Problem[] {
  const { heights, count } = spec.ledges
  if (heights === 'auto') return []
  const field = 'ledges.heights'
  // The top rail of a framed gate is counted but stands at the top: it has no height of its own.
  const rails = spec.construction === 'framed-ledged-braced' ? 1 : 0
  if (count === 'auto')
    return heights.length === 2 - rails || heights.length === 3 - rails
      ? []
      : [
          problem(
            'mismatch',
            field,
            `got ${heights.length} heights, ${2 - rails} or ${3 - rails} are accepted`,
          ),
        ]
  const wanted = count - rails
  return heights.length === wanted
    ? []
    : [
        problem(
          'mismatch',
          field,
          `got ${heights.length} heights, ${wanted} are accepted with count ${count}`,
        ),
      ]
}

/** A cover that boards can be laid with, and a groove that leaves some of it. */
function boardSection({ boards }: AnySpec): Problem[] {
  const { width: cover, groove: given } = boards.section
  if (cover < leastCover)
    return [
      problem(
        'refused',
        'boards.section.width',
        `got ${cover}, a cover width of ${leastCover} mm or more is accepted`,
      ),
    ]
  const groove = grooveDepth(boards.section)
  if (groove < cover) return []
  return [
    problem(
      'mismatch',
      given === undefined ? 'boards.section.tongue' : 'boards.section.groove',
      `got a groove ${groove} deep, a depth under the cover width of ${cover} is accepted`,
    ),
  ]
}

function screwRoot({ fixings }: AnySpec): Problem[] {
  return fixings.root === undefined || fixings.root <= fixings.diameter
    ? []
    : [
        problem(
          'mismatch',
          'fixings.root',
          `got ${fixings.root}, a root up to the diameter ${fixings.diameter} is accepted`,
        ),
      ]
}

function notchDepth({ braces }: AnySpec): Problem[] {
  const field = 'braces.notchDepth'
  if (braces?.ends === 'notched' && braces.notchDepth === undefined)
    return [problem('missing', field, 'missing, notched ends need a depth in mm')]
  if (braces?.ends === 'flush' && braces.notchDepth !== undefined)
    return [problem('refused', field, 'not accepted with flush ends; leave it out or set ends to notched')]
  return []
}

/** Numbers that must agree with one another. */
const agreement = (spec: AnySpec): Problem[] => [
  ...ledgeHeights(spec),
  ...boardSection(spec),
  ...screwRoot(spec),
  ...notchDepth(spec),
]

function knownSpecies(spec: AnySpec): Problem[] {
  return sectionsOf(spec)
    .filter(([, section]) => !speciesNamed(section.species, spec.timbers))
    .map(([path, section]) =>
      problem(
        'unknown',
        `${path}.species`,
        `'${section.species}' is not a known species; use a listed one or describe it under timbers with a density or strength class`,
      ),
    )
}

/** A gap left to the climate needs the climate, and a timber whose movement is known. */
function climateGap(spec: AnySpec): Problem[] {
  const { gap, section } = spec.boards
  if (gap !== 'auto') return []
  if (!spec.climate) return [problem('missing', 'climate', "missing, needed when boards.gap is 'auto'")]
  const timber = timberNamed(section.species, spec.timbers)
  if (!timber || crossGrain(timber)) return []
  return [
    problem(
      'missing',
      'timbers',
      `how '${section.species}' moves isn’t known; a shrinkage or tangential value is needed when boards.gap is 'auto'`,
    ),
  ]
}

/** Rules of the spec that tie one key to another. Empty when all is well. */
export const specProblems = (spec: AnySpec): Problem[] => [
  ...belonging(spec),
  ...agreement(spec),
  ...climateGap(spec),
  ...knownSpecies(spec),
]
