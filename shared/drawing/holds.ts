import type { Design } from '../gate/designModel.ts'
import type { HangingLeaf, Ledge } from '../gate/leaf.ts'
import type { GateSpec } from '../gate/spec.ts'
import { lengthTolerance, type Point } from '../geometry/point.ts'
import { footAbove } from '../ironmongery/allot.ts'
import type { Fitting } from '../ironmongery/fitting.ts'
import { placeLeaves, placeOn, type PlacedLeaf } from './placeLeaves.ts'

/**
 * A part that can be taken hold of on a drawing and moved along one axis. field is the entry it moves, in the spec; value what stands there
 * now, mm. at is where it is held, in the drawing; moving it by 1 mm along the axis changes the value by sign. limits are the least and greatest
 * value that keep it on its leaf and off its neighbours,
 * ends what it meets there; what else the gate can't bear is found when it is worked out. byRule: it stands where the
 * rule puts it, until it is moved. rule: the entry to give back to the rule, '' where no rule places it.
 */
export type Hold = {
  part: string
  name: string
  field: string
  axis: 'x' | 'y'
  at: Point
  sign: 1 | -1
  value: number
  limits: [number, number]
  ends: [string, string]
  byRule: boolean
  rule: string
}

/** What the holds of a leaf are found from. */
type Held = { spec: GateSpec; design: Design; placed: PlacedLeaf; view: 'back' | 'face' }

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1)

/** What a part of one leaf of several is called, as the drawing calls it. */
const called = ({ leaf }: PlacedLeaf, part: string): string =>
  leaf.name === 'leaf' ? part : `${leaf.name} ${part}`

/** How far up a ledge's middle may stand: off the foot and its neighbours by no more than touching them. */
function ledgeLimits({ leaf, plan }: PlacedLeaf, index: number): [number, number] {
  const ledge = leaf.ledges[index] as Ledge
  const half = ledge.section.width / 2
  const [below, above] = [leaf.ledges[index - 1], leaf.ledges[index + 1]]
  const rail = leaf.frame.find(({ name }) => name === 'top rail')
  const top = rail ? Math.min(...rail.outline.map(([, y]) => y)) : plan.top.lowest(0, leaf.width)
  const low = below ? below.y + below.section.width / 2 : Math.max(plan.foot(0), plan.foot(leaf.width))
  const high = above ? above.y - above.section.width / 2 : top
  return [Math.min(low + half, ledge.y), Math.max(high - half, ledge.y)]
}

/** What a ledge meets at the ends of its way. */
function ledgeEnds({ ledges, frame }: HangingLeaf, index: number): [string, string] {
  const [below, above] = [ledges[index - 1], ledges[index + 1]]
  const top = frame.length > 0 ? 'the top rail' : 'the top of the leaf'
  return [below ? `the ${below.name} ledge` : 'the foot of the leaf', above ? `the ${above.name} ledge` : top]
}

/**
 * Whether one list of ledge heights says where the ledges of every leaf stand: as entered, or where the rule comes to the same in all. The halves of
 * a stable door, and leaves whose feet follow the ground, each stand by their own until heights are entered that suit both.
 */
export const heightsServeAll = (spec: GateSpec, { leaves }: { leaves: HangingLeaf[] }): boolean =>
  spec.ledges.heights !== 'auto' ||
  leaves.every((leaf) =>
    leaf.ledges.every(({ y }, i) => Math.abs(y - (leaves[0]?.ledges[i]?.y ?? Infinity)) < lengthTolerance),
  )

/** Ledges, from the back. */
function ledgeHolds({ spec, design, placed, view }: Held): Hold[] {
  const byRule = spec.ledges.heights === 'auto'
  if (view === 'face' || !heightsServeAll(spec, design)) return []
  return placed.leaf.ledges.map((ledge, index) => ({
    part: called(placed, `${ledge.name} ledge`),
    name: capital(called(placed, `${ledge.name} ledge`)),
    field: `ledges.heights.${index}`,
    axis: 'y',
    at: placeOn(placed)([placed.leaf.width * 0.86, ledge.y]),
    sign: 1,
    value: ledge.y,
    limits: ledgeLimits(placed, index),
    ends: ledgeEnds(placed.leaf, index),
    byRule,
    rule: 'ledges.heights',
  }))
}

