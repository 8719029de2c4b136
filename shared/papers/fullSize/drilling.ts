import type { FigureText } from '../../drawing/figureText.ts'
import type { Design } from '../../gate/designModel.ts'
import type { HangingLeaf } from '../../gate/leaf.ts'
import type { GateSpec } from '../../gate/spec.ts'
import type { Point } from '../../geometry/point.ts'
import type { Drilling, Fitting } from '../../ironmongery/fitting.ts'
import { hangsRight } from './handOf.ts'
import { spread } from './spread.ts'
import { ring, strokes, stroke, words, type Template, type TemplateMark } from './template.ts'

/** A place in from the edge that the template is laid to, and up from the piece's own height, mm. */
type FromEdge = (at: Point) => Point

/** A piece to be drilled for, on its leaf. sign: 1 where the leaf lies to the right of the edge on the template. */
type Drilled = { fitting: Fitting; fromEdge: FromEdge; sign: 1 | -1 }

const letters = 'abcdefgh'

const sizeOf = ({ size: { exact, drill } }: Drilling): number => drill ?? exact

function drilled(spec: GateSpec, leaf: HangingLeaf, fitting: Fitting): Drilled {
  const hanging = fitting.side === 'hanging'
  const right = hangsRight(spec, leaf.name, fitting.surface) === hanging
  return {
    fitting,
    fromEdge: ([x, y]) => [hanging ? x : leaf.width - x, y - fitting.height],
    sign: right ? -1 : 1,
  }
}

/** Two pieces that the same template serves: of one kind and drilled alike; on the other leaf of a pair it is turned over. */
const likeness = ({ fitting, fromEdge }: Drilled): string =>
  [
    fitting.id,
    fitting.name,
    fitting.side,
    fitting.surface,
    ...fitting.drillings.map((drilling) =>
      [
        drilling.what,
        sizeOf(drilling),
        drilling.depth,
        ...drilling.places.flatMap(fromEdge).map((mm) => mm.toFixed(2)),
      ].join(' '),
    ),
  ].join('|')

/** Every piece with holes in the leaf, those drilled alike together. */
export function drilledGroups(
  spec: GateSpec,
  { leaves, fittings }: Pick<Design, 'leaves' | 'fittings'>,
): Drilled[][] {
  const groups = new Map<string, Drilled[]>()
  for (const fitting of fittings) {
    const leaf = leaves.find(({ name }) => name === fitting.leaf)
    if (!leaf || !fitting.drillings.some(({ places }) => places.length > 0)) continue
    const one = drilled(spec, leaf, fitting)
    groups.set(likeness(one), [...(groups.get(likeness(one)) ?? []), one])
  }
  return [...groups.values()]
}

/** A hole at its place, with its letter and how far it stands over or under the height line. */
function holeMarks(
  { at, diameter, letter, sign }: { at: Point; diameter: number; letter: string; sign: 1 | -1 },
  write: (mm: number) => string,
): TemplateMark[] {
  const [x, y] = at
  const arm = diameter / 2 + 3
  const up = Math.abs(y) < 0.05 ? '' : ` ${y > 0 ? '+' : '−'}${write(Math.abs(y))}`
  return [
    ring(at, diameter / 2, strokes.clear),
    stroke(
      [
        [x - arm, y],
        [x + arm, y],
      ],
      strokes.thin,
    ),
    stroke(
      [
        [x, y - arm],
        [x, y + arm],
      ],
      strokes.thin,
    ),
    words(`${letter}${up}`, [x + sign * (diameter / 2 + 1.2), y + 1.2], {
      weight: 'semibold',
      anchor: sign === 1 ? 'start' : 'end',
    }),
  ]
}

/** How far each hole stands from the edge, in a row under the template, with a line up to the lowest hole there. */
function row(places: Point[], base: number, write: (mm: number) => string): TemplateMark[] {
  const byX = new Map<string, Point>()
  for (const place of [...places].sort((a, b) => a[0] - b[0] || a[1] - b[1])) {
    const key = place[0].toFixed(1)
    if (!byX.has(key)) byX.set(key, place)
  }
  const all = [...byX.values()]
  const at = spread(
    all.map(([x]) => ({ at: x, room: 6.4 })),
    -Infinity,
    Infinity,
  )
  return all.flatMap(([x, y], i): TemplateMark[] => [
    stroke(
      [
        [x, y],
        [x, base + 6],
        [at[i] ?? x, base + 1],
      ],
      strokes.thin,
      { ink: 'grey', dash: [1.5, 1.5] },
    ),
    words(write(Math.abs(x)), [(at[i] ?? x) + 1.8, base - 17], { size: 14, weight: 'semibold', angle: 90 }),
  ])
}

const depthWords = (depth: number | null, write: (mm: number) => string): string =>
  depth === null ? 'right through' : `${write(depth)} deep`

function legend({ fitting }: Drilled, write: (mm: number) => string): string {
  return fitting.drillings
    .map((drilling, i) => {
      const count = drilling.places.length
      return `${letters[i] ?? ''}: ${count} ${drilling.what}${count === 1 ? '' : 's'} ${Number(sizeOf(drilling).toFixed(1))} mm, ${depthWords(drilling.depth, write)}`
    })
    .join('. ')
}

