import { lengthTolerance } from '../geometry/point.ts'
import type { Check } from './checks.ts'
import type { Ledge } from './leaf.ts'
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

function placeStops(leafHeight: number, ledges: Ledge[], field: string): Check[] {
  const edges = (ledge: Ledge) =>
    [ledge.y - ledge.section.width / 2, ledge.y + ledge.section.width / 2] as const
  const checks: Check[] = []
  for (const ledge of ledges) {
    const [low, high] = edges(ledge)
    if (low < -lengthTolerance || high > leafHeight + lengthTolerance)
      checks.push({
        id: 'ledge-off-leaf',
        level: 'stop',
        field,
        figures: [`ledge.${ledge.name}.y`],
        message: `The ${ledge.name} ledge runs from ${writeShortMm(low)} to ${writeShortMm(high)} mm, off a leaf ${writeShortMm(leafHeight)} mm high.`,
        remedy: 'Move the ledge, use a narrower one, or make the leaf higher.',
      })
  }
  ledges.slice(1).forEach((upper, index) => {
    const lower = ledges[index] as Ledge
    const clear = edges(upper)[0] - edges(lower)[1]
    if (clear < -lengthTolerance)
      checks.push({
        id: 'ledges-overlap',
        level: 'stop',
        field,
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
      message: `The ${narrow.name} ledge is ${writeShortMm(narrow.section.width)} mm wide: fixings can't stand three diameters from both its edges.`,
      remedy: `Use a ledge at least ${writeShortMm(least)} mm wide or a thinner fixing.`,
    })
  return checks
}

function leafCautions(leaf: { width: number; height: number }, ledges: Ledge[]): Check[] {
  const checks: Check[] = []
  if (ledges.length === 2 && leaf.height > twoLedgesUpTo)
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

/** Everything that is looked at in the ledges of one leaf: sizes, places, and what the trade would raise an eyebrow at. */
export function ledgeChecks(
  spec: GateSpec,
  leaf: { width: number; height: number },
  ledges: Ledge[],
): Check[] {
  const field = spec.ledges.heights === 'auto' ? 'ledges.count' : 'ledges.heights'
  return [
    ...sizeStops(ledges),
    ...placeStops(leaf.height, ledges, field),
    ...leafCautions(leaf, ledges),
    ...sectionCautions(spec, ledges),
  ]
}
