import type { FigureText } from '../../drawing/figureText.ts'
import type { Design } from '../../gate/designModel.ts'
import type { Brace } from '../../gate/leaf.ts'
import type { Notch } from '../../gate/notch.ts'
import type { GateSpec } from '../../gate/spec.ts'
import type { Point } from '../../geometry/point.ts'
import { toRadians } from '../../units/angle.ts'
import { hangsRight } from './handOf.ts'
import { strokes, stroke, words, type Template, type TemplateMark } from './template.ts'

type Notched = Brace & { notch: Notch }

const isNotched = (brace: Brace): brace is Notched => brace.notch !== null

const called = ({ name }: Brace): string => (name === 'single' ? 'brace' : `${name} brace`)

const sameNotch = (one: Notched, other: Notched): boolean =>
  Math.abs(one.angle - other.angle) < 0.005 &&
  Math.abs(one.section.width - other.section.width) < 0.01 &&
  Math.abs(one.notch.depth - other.notch.depth) < 0.01

/** Notched braces of a gate, those with like ends together. */
export function notchGroups({ leaves }: Pick<Design, 'leaves'>): Notched[][] {
  const groups: Notched[][] = []
  for (const brace of leaves.flatMap(({ braces }) => braces.filter(isNotched))) {
    const same = groups.find(([first]) => first && sameNotch(first, brace))
    if (same) same.push(brace)
    else groups.push([brace])
  }
  return groups
}

/** Length of the brace's edges shown over the ledge, and what a whole template may be across to stand on an upright sheet, mm. */
const shown = { most: 110, least: 50, sheet: 172 }

/** Room left of the long corner for the ledge's edge and its words, mm. */
const before = 26

/** How far up the brace is shown: as far as leaves the template on one sheet. */
function reachOf(width: number, [cos, sin]: readonly [number, number]): number {
  const across = shown.sheet - before - 3 - width * sin
  const fits = cos > 0 ? across / cos : Infinity
  return width * cos + Math.max(shown.least, Math.min(shown.most, fits - width * cos))
}

/** The foot of a brace with its long corner at 0, 0, mm: the corners of the notch and where the brace is broken off. */
function footOf({ angle, section: { width }, notch }: Notched) {
  const turn = toRadians(angle)
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)]
  const contact = width / sin
  const along = reachOf(width, [cos, sin])
  const upper: Point = [along * cos, along * sin]
  return {
    long: [0, 0] as Point,
    tip: [notch.shift, -notch.depth] as Point,
    toe: [contact, 0] as Point,
    upper,
    lower: [upper[0] + width * sin, upper[1] - width * cos] as Point,
    middle: [contact / 2, 0] as Point,
    middleUp: [upper[0] + (width * sin) / 2, upper[1] - (width * cos) / 2] as Point,
  }
}

/** Hatching of what comes out of the ledge. */
function waste(long: Point, tip: Point, toe: Point): TemplateMark[] {
  const marks: TemplateMark[] = []
  for (let x = long[0] + 5; x < toe[0] - 1; x += 5) {
    const share = x <= tip[0] ? (x - long[0]) / (tip[0] - long[0]) : (toe[0] - x) / (toe[0] - tip[0])
    marks.push(
      stroke(
        [
          [x, 0],
          [x, tip[1] * share],
        ],
        strokes.thin,
        { ink: 'grey' },
      ),
    )
  }
  return marks
}

function notchMarks(brace: Notched, { write }: FigureText, turned: boolean): TemplateMark[] {
  const { long, tip, toe, upper, lower, middle, middleUp } = footOf(brace)
  const over = ([x, y]: Point): Point => (turned ? [-x, y] : [x, y])
  const line = (points: Point[], width: number, dash?: number[]): TemplateMark =>
    stroke(points.map(over), width, dash ? { dash } : {})
  const side = (start: 'start' | 'end') => (turned === (start === 'start') ? 'end' : 'start')
  const { shoulder, slope, depth, shift } = brace.notch
  const low = tip[1]
  const figure = (text: string, down: number) =>
    words(text, over([-before + 2, low - down]), { size: 14, weight: 'semibold', anchor: side('start') })
  return [
    ...waste(long, tip, toe).map((mark) =>
      mark.kind === 'path' ? { ...mark, points: mark.points.map(over) } : mark,
    ),
    line([upper, long, tip, toe, lower], strokes.strong),
    line([upper, lower], strokes.thin, [4, 1.5]),
    line([[-before + 1, 0], long], strokes.clear),
    line([toe, [toe[0] + 18, 0]], strokes.clear),
    line([long, toe], strokes.thin, [2, 1.5]),
    line([middle, middleUp], strokes.thin, [8, 1.5, 1.5, 1.5]),
    line([tip, [tip[0], 4]], strokes.thin),
    figure(`shoulder, square, ${write(shoulder)}; slope ${write(slope)}`, 9),
    figure(`depth ${write(depth)}, point ${write(shift)} along`, 16),
    words('ledge edge', over([-before + 2, 1.6]), { anchor: side('start') }),
    words('waste out of the ledge, end on the brace', over([-before + 2, low - 22]), {
      anchor: side('start'),
    }),
    words('centre', over([middleUp[0] - 4, middleUp[1] - 3]), { anchor: side('end') }),
  ]
}

function endGrain({ figures }: Design, group: Notched[], write: (mm: number) => string): string {
  const said = group.flatMap((brace) => {
    const [foot, head] = ['Foot', 'Head'].map((end) => figures[`brace.${brace.name}.notch.endGrain${end}`])
    return foot && head
      ? [`${called(brace)}: ${write(foot.value)} at the foot, ${write(head.value)} at the head`]
      : []
  })
  return said.length === 0
    ? ''
    : `From the long corner to the end of the ledge: ${[...new Set(said)].join('; ')}.`
}

/**
 * A template for each kind of notch: the foot of the brace in its ledge as it lies on the bench, heavy where it is cut. The head is the same turned
 * half round, so one sheet serves both ends.
 */
export function notchTemplates(spec: GateSpec, design: Design, figures: FigureText): Template[] {
  const turned = hangsRight(spec, design.leaves[0]?.name ?? 'leaf', 'back')
  return notchGroups(design).map((group) => {
    const [brace] = group as [Notched, ...Notched[]]
    const { tip, toe, upper, lower } = footOf(brace)
    const extent = {
      minX: -before,
      maxX: Math.max(toe[0] + 20, lower[0] + 3),
      minY: tip[1] - 25,
      maxY: upper[1] + 5,
    }
    const names = [...new Set(group.map(called))].join(' and ')
    return {
      title: 'Notch of the brace',
      lay: [
        `For: ${names}, foot as it lies on the bench, back up; turn the sheet half round for the head.`,
        ...(spec.leaves === 2 ? ['For the second leaf prick it through and turn it over.'] : []),
        endGrain(design, group, figures.write),
        'Cut the paper along the heavy line. Lay the ledge-edge line on the edge of the ledge, the long corner on its mark.',
      ].filter((line) => line !== ''),
      extent: turned ? { ...extent, minX: -extent.maxX, maxX: -extent.minX } : extent,
      marks: notchMarks(brace, figures, turned),
    }
  })
}
