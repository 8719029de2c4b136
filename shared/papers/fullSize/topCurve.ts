import type { FigureText } from '../../drawing/figureText.ts'
import { placeLeaves, type PlacedLeaf } from '../../drawing/placeLeaves.ts'
import type { Design } from '../../gate/designModel.ts'
import type { GateSpec } from '../../gate/spec.ts'
import { lapHead } from '../../gate/meeting.ts'
import { settingOut, settingOutStep } from '../../gate/topShape.ts'
import type { Point } from '../../geometry/point.ts'
import { acrossFrom, hangsRight } from './handOf.ts'
import { strokes, stroke, words, type Template, type TemplateMark } from './template.ts'

/** Leaves whose top isn't level, those that only turn another one over left out. */
export function shapedLeaves(spec: GateSpec, design: Pick<Design, 'leaves' | 'fittings'>): PlacedLeaf[] {
  const shaped = placeLeaves(spec, design).leaves.filter(({ plan }) => plan.top.shape !== 'level')
  const sameTop = (one: PlacedLeaf, other: PlacedLeaf): boolean =>
    one.leaf.width === other.leaf.width &&
    settingOut(one.plan.top, one.leaf.width).every(
      ([x, y]) => Math.abs(y - other.plan.top.heightAt(x)) < 0.01,
    )
  return shaped.filter((placed, i) => !shaped.slice(0, i).some((before) => sameTop(before, placed)))
}

/** A leaf's top being drawn: across turns its own x into the template's. */
type Top = { placed: PlacedLeaf; across: (x: number) => number; low: number; high: number }

/** How far a leaf's boards or stile run past its meeting edge, to lap over the other leaf, mm. */
const lapOf = ({ reach }: PlacedLeaf): number => Math.max(0, reach.face, reach.back)

/** The curve in steps of 2 mm, out to the end of a lap: on a radius of 500 it strays 0.001 mm. */
function curve({ placed, across }: Top): Point[] {
  const { leaf, plan } = placed
  const steps = plan.top.radius === null ? 1 : Math.ceil(leaf.width / 2)
  const own = Array.from({ length: steps + 1 }, (_, i): Point => {
    const x = (leaf.width * i) / steps
    return [across(x), plan.top.heightAt(x)]
  })
  const end = leaf.width + lapOf(placed)
  return end > leaf.width ? [...own, [across(end), lapHead(plan, end)]] : own
}

/** Room that an ordinate's figures take up: half their breadth, over and under the line that they stand on, mm. */
const figureRoom = { side: 10, over: 4.6, under: 6.6 }

/** Where an ordinate's figures stand under the curve: their middle in the leaf's own x, and the line that the height stands on. */
function figuresAt({ placed: { leaf, plan } }: Top, x: number, before: number | null): Point {
  const side = Math.min(figureRoom.side, leaf.width / 2)
  const around = (at: number) => plan.top.heightAt(Math.min(leaf.width, Math.max(0, at)))
  const middle = Math.min(leaf.width - side - 1, Math.max(side + 1, x))
  const crowded = before !== null && x - before < 24 ? 12 : 0
  return [middle, Math.min(around(middle - side), around(middle + side)) - 6.5 - crowded]
}

type Ordinate = { x: number; y: number; figures: Point }

function ordinatesOf(top: Top): Ordinate[] {
  const { leaf, plan } = top.placed
  const places = settingOut(plan.top, leaf.width)
  return places.map(([x, y], i) => ({ x, y, figures: figuresAt(top, x, places[i - 1]?.[0] ?? null) }))
}

/** Level lines are as far apart as the job's own unit measures easily, mm: 50, or two inches. */
const levelStep = { mm: 50, in: 50.8 }

/** Where a level line stands clear of an ordinate's figures: from one ordinate to the next, both ends drawn in where figures stand. */
function clearRun(y: number, ordinates: readonly [Ordinate, Ordinate]): [number, number] {
  const [from, to] = ordinates.map(({ x, figures: [middle, line] }, i) => {
    const there = y > line - figureRoom.under && y < line + figureRoom.over
    if (!there) return x
    return i === 0 ? Math.max(x, middle + figureRoom.side) : Math.min(x, middle - figureRoom.side)
  }) as [number, number]
  return [from, to]
}

/** Level lines where they lie under the curve, each with its height. */
function levels(top: Top, ordinates: readonly Ordinate[], { unit, write }: FigureText): TemplateMark[] {
  const { placed, across, low, high } = top
  const { leaf, plan } = placed
  const step = levelStep[unit]
  const marks: TemplateMark[] = []
  const under = (x: number, y: number): boolean => x >= 0 && x <= leaf.width && plan.top.heightAt(x) > y
  for (let y = Math.ceil(low / step) * step; y < high; y += step)
    ordinates.slice(1).forEach((next, i) => {
      const before = ordinates[i] ?? next
      if (!under(before.x, y) || !under(next.x, y)) return
      const [from, to] = clearRun(y, [before, next])
      if (to > from)
        marks.push(
          stroke(
            [from, to].map((at): Point => [across(at), y]),
            strokes.thin,
            { ink: 'grey', dash: [3, 2] },
          ),
        )
      const middle = (before.x + next.x) / 2
      const clear =
        next.x - before.x === settingOutStep && [-13, 13].every((aside) => under(middle + aside, y + 7))
      if (clear)
        marks.push(words(`level ${write(y)}`, [across(middle), y + 1.2], { anchor: 'middle', spare: true }))
    })
  return marks
}

