import { settingOut, settingOutStep } from '../gate/topShape.ts'
import type { GateSpec } from '../gate/spec.ts'
import type { Point } from '../geometry/point.ts'
import type { Drawing, Mark, Text } from './drawing.ts'
import type { FigureText } from './figureText.ts'
import { topPoints } from './leafLines.ts'
import type { PlacedLeaf, Placing } from './placeLeaves.ts'

/** The band of the leaf that is drawn: base is its lower line, end how far the curve is drawn past the closing edge. mm. */
type Band = { placed: PlacedLeaf; base: number; low: number; high: number; end: number }

function bandOf({ leaves, gap, kind }: Placing): Band | undefined {
  const placed = leaves.at(kind === 'pair' ? 0 : -1)
  if (!placed) return undefined
  const { plan, leaf } = placed
  const [low, high] = [plan.top.lowest(0, leaf.width), plan.top.highest(0, leaf.width)]
  const base = low - Math.max((high - low) * 0.25, leaf.width * 0.06)
  return { placed, base, low, high, end: leaf.width + gap / 2 }
}

/** An ordinate nearer than this to the closing edge's is written under the drawing, mm. */
const tooNear = 35

/**
 * A shaped top for setting out: its line with the height over the foot every 50 mm from the hanging edge and at the closing edge, the rise,
 * the radius and what the curve spans. A pair's first leaf, the second being its mirror; a stable door's upper half. Undefined for a level top.
 */
export function settingOutDrawing(
  spec: GateSpec,
  placing: Placing,
  figures: FigureText,
): Drawing | undefined {
  const { top } = spec
  const band = bandOf(placing)
  if (top.shape === 'level' || !band) return undefined
  const { base, high, end } = band
  const { top: line } = band.placed.plan
  const whose = { pair: ' of the first leaf', stable: ' of the upper half', single: '' }[placing.kind]
  const rise = `Rise ${figures.write(top.rise)} over ${figures.write(line.span)}`
  return {
    title: `Setting out the top${whose}`,
    description: `The ${top.shape} top${whose} with its height over the foot at every 50 mm from the hanging edge`,
    extent: { minX: 0, minY: base, maxX: end, maxY: high },
    margin: { left: 30, right: 18, top: 20, bottom: 31 },
    notes: [
      line.radius === null ? rise : `${rise}, radius ${figures.write(line.radius)}`,
      ...leftOver(band, figures),
      ...(placing.kind === 'pair' ? ['The second leaf is its mirror'] : []),
    ],
    marks: [...shape(band), ...ordinates(band, figures), ...rowNames(band), ...riseChain(band, figures)],
  }
}

function shape({ placed, base, end }: Band): Mark[] {
  const { width } = placed.leaf
  const line = topPoints(placed, 0, width)
  const sheet: Point[] = [[0, base], [width, base], ...line]
  return [
    { kind: 'polygon', points: sheet, fill: 'board', part: 'top' },
    {
      kind: 'polyline',
      points: [[0, base], ...[...line].reverse(), [width, base]],
      pen: 'visible',
      part: 'top',
    },
    { kind: 'line', from: [0, base], to: [width, base], pen: 'narrow' },
    ...(end > width
      ? [{ kind: 'polyline', points: topPoints(placed, width, end), pen: 'hidden' } satisfies Mark]
      : []),
  ]
}

function ordinates({ placed, base }: Band, figures: FigureText): Mark[] {
  const { width } = placed.leaf
  const places = settingOut(placed.plan.top, width)
  return places.flatMap(([x, height], i): Mark[] => {
    const last = i === places.length - 1
    const toNext = last ? settingOutStep : (places[i + 1]?.[0] ?? width) - x
    const upright = (text: string, dy: number): Text => ({
      kind: 'text',
      at: [x, base],
      dx: 1.1,
      dy,
      text,
      size: 'figure',
      anchor: 'end',
      angle: 90,
      // Where 50 mm are too narrow for a figure, every second one is left out.
      ...((i % 2 === 1 && !last) || i === places.length - 2 ? { within: toNext } : {}),
      part: `dimension top height ${i + 1}`,
    })
    const line: Mark = { kind: 'line', from: [x, base], to: [x, height], extend: [1.5, 0], pen: 'dimension' }
    return toNext < tooNear
      ? [line]
      : [line, upright(figures.write(height), -2.5), upright(figures.write(x), -18)]
  })
}

/** The height just before the closing edge, where it has no room beside that one's own. */
function leftOver({ placed }: Band, figures: FigureText): string[] {
  const [x, height] = settingOut(placed.plan.top, placed.leaf.width).at(-2) ?? [0, 0]
  const near = placed.leaf.width - x < tooNear
  return near ? [`Height at ${figures.write(x)}: ${figures.write(height)}`] : []
}

const rowNames = ({ base }: Band): Mark[] =>
  [
    ['height', -9],
    ['from the', -19.5],
    ['hanging edge', -23.3],
  ].map(([text, dy]) => ({
    kind: 'text',
    at: [0, base],
    dx: -4,
    dy: Number(dy),
    text: String(text),
    size: 'small',
    anchor: 'end',
  }))

const riseChain = ({ low, high, end }: Band, figures: FigureText): Mark[] => [
  {
    kind: 'chain',
    axis: 'y',
    base: end,
    offset: 8,
    stops: [low, high],
    labels: [{ text: figures.write(high - low), part: 'dimension top rise' }],
    part: 'dimension top rise',
  },
  {
    kind: 'badge',
    at: [0, high],
    dx: -1.4,
    dy: 6,
    text: 'H',
    part: 'hinge line',
  },
  {
    kind: 'text',
    at: [0, high],
    dx: -5.4,
    dy: 4.7,
    text: 'hanging side',
    size: 'small',
    anchor: 'end',
    part: 'hinge line',
  },
]
