import type { Problem } from '../problem.ts'
import { speciesNamed } from '../timber/species.ts'
import { grooveDepth } from './boarding.ts'
import type { DraftSpec, GateSpec, Section } from './spec.ts'

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

/** Numbers that must agree with one another. */
function agreement(spec: AnySpec): Problem[] {
  const out: Problem[] = []
  const { heights, count } = spec.ledges
  const wanted =
    count === 'auto' ? undefined : spec.construction === 'framed-ledged-braced' ? count - 1 : count
  if (heights !== 'auto' && wanted !== undefined && heights.length !== wanted)
    out.push(
      problem(
        'mismatch',
        'ledges.heights',
        `got ${heights.length} heights, ${wanted} are accepted with count ${count}`,
      ),
    )
  if (heights !== 'auto' && wanted === undefined && (heights.length < 2 || heights.length > 3))
    out.push(problem('mismatch', 'ledges.heights', `got ${heights.length} heights, 2 or 3 are accepted`))
  const { width: cover, groove: given } = spec.boards.section
  const groove = grooveDepth(spec.boards.section)
  if (cover < leastCover)
    out.push(
      problem(
        'refused',
        'boards.section.width',
        `got ${cover}, a cover width of ${leastCover} mm or more is accepted`,
      ),
    )
  else if (groove >= cover)
    out.push(
      problem(
        'mismatch',
        given === undefined ? 'boards.section.tongue' : 'boards.section.groove',
        `got a groove ${groove} deep, a depth under the cover width of ${cover} is accepted`,
      ),
    )
  if (spec.fixings.root !== undefined && spec.fixings.root > spec.fixings.diameter)
    out.push(
      problem(
        'mismatch',
        'fixings.root',
        `got ${spec.fixings.root}, a root up to the diameter ${spec.fixings.diameter} is accepted`,
      ),
    )
  if (spec.braces?.ends === 'notched' && spec.braces.notchDepth === undefined)
    out.push(problem('missing', 'braces.notchDepth', 'missing, notched ends need a depth in mm'))
  if (spec.braces?.ends === 'flush' && spec.braces.notchDepth !== undefined)
    out.push(
      problem(
        'refused',
        'braces.notchDepth',
        'not accepted with flush ends; leave it out or set ends to notched',
      ),
    )
  return out
}

/** The sections a spec uses, with their paths. */
function sections(spec: AnySpec): [string, Section][] {
  const found: [string, Section | undefined][] = [
    ['boards.section', spec.boards.section],
    ['ledges.section', spec.ledges.section],
    ['ledges.topSection', spec.ledges.topSection],
    ['braces.section', spec.braces?.section],
    ['frame.stile', spec.frame?.stile],
    ['frame.topRail', spec.frame?.topRail],
  ]
  return found.filter((entry): entry is [string, Section] => entry[1] !== undefined)
}

function knownSpecies(spec: AnySpec): Problem[] {
  return sections(spec)
    .filter(([, section]) => !speciesNamed(section.species, spec.timbers))
    .map(([path, section]) =>
      problem(
        'unknown',
        `${path}.species`,
        `'${section.species}' is not a known species; use a listed one or describe it under timbers with a density or strength class`,
      ),
    )
}

/** Rules of the spec that tie one key to another. Empty when all is well. */
export const specProblems = (spec: AnySpec): Problem[] => [
  ...belonging(spec),
  ...agreement(spec),
  ...(spec.boards.gap === 'auto' && !spec.climate
    ? [problem('missing', 'climate', "missing, needed when boards.gap is 'auto'")]
    : []),
  ...knownSpecies(spec),
]