/** One ordinate: a line down from the curve, its height and how far it stands from the hanging edge. */
function ordinateMarks(
  { across, low }: Top,
  { x, y, figures: [middle, line] }: Ordinate,
  write: FigureText['write'],
) {
  const down = (from: number, to: number): TemplateMark[] =>
    from > to
      ? [
          stroke(
            [from, to].map((at): Point => [across(x), at]),
            strokes.thin,
          ),
        ]
      : []
  const through = Math.abs(middle - x) < 8
  const place = across(middle)
  return [
    ...(through ? [...down(y, line + figureRoom.over), ...down(line - figureRoom.under, low)] : down(y, low)),
    words(write(y), [place, line], { size: 14, weight: 'semibold', anchor: 'middle' }),
    words(`at ${write(x)}`, [place, line - 5], { anchor: 'middle' }),
  ]
}

/** Both edges of the leaf and, in a frame, its stiles' inner edges; each named under the curve. */
function edges({ placed: { leaf, plan }, across, low }: Top): TemplateMark[] {
  const closing = leaf.name === 'leaf' || leaf.name.endsWith('half') ? 'closing edge' : 'meeting edge'
  const right = across(0) > across(leaf.width)
  const down = (x: number): Point[] => [
    [across(x), plan.top.heightAt(x)],
    [across(x), low],
  ]
  const named = (x: number, name: string, atRight: boolean): TemplateMark[] => [
    stroke(down(x), strokes.strong),
    words(name, [across(x) + (atRight ? -2 : 2), plan.top.heightAt(x) - 36], {
      anchor: atRight ? 'end' : 'start',
    }),
  ]
  const stiles = leaf.frame.filter(({ name }) => name !== 'top rail')
  const inner = stiles.map(({ name, section: { width } }) =>
    name === 'hanging stile' ? width : leaf.width - width,
  )
  return [
    ...named(0, 'hanging edge', right),
    ...named(leaf.width, closing, !right),
    ...inner.map((x) => stroke(down(x), strokes.clear, { dash: [5, 2] })),
  ]
}

function sayings(spec: GateSpec, placed: PlacedLeaf, alone: boolean): string[] {
  const { name, frame } = placed.leaf
  const both = spec.leaves === 2 && alone
  const leaf =
    name === 'leaf'
      ? 'the leaf'
      : both
        ? 'the first leaf, back up; the second is the same turned over'
        : `the ${name}, back up`
  return [
    `For: the top of ${leaf}. Figures are heights from the foot, every ${settingOutStep} mm from the hanging edge.`,
    frame.length > 0
      ? 'Lay it on stiles and rail, a level line on its own height; dashed lines are the stiles’ inner edges. Cut the top once it is together.'
      : 'Lay it on the back once the boards are together, a level line on its own height, and cut to the heavy line.',
  ]
}

/** Templates for a bowed, dipped or raked top, one for each leaf that differs: the line to cut to, ordinates and level lines, as it lies on the bench. */
export function topTemplates(spec: GateSpec, design: Design, figures: FigureText): Template[] {
  const leaves = shapedLeaves(spec, design)
  return leaves.map((placed) => {
    const { leaf, plan } = placed
    const across = acrossFrom(leaf.width, hangsRight(spec, leaf.name, 'back'))
    const [lowest, high] = [plan.top.lowest(0, leaf.width), plan.top.highest(0, leaf.width)]
    const top: Top = { placed, across, low: lowest - 32, high }
    const line = curve(top)
    const ordinates = ordinatesOf(top)
    return {
      title: {
        level: '',
        raked: 'Raked top',
        bowed: 'Curve of the bowed top',
        dipped: 'Curve of the dipped top',
      }[plan.top.shape],
      lay: sayings(spec, placed, leaves.length === 1),
      extent: {
        minX: Math.min(across(0), across(leaf.width + lapOf(placed))) - 3,
        maxX: Math.max(across(0), across(leaf.width + lapOf(placed))) + 3,
        minY: top.low - 7,
        maxY: high + 4,
      },
      followed: line,
      keepOff: { x: ordinates.map(({ x }) => across(x)), y: [] },
      marks: [
        ...levels(top, ordinates, figures),
        ...ordinates.flatMap((one) => ordinateMarks(top, one, figures.write)),
        ...edges(top),
        stroke(line, strokes.strong),
      ],
    }
  })
}