/** The foot and the head of a leaf's braces, where the setbacks are: along the lower and the upper ledge. */
function braceHolds({ spec, placed, view }: Held): Hold[] {
  const { braces } = placed.leaf
  const [first, last] = [braces[0], braces.at(-1)]
  if (view === 'face' || !spec.braces || !first || !last) return []
  const { footSetback, headSetback } = spec.braces
  const [turn, way] = placed.turned ? ([-1, 1] as const) : ([1, -1] as const)
  const along = (brace: typeof first, share: number): Point => {
    const [from, to] = [
      brace.outline[0] as Point,
      brace.outline[Math.floor(brace.outline.length / 2)] as Point,
    ]
    return placeOn(placed)([from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share])
  }
  const most = first.run + footSetback + headSetback
  const one = (end: 'foot' | 'head', brace: typeof first, value: number): Hold => ({
    part: called(placed, `${brace.name} brace`),
    name: capital(called(placed, `brace ${end}`)),
    field: `braces.${end}Setback`,
    axis: 'x',
    at: along(brace, end === 'foot' ? 0.2 : 0.8),
    sign: end === 'foot' ? turn : way,
    value,
    limits: [0, Math.max(value, most)],
    ends: ['the end of the ledge', 'the other end of the ledge'],
    byRule: false,
    rule: '',
  })
  return [one('foot', first, footSetback), one('head', last, headSetback)]
}

/** The heights that a line of ironmongery stands at now, in the order its own list would have them. */
export function standingHeights(spec: GateSpec, design: Design, entry: number): number[] {
  const piece = spec.ironmongery[entry]
  if (piece?.heights) return piece.heights
  const own = design.fittings.filter((one) => one.entry === entry)
  // On a pair the heights of hinges hold for each leaf, and stand once.
  const first = own[0]?.leaf
  const once = piece?.kind === 'hinge' && spec.leaves === 2 ? own.filter(({ leaf }) => leaf === first) : own
  return once.map(({ leaf, height }) => height + footAbove(spec, { name: leaf }))
}

function fittingHold(held: Held, fitting: Fitting, number: string): Hold | undefined {
  const { spec, design, placed } = held
  const foot = footAbove(spec, placed.leaf)
  const at = fitting.height + foot
  const heights = standingHeights(spec, design, fitting.entry)
  const index = heights.findIndex((height) => Math.abs(height - at) < 0.01)
  const outline = fitting.shapes.flatMap((shape) => shape.outline)
  if (index < 0 || outline.length === 0) return undefined
  const [ys, xs] = [outline.map(([, y]) => y), outline.map(([x]) => x)]
  const half = (Math.max(...ys) - Math.min(...ys)) / 2
  const x = fitting.kind === 'hinge' ? Math.max(0, Math.min(...xs)) : (Math.min(...xs) + Math.max(...xs)) / 2
  return {
    part: called(placed, fitting.kind),
    name: capital(called(placed, `${number}${fitting.kind}`)),
    field: `ironmongery.${fitting.entry}.heights.${index}`,
    axis: 'y',
    at: placeOn(placed)([x, fitting.height]),
    sign: 1,
    value: at,
    limits: [Math.min(foot + half, at), Math.max(foot + placed.leaf.height - half, at)],
    ends: ['the foot of the leaf', 'the top of the leaf'],
    byRule: spec.ironmongery[fitting.entry]?.heights === undefined,
    rule: `ironmongery.${fitting.entry}.heights`,
  }
}

/** 'bottom ', 'middle ' or 'top ' of several alike, bottom up; nothing of one alone. */
const placeWord = (index: number, count: number): string => {
  if (count === 1) return ''
  if (index === 0) return 'bottom '
  return index === count - 1 ? 'top ' : 'middle '
}

/** Hinges, latch, lock and bolts on the side that is seen. */
function fittingHolds(held: Held): Hold[] {
  const own = held.placed.fittings.filter(({ surface }) => surface === held.view)
  return own.flatMap((fitting) => {
    const alike = own.filter(({ kind }) => kind === fitting.kind).sort((a, b) => a.height - b.height)
    return fittingHold(held, fitting, placeWord(alike.indexOf(fitting), alike.length)) ?? []
  })
}

const turnedOver = (hold: Hold, width: number): Hold => ({
  ...hold,
  at: [width - hold.at[0], hold.at[1]],
  sign: hold.axis === 'x' ? (hold.sign === 1 ? -1 : 1) : hold.sign,
})

/** Everything on one elevation of a gate that can be taken hold of, leaf by leaf and bottom up, in the drawing's own places. */
export function holdsOf(spec: GateSpec, design: Design, view: 'back' | 'face'): Hold[] {
  const { leaves, width } = placeLeaves(spec, design)
  const over = (view === 'back') === (spec.hung === 'left')
  return leaves.flatMap((placed) => {
    const held = { spec, design, placed, view }
    const holds = [...ledgeHolds(held), ...braceHolds(held), ...fittingHolds(held)]
    return over ? holds.map((hold) => turnedOver(hold, width)) : holds
  })
}

/** The leaves of a design that carry an entry of ledge heights: those heights as they stand, bottom up. */
export const standingLedges = ({ leaves }: { leaves: HangingLeaf[] }): number[] =>
  leaves[0]?.ledges.map(({ y }) => y) ?? []
