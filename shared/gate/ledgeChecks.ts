import { lengthTolerance } from '../geometry/point.ts'
import type { Check } from './checks.ts'
import type { Ledge } from './leaf.ts'
import type { LedgeRoom } from './leafRoom.ts'
import type { GateSpec } from './spec.ts'
import { writeShortMm } from '../units/writeLength.ts'

/** Two ledges up to this leaf height in mm, three above: common practice. */
export const twoLedgesUpTo = 1200

/** A leaf wider than this is better hung in two halves, mm: 3 ft 6 in, an old rule of the trade (Rivington's Notes). */
const widestSingleLeaf = 1067

function sizeStops(ledges: Ledge[]): Check[] {
  const short = ledges.find((ledge) => ledge.length <= 0 || ledge.shortLength <= 0)
  if (!short) return []
  const edge = short.length <= 0 ? 'length' : 'shortLength'
  return [
    {
      id: 'part-no-size',
      level: 'stop',
      message: `The ${short.name} ledge comes to ${writeShortMm(short[edge])} mm ${edge === 'length' ? 'long' : 'on its short edge'}.`,
      figures: [`ledge.${short.name}.${edge}`],
      remedy:
        edge === 'length'
          ? 'Lessen the insets or make the leaf wider.'
          : 'Lessen the end angle or the insets.',
      field: edge === 'length' ? 'ledges.hangingInset' : 'ledges.end.angle',
    },
  ]
}

/** A ledge's edges and what the leaf leaves it: the foot and the top (or the top rail) over its own length. */
function limitsOf(room: LedgeRoom, ledge: Ledge) {
  const lost = (ledge.length - ledge.shortLength) / 2
  const [from, to] = room.frame
    ? [ledge.x + lost, ledge.x + ledge.length - lost]
    : [ledge.x, ledge.x + ledge.length]
  return {
    low: ledge.y - ledge.section.width / 2,
    high: ledge.y + ledge.section.width / 2,
    foot: room.footHighest(from, to),
    top: room.frame ? room.frame.railLower : room.topLowest(from, to),
  }
}

/** Whether one list of heights has to serve the two halves of a stable door, which are seldom of one height. */
const sharedByHalves = (spec: GateSpec): boolean =>
  spec.stable !== undefined && spec.ledges.heights !== 'auto'

/** What to do about a ledge off its leaf: on a stable door with heights of its own, which centre heights this half takes. */
function offLeafRemedy(spec: GateSpec, ledge: Ledge, { foot, top }: { foot: number; top: number }): string {
  if (!sharedByHalves(spec)) return 'Move the ledge, use a narrower one, or make the leaf higher.'
  const half = ledge.section.width / 2
  const takes =
    top - foot < 2 * half
      ? 'this half is too low for such a ledge'
      : `this half takes centres from ${writeShortMm(foot + half)} to ${writeShortMm(top - half)} mm`
  return `The heights entered hold for both halves, each from its own foot; ${takes}. Enter heights that suit both, or take the usual ones.`
}

/** A ledge past the foot, past the top, or cut into by a shaped top. */
function offLeafStop(spec: GateSpec, room: LedgeRoom, ledge: Ledge): Check[] {
  const { low, high, foot, top } = limitsOf(room, ledge)
  if (low >= foot - lengthTolerance && high <= top + lengthTolerance) return []
  const eaten = high > top && high <= room.height && !room.frame
  const past = room.frame && high > top
  return [
    {
      id: eaten ? 'shape-eats-ledge' : 'ledge-off-leaf',
      level: 'stop',
      field: eaten ? 'top.rise' : heightsField(spec),
      figures: [`ledge.${ledge.name}.y`],
      message: eaten
        ? `The ${ledge.name} ledge reaches ${writeShortMm(high)} mm up and the top comes down to ${writeShortMm(top)} mm over it.`
        : past
          ? `The ${ledge.name} ledge reaches ${writeShortMm(high)} mm up, past the top rail’s lower edge at ${writeShortMm(top)} mm.`
          : `The ${ledge.name} ledge runs from ${writeShortMm(low)} to ${writeShortMm(high)} mm, off a leaf ${writeShortMm(room.height)} mm high.`,
      remedy: eaten
        ? 'Lower the ledge or lessen the rise of the top.'
        : offLeafRemedy(spec, ledge, { foot, top }),
    },
  ]
}

