import { segmentRadius } from '../geometry/circle.ts'
import type { Check } from './checks.ts'
import { geometry, type Figures } from './figures.ts'
import type { GateSpec } from './spec.ts'
import { writeShortMm } from '../units/writeLength.ts'
import { figure, type Worked } from './worked.ts'

/**
 * The top of one leaf in its own frame: its height over the foot's line at any x, and the highest and lowest it gets between two.
 * span is the width that the curve or rake runs over (both leaves and the meeting gap for a curve on a pair). radius is null for
 * a straight top. All mm.
 */
export type TopLine = {
  shape: GateSpec['top']['shape']
  heightAt: (x: number) => number
  highest: (from: number, to: number) => number
  lowest: (from: number, to: number) => number
  radius: number | null
  span: number
}

/** Distance over which heights for setting out a curve are given, mm. */
export const settingOutStep = 50

/** Highest and lowest of a line that turns at one place at most. */
function between(
  heightAt: (x: number) => number,
  turn: number | null,
  pick: (...values: number[]) => number,
) {
  return (from: number, to: number): number => {
    const inside = turn !== null && turn > from && turn < to
    return inside ? pick(heightAt(from), heightAt(to), heightAt(turn)) : pick(heightAt(from), heightAt(to))
  }
}

const lineOf = (
  shape: TopLine['shape'],
  heightAt: (x: number) => number,
  { turn, radius, span }: { turn: number | null; radius: number | null; span: number },
): TopLine => ({
  shape,
  heightAt,
  highest: between(heightAt, turn, Math.max),
  lowest: between(heightAt, turn, Math.min),
  radius,
  span,
})

/**
 * The top of a leaf of a width and height (height to the highest point of the whole top). span is the leaf's width, or on a
 * pair both leaves and the meeting gap. A curve's middle lies at half the span from the hanging edge.
 */
export function topLine(
  top: GateSpec['top'],
  leaf: { width: number; height: number },
  span: number,
): TopLine {
  const { width, height } = leaf
  if (top.shape === 'level') return lineOf('level', () => height, { turn: null, radius: null, span: width })
  if (top.shape === 'raked') {
    const rake = top.rise / width
    const heightAt =
      top.high === 'hanging' ? (x: number) => height - rake * x : (x: number) => height - rake * (width - x)
    return lineOf('raked', heightAt, { turn: null, radius: null, span: width })
  }
  const radius = segmentRadius(span, top.rise)
  const middle = span / 2
  const sag = (x: number) => radius - Math.sqrt(Math.max(0, radius * radius - (x - middle) ** 2))
  const heightAt =
    top.shape === 'bowed' ? (x: number) => height - sag(x) : (x: number) => height - top.rise + sag(x)
  return lineOf(top.shape, heightAt, { turn: middle, radius, span })
}

/** Heights for setting out a shaped top, every 50 mm from the hanging edge and at the closing edge: [x, height], mm. */
export function settingOut(line: TopLine, width: number): [number, number][] {
  const places: number[] = []
  for (let i = 0; i * settingOutStep < width; i += 1) places.push(i * settingOutStep)
  return [...places, width].map((x) => [x, line.heightAt(x)])
}

/** A rise over half the span can't be made a segment or a rake that boards can follow. */
export function topStops(top: GateSpec['top'], span: number): Check[] {
  if (top.shape === 'level' || top.rise <= span / 2) return []
  return [
    {
      id: 'top-rise',
      level: 'stop',
      message: `The top rises ${writeShortMm(top.rise)} mm over a span of ${writeShortMm(span)} mm; half the span is the most.`,
      figures: [],
      remedy: `Lessen the rise to ${writeShortMm(span / 2)} mm or less.`,
      field: 'top.rise',
    },
  ]
}

const heightFormulas = {
  raked: 'leaf height − rise × distance from the high side / leaf width',
  bowed: 'leaf height − radius + √(radius² − (x − span / 2)²)',
  dipped: 'leaf height − rise + radius − √(radius² − (x − span / 2)²)',
}

/** The top's own worked figures: radius of a curve, the lowest point, and each height for setting out. */
export function topFigures(
  top: GateSpec['top'],
  line: TopLine,
  leaf: { width: number; height: number },
): Worked<[number, number][]> {
  if (top.shape === 'level' || line.shape === 'level') return { value: [], figures: {}, checks: [] }
  const { rise } = top
  const heights = settingOut(line, leaf.width)
  const figures: Figures = {
    'top.lowest': figure(line.lowest(0, leaf.width), 'mm', {
      formula: 'least height of the top over the leaf',
      inputs: { 'leaf height': leaf.height, rise, span: line.span },
      source: geometry,
    }),
  }
  if (line.radius !== null)
    figures['top.radius'] = figure(line.radius, 'mm', {
      formula: '(span² / 4 + rise²) / (2 × rise)',
      inputs: { span: line.span, rise },
      source: geometry,
    })
  for (const [x, height] of heights)
    figures[`top.height.${writeShortMm(x)}`] = figure(height, 'mm', {
      formula: heightFormulas[top.shape],
      inputs: {
        'leaf height': leaf.height,
        rise,
        x,
        span: line.span,
        ...(line.radius === null ? {} : { radius: line.radius }),
      },
      source: geometry,
    })
  return { value: heights, figures, checks: [] }
}