/** A group of like pieces as it is drawn: outlines of the piece and its holes, the edge at x = 0 and the height line at y = 0. */
type Drawn = {
  outlines: Point[][]
  holes: { at: Point; diameter: number; letter: string }[]
  reach: number
  low: number
  high: number
}

function drawnFrom({ fitting, fromEdge, sign }: Drilled): Drawn {
  const drawn = (at: Point): Point => {
    const [x, y] = fromEdge(at)
    return [sign * x, y]
  }
  const outlines = fitting.shapes
    .filter(({ part }) => part !== 'post plate' && part !== 'pin')
    .map(({ outline }) => outline.map(drawn))
  const holes = fitting.drillings.flatMap((drilling, i) =>
    drilling.places.map((place) => ({
      at: drawn(place),
      diameter: sizeOf(drilling),
      letter: letters[i] ?? '',
    })),
  )
  const all = [...outlines.flat(), ...holes.map(({ at }) => at)]
  return {
    outlines,
    holes,
    reach: Math.max(...all.map(([x]) => sign * x)) + 22,
    low: Math.min(...all.map(([, y]) => y)) - 10,
    high: Math.max(16, Math.max(...all.map(([, y]) => y)) + 10),
  }
}

const edgeName = ({ side, leaf }: Fitting): string =>
  side === 'hanging'
    ? 'hanging edge'
    : leaf === 'first leaf' || leaf === 'second leaf'
      ? 'meeting edge'
      : 'closing edge'

/** Heights of like pieces, leaf by leaf; said once where both leaves have the same. */
function heightsSaid(group: readonly Drilled[], write: (mm: number) => string): string {
  const byLeaf = new Map<string, string[]>()
  for (const { fitting } of group)
    byLeaf.set(fitting.leaf, [...(byLeaf.get(fitting.leaf) ?? []), write(fitting.height)])
  const said = [...byLeaf].map(([leaf, heights]) => ({ leaf, heights: heights.join(', ') }))
  const [first, second] = said
  if (first && second && first.heights === second.heights)
    return `${first.heights} up from the foot of ${first.leaf === 'first leaf' ? 'both leaves' : 'both halves'}`
  return said
    .map(({ leaf, heights }) => `${heights} up from the foot${leaf === 'leaf' ? '' : ` of the ${leaf}`}`)
    .join('; ')
}

/** What the template serves, how it is laid, and its holes. */
function sayings(group: [Drilled, ...Drilled[]], write: (mm: number) => string): string[] {
  const [one] = group
  const { kind, surface } = one.fitting
  return [
    `For the ${kind}${group.length > 1 ? 's' : ''} at ${heightsSaid(group, write)}, seen from the ${surface}.`,
    ...(group.some(({ sign }) => sign !== one.sign)
      ? ['On the other leaf turn the sheet over, the centres pricked through.']
      : []),
    `Lay the heavy line to the ${edgeName(one.fitting)} and the height line on its mark. ${legend(one, write)}. Try the piece itself on it before you drill.`,
  ]
}

/** The edge that the template is laid to and the line that comes to the piece's height. */
const guides = ({ fitting, sign }: Drilled, { low, high, reach }: Drawn): TemplateMark[] => [
  stroke(
    [
      [0, low],
      [0, high - 1],
    ],
    strokes.strong,
  ),
  stroke(
    [
      [sign * -12, 0],
      [sign * (reach - 2), 0],
    ],
    strokes.thin,
    { dash: [8, 1.5, 1.5, 1.5] },
  ),
  words(edgeName(fitting), [sign === 1 ? -2.5 : 6.5, low + 1], { angle: 90 }),
  words('height line', [sign * (reach - 3), 1.5], { anchor: sign === 1 ? 'end' : 'start' }),
]

function template(group: [Drilled, ...Drilled[]], { write }: FigureText): Template {
  const [one] = group
  const { fitting, sign } = one
  const drawn = drawnFrom(one)
  const { outlines, holes, reach, low, high } = drawn
  const own = { minX: -14, maxX: reach, minY: low - 20, maxY: high }
  const places = holes.map(({ at }) => at)
  return {
    title: `Drilling: ${fitting.name}`,
    lay: sayings(group, write),
    extent: sign === 1 ? own : { ...own, minX: -own.maxX, maxX: -own.minX },
    keepOff: { x: places.map(([x]) => x), y: places.map(([, y]) => y) },
    marks: [
      ...guides(one, drawn),
      ...outlines.map((points) =>
        stroke(points, strokes.thin, { closed: true, dash: [3, 1.5], ink: 'grey' }),
      ),
      ...holes.flatMap((hole) => holeMarks({ ...hole, sign }, write)),
      ...row(places, low, write),
    ],
  }
}

/** A template for each kind of piece: the holes it wants, laid to the leaf's edge and to the piece's height, from the side it lies on. */
export function drillingTemplates(spec: GateSpec, design: Design, figures: FigureText): Template[] {
  return drilledGroups(spec, design).flatMap(([first, ...rest]) =>
    first ? [template([first, ...rest], figures)] : [],
  )
}
