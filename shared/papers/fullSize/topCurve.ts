import type { FigureText } from '../../drawing/figureText.ts'
import { placeLeaves, type PlacedLeaf } from '../../drawing/placeLeaves.ts'
import type { Design } from '../../gate/designModel.ts'
import type { GateSpec } from '../../gate/spec.ts'
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

/** The curve in steps of 2 mm: on a radius of 500 it strays 0.001 mm. */
function curve({ placed: { leaf, plan }, across }: Top): Point[] {
  const steps = plan.top.radius === null ? 1 : Math.ceil(leaf.width / 2)
  return Array.from({ length: steps + 1 }, (_, i): Point => {
    const x = (leaf.width * i) / steps
    return [across(x), plan.top.heightAt(x)]
  })
}

/** Level lines at every 50 mm of height, where they lie under the curve. */
function levels(
  { placed: { leaf, plan }, across, low, high }: Top,
  write: (mm: number) => string,
): TemplateMark[] {
  const marks: TemplateMark[] = []
  const under = (x: number, y: number): boolean => x >= 0 && x <= leaf.width && plan.top.heightAt(x) > y
  for (let y = Math.ceil(low / settingOutStep) * settingOutStep; y < high; y += settingOutStep) {
    for (let x = 0; x < leaf.width; x += settingOutStep) {
      const ends = [x, Math.min(leaf.width, x + settingOutStep)] as const
      if (!ends.every((at) => under(at, y))) continue
      marks.push(
        stroke(
          ends.map((at): Point => [across(at), y]),
          strokes.thin,
          { ink: 'grey', dash: [3, 2] },
        ),
      )
      const clear = [x + 12, x + 38].every((at) => under(at, y + 24))
      if ((x / settingOutStep) % 2 === 1 && clear)
        marks.push(words(`level ${write(y)}`, [across(x + 25), y + 1.2], { anchor: 'middle', spare: true }))
    }
  }
  return marks
}

/** One ordinate: a line down from the curve, its height and how far it stands from the hanging edge. */
function ordinate(
  top: Top,
  { at: [x, y], before }: { at: readonly [number, number]; before: number | null },
  { write }: FigureText,
): TemplateMark[] {
  const { placed, across, low } = top
  const { width } = placed.leaf
  const side = Math.min(10, width / 2)
  const around = (at: number) => placed.plan.top.heightAt(Math.min(width, Math.max(0, at)))
  const crowded = before !== null && x - before < 24 ? 12 : 0
  const middle = Math.min(width - side - 1, Math.max(side + 1, x))
  const down = Math.min(around(middle - side), around(middle + side)) - 6.5 - crowded
  const place = across(middle)
  const line = (from: number, to: number): TemplateMark[] =>
    from > to
      ? [
          stroke(
            [
              [across(x), from],
              [across(x), to],
            ],
            strokes.thin,
          ),
        ]
      : []
  const through = Math.abs(middle - x) < 8
  return [
    ...(through ? [...line(y, down + 4.6), ...line(down - 6.6, low)] : line(y, low)),
    words(write(y), [place, down], { size: 14, weight: 'semibold', anchor: 'middle' }),
    words(`at ${write(x)}`, [place, down - 5], { anchor: 'middle' }),
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
    const places = settingOut(plan.top, leaf.width)
    return {
      title: {
        level: '',
        raked: 'Raked top',
        bowed: 'Curve of the bowed top',
        dipped: 'Curve of the dipped top',
      }[plan.top.shape],
      lay: sayings(spec, placed, leaves.length === 1),
      extent: { minX: -3, maxX: leaf.width + 3, minY: top.low - 7, maxY: high + 4 },
      followed: line,
      keepOff: { x: places.map(([x]) => across(x)), y: [] },
      marks: [
        ...levels(top, figures.write),
        ...places.flatMap((place, i) =>
          ordinate(top, { at: place, before: places[i - 1]?.[0] ?? null }, figures),
        ),
        ...edges(top),
        stroke(line, strokes.strong),
      ],
    }
  })
}
