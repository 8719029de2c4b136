import type { OrderLength } from '../../ordering/orderModel.ts'
import { cutGroups, type CutGroup } from './barDiagram.ts'

/**
 * Lengths cut to the same sizes, whoever's pieces they are: count and rackPieceIds of all of them, cuts of one (without marks where they differ).
 * pieces: those of one length where all are alike to their marks, else those of all together; kind is which of the bar's kinds, counted from 0.
 */
export type Cutting = Pick<
  OrderLength,
  'itemId' | 'from' | 'length' | 'offcut' | 'cuts' | 'count' | 'rackPieceIds'
> & {
  mixed: boolean
  pieces: (CutGroup & { kind: number })[]
}

const alike = ({ itemId, from, length, offcut, cuts }: OrderLength): string =>
  JSON.stringify([itemId, from, length, offcut, cuts.map((cut) => cut.length)])

/** Pieces of several lengths counted together, by size and mark. */
function together(members: readonly OrderLength[], kinds: readonly CutGroup[]): Cutting['pieces'] {
  const found: Cutting['pieces'] = []
  for (const { cuts, count } of members)
    for (const { length, mark } of cuts) {
      const own = found.find((one) => one.length === length && one.mark === mark)
      if (own) own.count += count
      else found.push({ length, mark, count, kind: kinds.findIndex((one) => one.length === length) })
    }
  return found.sort((a, b) => a.kind - b.kind)
}

function cuttingOf(members: readonly OrderLength[], first: OrderLength): Cutting {
  const { itemId, from, length, offcut } = first
  const mixed = members.length > 1
  const cuts = mixed ? first.cuts.map((cut) => ({ ...cut, mark: '' })) : first.cuts
  const kinds = cutGroups(cuts)
  return {
    ...{ itemId, from, length, offcut, cuts, mixed },
    count: members.reduce((sum, { count }) => sum + count, 0),
    rackPieceIds: members.flatMap(({ rackPieceIds }) => rackPieceIds),
    pieces: mixed ? together(members, kinds) : kinds.map((group, kind) => ({ ...group, kind })),
  }
}

/** The lengths of an order by how they are cut, in its own order: each way of cutting once, whichever jobs its pieces are for. */
export function cuttings(lengths: readonly OrderLength[]): Cutting[] {
  const groups = new Map<string, OrderLength[]>()
  for (const length of lengths) groups.set(alike(length), [...(groups.get(alike(length)) ?? []), length])
  return [...groups.values()].flatMap((members) => {
    const [first] = members
    return first ? [cuttingOf(members, first)] : []
  })
}
