import type { Brace } from '../gate/leaf.ts'
import { upperEdge } from '../gate/ledges.ts'
import type { Notch } from '../gate/notch.ts'
import type { GateSpec } from '../gate/spec.ts'
import { endLoss } from '../gate/ledges.ts'
import type { Point } from '../geometry/point.ts'
import { box } from './box.ts'
import { withoutNoughts } from './dimensions.ts'
import type { Aside, Dimension, Drawing, Mark } from './drawing.ts'
import type { FigureText } from './figureText.ts'
import { stileWidth } from './leafLines.ts'
import type { PlacedLeaf } from './placeLeaves.ts'
import { breakLine, grainLines } from './sectionMarks.ts'

/** The lower brace's foot in the bottom ledge. edge is the ledge's upper edge, start the end of it, mm. */
type Foot = {
  brace: Brace
  notch: Notch
  corners: { long: Point; tip: Point; toe: Point }
  edge: number
  start: number
  below: number
  right: number
  above: number
}

function footOf(spec: GateSpec, placed: PlacedLeaf): Foot | undefined {
  const [brace] = placed.leaf.braces
  const ledge = placed.leaf.ledges[0]
  if (!brace?.notch || !ledge) return undefined
  const [long, tip, toe] = brace.outline
  if (!long || !tip || !toe) return undefined
  const splay = spec.ledges.end.cut === 'splayed' ? endLoss(spec.ledges.end, ledge.section) : 0
  const edge = upperEdge(ledge)
  const contact = toe[0] - long[0]
  return {
    brace,
    notch: brace.notch,
    corners: { long, tip, toe },
    edge,
    start: stileWidth(placed) || ledge.x + splay,
    below: Math.max(edge - ledge.section.width, tip[1] - contact * 0.5),
    right: toe[0] + contact * 0.45,
    above: edge + contact * 1.25,
  }
}

/**
 * The foot of a notched brace in its ledge, enlarged: the shoulder square to the brace, the slope to its other corner, how deep, how far along,
 * and the end grain left to the ledge's end. In leaf coordinates, from the back of a right-hung gate. Undefined where nothing is notched.
 */
export function notchDetail(spec: GateSpec, placed: PlacedLeaf, figures: FigureText): Drawing | undefined {
  const foot = footOf(spec, placed)
  if (!foot) return undefined
  const { brace, notch, start, below, right, above } = foot
  const several = placed.leaf.braces.length > 1
  return {
    title: 'Notch of the brace, from the back',
    description: `The foot of the ${brace.name === 'single' ? 'brace' : `${brace.name} brace`} notched ${figures.write(notch.depth)} into the bottom ledge: shoulder ${figures.write(notch.shoulder)}, slope ${figures.write(notch.slope)}`,
    extent: { minX: start, minY: below, maxX: right, maxY: above },
    margin: { left: 22, right: 24, top: 12, bottom: 17 },
    notes: [
      `Shoulder ${figures.write(notch.shoulder)}, square to the brace; slope ${figures.write(notch.slope)}`,
      several ? 'Every foot and head alike, heads turned over' : 'The head alike, turned over',
    ],
    marks: [...ledgeMarks(foot), ...braceMarks(foot), ...measures(foot, figures)],
  }
}

function ledgeMarks({ edge, start, below, right, corners }: Foot): Mark[] {
  const part = 'bottom ledge'
  const { long, tip, toe } = corners
  return [
    { kind: 'polygon', points: box([start, below], [right, edge]), fill: 'ledge', part },
    ...grainLines(
      [
        [start, below],
        [right, tip[1]],
      ],
      'y',
      part,
    ),
    { kind: 'polyline', points: [[start, below], [start, edge], long], pen: 'visible', part },
    { kind: 'polyline', points: [toe, [right, edge]], pen: 'visible', part },
    breakLine(right, [below, edge]),
  ]
}

/** The brace's foot up to where it is broken off, square to its length. */
function braceMarks({ brace, above, corners }: Foot): Mark[] {
  const part = `${brace.name} brace`
  const { long, tip, toe } = corners
  const turn = (brace.angle * Math.PI) / 180
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)]
  const width = brace.section.width
  const reach = (above - long[1] - width * cos) / sin
  const upper: Point = [long[0] + cos * reach, long[1] + sin * reach]
  const lower: Point = [upper[0] + width * sin, upper[1] - width * cos]
  const grain = [0.25, 0.5, 0.75].map((share): Mark => {
    const at = (along: number): Point => [
      long[0] + sin * width * share + cos * along,
      long[1] - cos * width * share + sin * along,
    ]
    const start = width * share * (cos / sin) + 6
    return { kind: 'line', from: at(start + 14 * share), to: at(reach - 4), pen: 'grain', part }
  })
  return [
    { kind: 'polygon', points: [long, tip, toe, lower, upper], fill: 'brace', part },
    ...grain,
    { kind: 'polyline', points: [upper, long, tip, toe, lower], pen: 'visible', part },
    { kind: 'line', from: upper, to: lower, extend: [2, 2], pen: 'narrow', part },
  ]
}

/** A face of the notch is written below it, or left to the notes where it is too short. */
const nowhere: Aside = { at: [0, 0], dx: 0, dy: 0, anchor: 'start', height: 0, least: Infinity, text: '' }

function face([from, to]: [Point, Point], text: string, part: string): Dimension {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  return {
    kind: 'dimension',
    from,
    to,
    offset: -5,
    texts: [text],
    over: 'ledge',
    within: length,
    room: Infinity,
    aside: nowhere,
    part,
  }
}

/** The brace's angle from the ledge's edge. */
const footAngle = (brace: Brace, toe: Point): Mark => ({
  kind: 'angle',
  apex: toe,
  start: 0,
  end: brace.angle,
  radius: 9,
  room: { x: 1e6, y: 1e6 },
  text: `${brace.angle.toFixed(1)}°`,
  over: 'paper',
  aside: nowhere,
  part: `dimension ${brace.name} brace angle`,
})

function measures({ brace, notch, corners, edge, start, below, right }: Foot, figures: FigureText): Mark[] {
  const { long, tip, toe } = corners
  const said = (mm: number, part: string) => ({ text: figures.write(mm), part: `dimension ${part}` })
  return [
    face([long, tip], figures.write(notch.shoulder), 'dimension notch shoulder'),
    face([tip, toe], figures.write(notch.slope), 'dimension notch slope'),
    {
      kind: 'chain',
      axis: 'x',
      base: below,
      offset: -9,
      part: 'dimension notch',
      ...withoutNoughts(
        [start, long[0], tip[0], toe[0]],
        [
          said(long[0] - start, 'notch end grain'),
          said(tip[0] - long[0], 'notch shift'),
          said(toe[0] - tip[0], 'notch rest'),
        ],
      ),
    },
    {
      kind: 'chain',
      axis: 'y',
      base: right,
      offset: 9,
      stops: [tip[1], edge],
      labels: [said(notch.depth, 'notch depth')],
      reach: { before: 14, after: 0 },
      part: 'dimension notch depth',
    },
    footAngle(brace, toe),
  ]
}
