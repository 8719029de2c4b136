import type { Design } from '../../gate/designModel.ts'
import type { Brace, HangingLeaf } from '../../gate/leaf.ts'
import type { GateSpec } from '../../gate/spec.ts'
import type { Point } from '../../geometry/point.ts'
import { toDegrees, toRadians } from '../../units/angle.ts'
import { hangsRight } from './handOf.ts'
import { strokes, stroke, words, type Template, type TemplateMark } from './template.ts'

/** One angle that a bevel is set to: degrees between the edge the stock lies on and the cut, and what it serves. */
export type Bevel = { angle: number; serves: string[] }

const called = (brace: Brace): string => (brace.name === 'single' ? 'brace' : `${brace.name} brace`)

const angleBetween = (one: Point, other: Point): number =>
  toDegrees(
    Math.atan2(Math.abs(one[0] * other[1] - one[1] * other[0]), one[0] * other[0] + one[1] * other[1]),
  )

const from = (start: Point, to: Point): Point => [to[0] - start[0], to[1] - start[1]]

/** The sharp angle of two lines. */
const sharp = (angle: number): number => (angle > 90 ? 180 - angle : angle)

/** Angles of one brace's ends, worked from its outline: the same at foot and head, which are each other turned half round. */
function braceBevels(brace: Brace): Bevel[] {
  const name = called(brace)
  if (brace.notch === null) return [{ angle: brace.angle, serves: [`${name}, foot and head`] }]
  const [, tip, toe, head] = brace.outline as [Point, Point, Point, Point]
  return [
    { angle: brace.angle, serves: [`${name}, how it lies on the ledge`] },
    {
      angle: sharp(angleBetween(from(toe, tip), from(toe, head))),
      serves: [`${name}, slope of the notch at foot and head (its shoulder is square)`],
    },
  ]
}

function ledgeBevels({ ledges: { end } }: GateSpec): Bevel[] {
  if (end.cut === 'square') return []
  const how =
    end.cut === 'bevelled'
      ? 'ledge ends, through the thickness, from the long face'
      : 'ledge ends, splayed, from the long lower edge'
  return [{ angle: 90 - end.angle, serves: [how] }]
}

/** Heads of boards, or of stiles, under a raked top, from their own edge. */
function headBevels({ top, frame }: GateSpec, { name, width }: HangingLeaf): Bevel[] {
  if (top.shape !== 'raked' || name === 'lower half') return []
  const serves = frame ? 'stile heads and rail, raked' : 'board heads, raked'
  return [{ angle: 90 - toDegrees(Math.atan2(top.rise, width)), serves: [serves] }]
}

/** Two angles nearer than this are one setting of the bevel, degrees. */
const alike = 0.005

/** Every angle that a gate's bevel is set to, each once with all that it serves. */
export function bevelsOf(spec: GateSpec, { leaves }: Pick<Design, 'leaves'>): Bevel[] {
  const all = [
    ...leaves.flatMap((leaf) => leaf.braces.flatMap(braceBevels)),
    ...ledgeBevels(spec),
    ...leaves.flatMap((leaf) => headBevels(spec, leaf)),
  ]
  const out: Bevel[] = []
  for (const { angle, serves } of all) {
    const same = out.find((one) => Math.abs(one.angle - angle) < alike)
    if (!same) out.push({ angle, serves: [...serves] })
    else same.serves.push(...serves.filter((one) => !same.serves.includes(one)))
  }
  return out
}

/** Length of each leg, mm: what stands on a sheet across or upright with room for its words. */
const leg = 150

/** An angle as it is said on the card. */
const said = (angle: number): string => `${angle.toFixed(1)}°`

function arcPoints(angle: number, radius: number): Point[] {
  const steps = 24
  return Array.from({ length: steps + 1 }, (_, i): Point => {
    const turn = toRadians((angle * i) / steps)
    return [radius * Math.cos(turn), radius * Math.sin(turn)]
  })
}

/** Where the figures stand: between the legs where they are open enough, else over the slanting one. */
function figuresAt(angle: number): Point {
  const middle = toRadians(angle / 2)
  return angle < 30
    ? [40, leg * Math.sin(toRadians(angle)) + 12]
    : [62 * Math.cos(middle), 62 * Math.sin(middle) - 4]
}

function bevelMarks(angle: number, turned: boolean): TemplateMark[] {
  const over = ([x, y]: Point): Point => (turned ? [-x, y] : [x, y])
  const slant: Point = [leg * Math.cos(toRadians(angle)), leg * Math.sin(toRadians(angle))]
  const [x, y] = figuresAt(angle)
  const square: Point[] = [
    [0, 0],
    [0, Math.min(60, slant[1])],
  ]
  const anchor = turned ? 'end' : 'start'
  return [
    stroke([over([leg, 0]), [0, 0], over(slant)], strokes.strong),
    stroke(arcPoints(angle, 30).map(over), strokes.thin),
    ...(angle < 89 ? [stroke(square.map(over), strokes.thin, { dash: [2, 1.5] })] : []),
    words(said(angle), over([x, y]), { size: 24, weight: 'semibold', anchor }),
    words(`${said(90 - angle)} off square`, over([x, y - 7]), { size: 14, weight: 'semibold', anchor }),
    words('lay the stock along this line', over([leg / 2, -6]), { anchor: 'middle' }),
  ]
}

/** A template for each angle: two strong legs of 150 mm to lay the bevel on, the way round that the foot of a brace stands on the bench. */
export function bevelTemplates(spec: GateSpec, design: Pick<Design, 'leaves'>): Template[] {
  const turned = hangsRight(spec, design.leaves[0]?.name ?? 'leaf', 'back')
  return bevelsOf(spec, design).map(({ angle, serves }) => {
    const [high, reach] = [leg * Math.sin(toRadians(angle)), 4]
    const own = {
      minX: -reach,
      maxX: leg + reach,
      minY: -9,
      maxY: Math.max(high, figuresAt(angle)[1] + 9) + 3,
    }
    return {
      title: `Bevel ${said(angle)}`,
      lay: [
        `For: ${serves.join('; ')}.`,
        `${spec.leaves === 2 ? 'Turn the bevel over for the other end and the other leaf.' : 'Turn the bevel over for the other end.'} Try it on waste before cutting.`,
      ],
      extent: turned ? { ...own, minX: -own.maxX, maxX: reach } : own,
      marks: bevelMarks(angle, turned),
    }
  })
}