const heightsField = (spec: GateSpec): string =>
  spec.ledges.heights === 'auto' ? 'ledges.count' : 'ledges.heights'

function placeStops(spec: GateSpec, room: LedgeRoom, ledges: Ledge[]): Check[] {
  const edges = (ledge: Ledge) =>
    [ledge.y - ledge.section.width / 2, ledge.y + ledge.section.width / 2] as const
  const checks = ledges.flatMap((ledge) => offLeafStop(spec, room, ledge))
  ledges.slice(1).forEach((upper, index) => {
    const lower = ledges[index] as Ledge
    const clear = edges(upper)[0] - edges(lower)[1]
    if (clear < -lengthTolerance)
      checks.push({
        id: 'ledges-overlap',
        level: 'stop',
        field: heightsField(spec),
        figures: [`ledge.${lower.name}.y`, `ledge.${upper.name}.y`],
        message: `The ${lower.name} and ${upper.name} ledges overlap by ${writeShortMm(-clear)} mm.`,
        remedy:
          ledges.length === 3
            ? 'Use two ledges, narrower ones, or set their heights.'
            : 'Use narrower ledges or set their heights.',
      })
  })
  return checks
}

function sectionCautions(spec: GateSpec, ledges: Ledge[]): Check[] {
  const checks: Check[] = []
  const board = spec.boards.section.thickness
  const at = { level: 'caution', field: 'ledges.section' } as const
  const thin = ledges.find((ledge) => ledge.section.thickness < board)
  if (thin)
    checks.push({
      id: 'ledge-thin',
      ...at,
      figures: [],
      message: `The ${thin.name} ledge is ${writeShortMm(thin.section.thickness)} mm thick, thinner than its boards of ${writeShortMm(board)} mm.`,
      remedy: 'Use a ledge at least as thick as the boards.',
    })
  const least = 6 * spec.fixings.diameter
  const narrow = ledges.find((ledge) => ledge.section.width < least - lengthTolerance)
  if (narrow)
    checks.push({
      id: 'ledge-narrow',
      ...at,
      figures: [],
      message: `The ${narrow.name} ledge is ${writeShortMm(narrow.section.width)} mm wide: fixings can’t stand three diameters from both its edges.`,
      remedy: `Use a ledge at least ${writeShortMm(least)} mm wide or a thinner fixing.`,
    })
  return checks
}

function leafCautions(leaf: LedgeRoom, ledges: Ledge[]): Check[] {
  const checks: Check[] = []
  if (ledges.length + (leaf.frame ? 1 : 0) === 2 && leaf.height > twoLedgesUpTo)
    checks.push({
      id: 'few-ledges',
      level: 'caution',
      field: 'ledges.count',
      figures: ['ledges.count'],
      message: `Two ledges on a leaf ${writeShortMm(leaf.height)} mm high: three is usual above ${twoLedgesUpTo}.`,
      remedy: 'Use three ledges, with the braces in line or one to each bay.',
    })
  if (leaf.width > widestSingleLeaf)
    checks.push({
      id: 'leaf-wide',
      level: 'caution',
      field: 'size.width',
      figures: ['leaf.width'],
      message: `The leaf is ${writeShortMm(leaf.width)} mm wide; above ${widestSingleLeaf} mm (3 ft 6 in) two leaves hang better.`,
      remedy: 'Consider a pair of narrower leaves, or heavier hinges and a stiff post.',
    })
  return checks
}

/** One list of heights for leaves of two heights: what it means for the other, said once. */
function sharedHeights(spec: GateSpec): Check[] {
  if (!sharedByHalves(spec)) return []
  return [
    {
      id: 'ledge-heights-shared',
      level: 'note',
      message: 'The heights entered for the ledges hold for both halves, each from its own foot.',
      figures: [],
      remedy: 'Take the usual heights to have each half laid out by its own height.',
      field: 'ledges.heights',
    },
  ]
}

/** Everything that is looked at in the ledges of one leaf: sizes, places, and what the trade would raise an eyebrow at. */
export function ledgeChecks(spec: GateSpec, leaf: LedgeRoom, ledges: Ledge[]): Check[] {
  return [
    ...sizeStops(ledges),
    ...placeStops(spec, leaf, ledges),
    ...leafCautions(leaf, ledges),
    ...sectionCautions(spec, ledges),
    ...sharedHeights(spec),
  ]
}
