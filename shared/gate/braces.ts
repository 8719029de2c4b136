import { lengthTolerance, type Point } from '../geometry/point.ts'
import type { Radians } from '../units/angle.ts'
import { braceFigures, braceSlope } from './braceAngle.ts'
import { braceAngleChecks, braceFitStop, braceLineStop } from './braceChecks.ts'
import { figuresOfBrace, type RunSource } from './braceFigures.ts'
import type { Check } from './checks.ts'
import type { Figures } from './figures.ts'
import type { Brace, Ledge } from './leaf.ts'
import { endLoss, lowerEdge, shortReach, upperEdge } from './ledges.ts'
import { notchChecks, notchedOutline, notchFaces, notchFigures } from './notch.ts'
import type { GateSpec, Section } from './spec.ts'
import type { Worked } from './worked.ts'

/**
 * The space a brace, or a line of braces, is fitted into: between two ledges' edges, and between its setbacks, which are measured
 * on the edges that the brace touches. start is the x of the foot's hanging-side corner; all mm.
 */
type Bay = {
  clearHeight: number
  run: number
  start: number
  lowerEdge: number
  from: RunSource
  lower: Ledge
  upper: Ledge
}

/** A slope that a brace, or a line of braces, follows through its bay. */
type BraceLine = Bay & { slope: Radians }

/** One piece to be cut from a line: its name and the heights it spans, mm. */
type Piece = { name: Brace['name']; from: number; to: number; section: Section }

const names = { 1: ['single'], 2: ['lower', 'upper'] } as const

/** A ledge's edge as a brace finds it: between the shoulders of a framed gate, else the long edge. */
function edgeOf(spec: GateSpec, ledge: Ledge): { start: number; length: number } {
  if (!spec.frame) return { start: ledge.x, length: ledge.length }
  const [start] = shortReach(ledge)
  return { start, length: ledge.shortLength }
}

function bayBetween(spec: GateSpec, lower: Ledge, upper: Ledge): Bay {
  const { footSetback = 0, headSetback = 0 } = spec.braces ?? {}
  const splay = spec.ledges.end.cut === 'splayed' ? endLoss(spec.ledges.end, lower.section) : 0
  const edge = edgeOf(spec, lower)
  return {
    clearHeight: lowerEdge(upper) - upperEdge(lower),
    run: edge.length - splay - footSetback - headSetback,
    start: edge.start + splay + footSetback,
    lowerEdge: upperEdge(lower),
    from: { ledgeLength: edge.length, splay, footSetback, headSetback },
    lower,
    upper,
  }
}

function lineIn(bay: Bay, width: number): BraceLine | undefined {
  if (!(bay.clearHeight > lengthTolerance)) return undefined
  const slope = braceSlope({ clearHeight: bay.clearHeight, run: bay.run, width })
  return slope === undefined ? undefined : { ...bay, slope }
}

/** The piece of a line between two heights: a parallelogram, anticlockwise from the foot's hanging-side corner. */
function pieceOf(line: BraceLine, { name, from, to, section }: Piece): Brace {
  const at = (y: number) => line.start + (y - line.lowerEdge) / Math.tan(line.slope)
  const worked = braceFigures(line.slope, to - from, section.width)
  const outline: Point[] = [
    [at(from), from],
    [at(from) + worked.contact, from],
    [at(to) + worked.contact, to],
    [at(to), to],
  ]
  return { name, ...worked, clearHeight: line.clearHeight, run: line.run, section, outline, notch: null }
}

/** Pairs of neighbouring ledges, bottom up. */
const neighbours = (ledges: Ledge[]): [Ledge, Ledge][] =>
  ledges.slice(1).map((upper, index) => [ledges[index] as Ledge, upper])

/** One brace between two neighbouring ledges, or why there is none. Its slope is its own bay's, or that of the whole line. */
function layOne(name: Brace['name'], section: Section, at: { bay: Bay; whole: Bay }): Worked<Brace[]> {
  const { bay, whole } = at
  const none = (checks: Check[]) => ({ value: [], figures: {}, checks })
  if (whole.clearHeight < -lengthTolerance) return none([]) // the overlapping ledges are a stop of their own
  const line = lineIn(whole, section.width)
  if (!line) return none([braceFitStop(name, { ...whole, width: section.width })])
  if (bay.clearHeight <= lengthTolerance) return none([braceLineStop(name)])
  const brace = pieceOf(line, {
    name,
    from: bay.lowerEdge,
    to: bay.lowerEdge + bay.clearHeight,
    section,
  })
  return { value: [brace], figures: figuresOfBrace(brace, whole.from, whole.lowerEdge), checks: [] }
}

/** A brace with its ends notched into the ledges it stands between. */
function notched(spec: GateSpec, laid: Worked<Brace[]>, bay: Bay): Worked<Brace[]> {
  const brace = laid.value[0]
  const depth = spec.braces?.notchDepth
  if (!brace || depth === undefined) return laid
  const { angle, name } = brace
  const { width } = brace.section
  const notch = notchFaces({ depth, angle, width })
  const [foot, , head] = brace.outline as [Point, Point, Point, Point]
  const splay = spec.ledges.end.cut === 'splayed' ? endLoss(spec.ledges.end, bay.lower.section) : 0
  const [lower, upper] = [edgeOf(spec, bay.lower), edgeOf(spec, bay.upper)]
  const endGrain = { foot: foot[0] - lower.start - splay, head: upper.start + upper.length - head[0] }
  const inLine = spec.braces?.run === 'in-line'
  const places = [bay.lower, bay.upper].map((ledge) => ({
    name: spec.frame && ledge.name === 'top' ? 'top rail' : `${ledge.name} ledge`,
    width: ledge.section.width,
    notches: (inLine && ledge.name === 'middle' ? 2 : 1) as 1 | 2,
  }))
  return {
    value: [{ ...brace, notch, outline: notchedOutline(brace.outline, notch) }],
    figures: { ...laid.figures, ...notchFigures(name, notch, { angle, width, endGrain }) },
    checks: [...laid.checks, ...places.flatMap((ledge) => notchChecks({ name, depth, angle, width, ledge }))],
  }
}

/** Braces of their own slope in each bay, or one slope from bottom to top in pieces. On a framed gate the last of ledges is the top rail. */
export function layBraces(spec: GateSpec, ledges: Ledge[]): Worked<Brace[]> {
  const braces = spec.braces
  if (!braces) return { value: [], figures: {}, checks: [] }
  const [bottom, top] = [ledges[0] as Ledge, ledges.at(-1) as Ledge]
  const pairs = neighbours(ledges)
  const laid = pairs.map(([lower, upper], index) => {
    const name = (pairs.length === 1 ? names[1] : names[2])[index] as Brace['name']
    const bay = bayBetween(spec, lower, upper)
    const whole = braces.run === 'in-line' ? bayBetween(spec, bottom, top) : bay
    return notched(spec, layOne(name, braces.section, { bay, whole }), bay)
  })
  const placed = laid.flatMap(({ value }) => value)
  return {
    value: placed,
    figures: Object.assign({}, ...laid.map(({ figures }) => figures)) as Figures,
    checks: [...laid.flatMap(({ checks }) => checks), ...braceAngleChecks(placed, braces, ledges.length)],
  }
}
