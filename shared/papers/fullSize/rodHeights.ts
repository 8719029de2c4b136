import { placeLeaves, type PlacedLeaf } from '../../drawing/placeLeaves.ts'
import { railLower } from '../../drawing/leafLines.ts'
import type { Design } from '../../gate/designModel.ts'
import { lowerEdge, upperEdge } from '../../gate/ledges.ts'
import type { GateSpec } from '../../gate/spec.ts'
import type { Fitting } from '../../ironmongery/fitting.ts'

/** One height on a rod, mm from the leaf's foot, and all that comes there. */
export type RodHeight = { y: number; names: string[] }

/** A stretch of a rod that a ledge or rail takes up, mm. */
export type RodBand = { from: number; to: number }

/** A rod: which leaf it is for, its heights rising, and where ledges and rail lie. */
export type Rod = { leaf: string; heights: RodHeight[]; bands: RodBand[] }

/** Heights nearer than this are one mark, mm: half of what a pencil shows. */
const oneMark = 0.25

type Named = { y: number; name: string }

function feet({ plan }: PlacedLeaf): Named[] {
  const [hanging, closing] = [plan.foot(0), plan.foot(plan.width)]
  if (Math.abs(hanging - closing) < oneMark) return [{ y: hanging, name: 'foot' }]
  return [
    { y: hanging, name: 'foot, hanging edge' },
    { y: closing, name: 'foot, closing edge' },
  ]
}

function tops({ plan, leaf: { width } }: PlacedLeaf): Named[] {
  const { top } = plan
  if (top.shape === 'level') return [{ y: top.heightAt(0), name: 'top' }]
  const [hanging, closing] = [top.heightAt(0), top.heightAt(width)]
  const [lowest, highest] = [top.lowest(0, width), top.highest(0, width)]
  const edges: Named[] =
    Math.abs(hanging - closing) < oneMark
      ? [{ y: hanging, name: 'top, both edges' }]
      : [
          { y: hanging, name: 'top, hanging edge' },
          { y: closing, name: 'top, closing edge' },
        ]
  const [low, high] = [Math.min(hanging, closing), Math.max(hanging, closing)]
  return [
    ...edges,
    ...(highest > high + oneMark ? [{ y: highest, name: 'top, highest' }] : []),
    ...(lowest < low - oneMark ? [{ y: lowest, name: 'top, lowest' }] : []),
  ]
}

/** The points of notches, which lie off the ledge's edge; flush ends lie on it. */
const notchPoints = ({ leaf: { braces } }: PlacedLeaf): Named[] =>
  braces.flatMap(({ name, notch, outline }) => {
    const [foot, head] = [outline[1], outline[4]]
    if (!notch || !foot || !head) return []
    const of = name === 'single' ? 'notch point' : `notch point, ${name} brace`
    return [
      { y: foot[1], name: of },
      { y: head[1], name: of },
    ]
  })

/** What a piece is called on a rod: bolts by their name up to its comma, since a leaf may have several kinds. */
const short = ({ kind, name }: Fitting): string =>
  kind === 'bolt' || kind === 'other' ? (name.split(',')[0] ?? name) : kind

/** Every piece at its middle; hinges where the leaf hangs, listed or not. */
const ironmongeryHeights = ({ fittings, leaf: { hinges } }: PlacedLeaf): Named[] => [
  ...hinges.map(({ y }) => ({ y, name: 'hinge' })),
  ...fittings
    .filter(({ kind }) => kind !== 'hinge')
    .map((fitting) => ({ y: fitting.height, name: short(fitting) })),
]

/** Heights of the leaf itself, without its ironmongery. */
function ownHeights(placed: PlacedLeaf): Named[] {
  const rail = railLower(placed)
  return [
    ...feet(placed),
    ...placed.leaf.ledges.flatMap((ledge) => [
      { y: lowerEdge(ledge), name: `${ledge.name} ledge, lower edge` },
      { y: upperEdge(ledge), name: `${ledge.name} ledge, upper edge` },
    ]),
    ...(rail === undefined ? [] : [{ y: rail, name: 'rail, lower edge' }]),
    ...notchPoints(placed),
    ...tops(placed),
  ]
}

/** Heights that come to one mark said together, rising. */
function marked(all: Named[]): RodHeight[] {
  const out: RodHeight[] = []
  for (const { y, name } of [...all].sort((a, b) => a.y - b.y)) {
    const last = out.at(-1)
    if (!last || y - last.y >= oneMark) out.push({ y, names: [name] })
    else if (!last.names.includes(name)) last.names.push(name)
  }
  return out
}

function rodOf(placed: PlacedLeaf): Rod {
  const { leaf } = placed
  const rail = railLower(placed)
  return {
    leaf: leaf.name,
    heights: marked([...ownHeights(placed), ...ironmongeryHeights(placed)]),
    bands: [
      ...leaf.ledges.map((ledge) => ({ from: lowerEdge(ledge), to: upperEdge(ledge) })),
      ...(rail === undefined ? [] : [{ from: rail, to: placed.plan.top.highest(0, leaf.width) }]),
    ],
  }
}

/** The same pieces of both leaves at the same heights, ironmongery aside. */
function sameLeaves(one: PlacedLeaf, other: PlacedLeaf): boolean {
  const [first, second] = [one, other].map((placed) => marked(ownHeights(placed)))
  return (
    first?.length === second?.length &&
    (first ?? []).every(({ y, names }, i) => {
      const against = second?.[i]
      return against !== undefined && Math.abs(y - against.y) < 0.01 && names.join() === against.names.join()
    })
  )
}

/** One rod for both leaves of a pair: what is on one of them only is said to be. */
function sharedRod(first: PlacedLeaf, second: PlacedLeaf): Rod {
  const own = (placed: PlacedLeaf, other: PlacedLeaf): Named[] =>
    ironmongeryHeights(placed).map(({ y, name }) => {
      const both = ironmongeryHeights(other).some((one) => one.name === name && Math.abs(one.y - y) < oneMark)
      return { y, name: both ? name : `${name}, ${placed.leaf.name}` }
    })
  const rod = rodOf(first)
  const heights = marked([...ownHeights(first), ...own(first, second), ...own(second, first)])
  return { ...rod, leaf: 'both leaves', heights }
}

/** A rod for each leaf; one for both leaves of a pair where their own heights are the same. Heights are the design's, not rounded. */
export function rodsOf(spec: GateSpec, design: Pick<Design, 'leaves' | 'fittings'>): Rod[] {
  const { kind, leaves } = placeLeaves(spec, design)
  const [first, second] = leaves
  if (kind === 'pair' && first && second && sameLeaves(first, second)) return [sharedRod(first, second)]
  return leaves.map(rodOf)
}
