import { lengthTolerance, type Point } from '../geometry/point.ts'
import type { Radians } from '../units/angle.ts'
import { braceFigures, braceSlope } from './braceAngle.ts'
import { braceAngleChecks, braceFitStop, braceLineStop } from './braceChecks.ts'
import type { Check } from './checks.ts'
import { geometry, type Figures } from './figures.ts'
import type { Brace, Ledge } from './leaf.ts'
import { endLoss, lowerEdge, upperEdge } from './ledges.ts'
import type { GateSpec } from './spec.ts'
import { figure, type Worked } from './worked.ts'

type Braces = NonNullable<GateSpec['braces']>

/** A slope that a brace, or a line of braces, follows: from its foot's hanging-side corner, mm. */
type BraceLine = { slope: Radians; foot: Point; clearHeight: number; run: number }

const names = { 1: ['single'], 2: ['lower', 'upper'] } as const

/** The run of a brace between two ledges and where it starts: setbacks are measured on the edges that the brace touches. */
function runBetween(
  spec: GateSpec,
  braces: Braces,
  lower: Ledge,
): { run: number; start: number; splay: number } {
  const splay = spec.ledges.end.cut === 'splayed' ? endLoss(spec.ledges.end, lower.section) : 0
  return {
    run: lower.length - splay - braces.footSetback - braces.headSetback,
    start: lower.x + splay + braces.footSetback,
    splay,
  }
}

function lineBetween(spec: GateSpec, braces: Braces, lower: Ledge, upper: Ledge): BraceLine | undefined {
  const clearHeight = lowerEdge(upper) - upperEdge(lower)
  if (!(clearHeight > lengthTolerance)) return undefined
  const { run, start } = runBetween(spec, braces, lower)
  const slope = braceSlope({ clearHeight, run, width: braces.section.width })
  return slope === undefined ? undefined : { slope, foot: [start, upperEdge(lower)], clearHeight, run }
}

/** The piece of a line between two heights: a parallelogram, anticlockwise from the foot's hanging-side corner. */
function pieceOf(
  line: BraceLine,
  name: Brace['name'],
  between: [number, number],
  section: Brace['section'],
): Brace {
  const [from, to] = between
  const at = (y: number) => line.foot[0] + (y - line.foot[1]) / Math.tan(line.slope)
  const worked = braceFigures(line.slope, to - from, section.width)
  return {
    name,
    ...worked,
    clearHeight: line.clearHeight,
    run: line.run,
    section,
    outline: [
      [at(from), from],
      [at(from) + worked.contact, from],
      [at(to) + worked.contact, to],
      [at(to), to],
    ],
  }
}

function pieceFigures(spec: GateSpec, brace: Brace, lower: Ledge): Figures {
  const id = `brace.${brace.name}`
  const bay = (brace.outline[2]?.[1] ?? 0) - (brace.outline[0]?.[1] ?? 0)
  const { footSetback, headSetback } = spec.braces as Braces
  const { splay } = runBetween(spec, spec.braces as Braces, lower)
  const width = brace.section.width
  const of = (value: number, unit: string, formula: string, inputs: Record<string, number>) =>
    figure(value, unit, { formula, inputs, source: geometry })
  return {
    [`${id}.clearHeight`]: of(
      brace.clearHeight,
      'mm',
      "upper ledge's lower edge − lower ledge's upper edge",
      {
        "upper ledge's lower edge": upperEdge(lower) + brace.clearHeight,
        "lower ledge's upper edge": upperEdge(lower),
      },
    ),
    [`${id}.run`]: of(brace.run, 'mm', 'ledge length − splay − foot setback − head setback', {
      'ledge length': lower.length,
      splay,
      'foot setback': footSetback,
      'head setback': headSetback,
    }),
    [`${id}.angle`]: of(
      brace.angle,
      '°',
      'atan2(clear height, run) + asin(width / √(clear height² + run²))',
      {
        'clear height': brace.clearHeight,
        run: brace.run,
        width,
      },
    ),
    [`${id}.sawSetting`]: of(brace.sawSetting, '°', '90° − angle', { angle: brace.angle }),
    [`${id}.edgeLength`]: of(brace.edgeLength, 'mm', 'height spanned / sin(angle)', {
      'height spanned': bay,
      angle: brace.angle,
    }),
    [`${id}.length`]: of(brace.length, 'mm', 'height spanned / sin(angle) + width / tan(angle)', {
      'height spanned': bay,
      width,
      angle: brace.angle,
    }),
    [`${id}.contact`]: of(brace.contact, 'mm', 'width / sin(angle)', { width, angle: brace.angle }),
  }
}

/** Pairs of neighbouring ledges, bottom up. */
const baysOf = (ledges: Ledge[]): [Ledge, Ledge][] =>
  ledges.slice(1).map((upper, index) => [ledges[index] as Ledge, upper])

/** Braces of their own slope in each bay, or one slope from bottom to top ledge in pieces. */
export function layBraces(spec: GateSpec, ledges: Ledge[]): Worked<Brace[]> {
  const braces = spec.braces
  if (!braces) return { value: [], figures: {}, checks: [] }
  const bays = baysOf(ledges)
  const [bottom, top] = [ledges[0] as Ledge, ledges.at(-1) as Ledge]
  const placed: Brace[] = []
  const checks: Check[] = []
  const figures: Figures = {}
  bays.forEach(([lower, upper], index) => {
    const name = (bays.length === 1 ? names[1] : names[2])[index] as Brace['name']
    const [from, to] = braces.run === 'in-line' ? [bottom, top] : [lower, upper]
    const line = lineBetween(spec, braces, from, to)
    const bay: [number, number] = [upperEdge(lower), lowerEdge(upper)]
    const clearHeight = lowerEdge(to) - upperEdge(from)
    if (clearHeight < -lengthTolerance) return // the overlapping ledges are a stop of their own
    if (!line)
      checks.push(
        braceFitStop(name, {
          clearHeight,
          run: runBetween(spec, braces, from).run,
          width: braces.section.width,
        }),
      )
    else if (bay[1] - bay[0] <= lengthTolerance) checks.push(braceLineStop(name))
    else {
      const piece = pieceOf(line, name, bay, braces.section)
      placed.push(piece)
      Object.assign(figures, pieceFigures(spec, piece, from))
    }
  })
  return { value: placed, figures, checks: [...checks, ...braceAngleChecks(placed, braces, ledges.length)] }
}
