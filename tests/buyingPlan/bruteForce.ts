import type { BuyRequest } from '../../shared/cutting/buyingPlan/request.ts'

/** The least cost in pence, and the least waste in mm that goes with it, of one section's pieces; Infinity where there is no way. */
export type Least = { pence: number; waste: number }

const tenths = (mm: number): number => Math.round(mm * 10)

/** Pence weigh so much more than a tenth of a millimetre of waste that money always decides first. */
const weight = 10_000_000

type Single = { stock: number; room: number; pence: number; most: number }

function singles({ stock, rack = [], kerf, endTrim }: BuyRequest): Single[] {
  return [
    ...stock.map(({ length, pence, available = Infinity }) => ({
      stock: tenths(length),
      room: tenths(length) - tenths(endTrim),
      pence,
      most: available,
    })),
    ...rack.map(({ length, pence = 0 }) => ({
      stock: tenths(length),
      room: tenths(length),
      pence,
      most: 1,
    })),
  ].map((one) => ({ ...one, room: one.room + tenths(kerf) }))
}

/** For every set of pieces (a bit each), what cutting it from one length costs and wastes, as one weighted number. */
function weigh(request: BuyRequest, pieces: number[], { stock, room, pence }: Single): Float64Array {
  const kerf = tenths(request.kerf)
  return Float64Array.from({ length: 1 << pieces.length }, (_, set) => {
    const inSet = pieces.filter((_piece, bit) => (set >> bit) & 1)
    const filled = inSet.reduce((sum, piece) => sum + piece + kerf, 0)
    if (set === 0 || filled > room) return Infinity
    const offcut = Math.max(0, room - kerf - filled)
    const waste =
      stock -
      inSet.reduce((sum, piece) => sum + piece, 0) -
      (offcut >= tenths(request.leastOffcut) ? offcut : 0)
    return pence * weight + waste
  })
}

const subsets = (set: number, look: (part: number) => void): void => {
  for (let part = set; part > 0; part = (part - 1) & set) look(part)
}

/** Every way of dividing up to ten pieces among lengths, tried: unlimited lengths first, then each limited one as often as it is to be had. */
export function leastByTrial(request: BuyRequest): Least {
  const pieces = request.parts.flatMap(({ length, quantity }) =>
    new Array<number>(quantity).fill(tenths(length)),
  )
  const every = 1 << pieces.length
  const unlimited = new Float64Array(every).fill(Infinity)
  const all = singles(request)
  for (const one of all.filter(({ most }) => most === Infinity))
    weigh(request, pieces, one).forEach(
      (cost, set) => (unlimited[set] = Math.min(unlimited[set] as number, cost)),
    )
  let least: Float64Array = new Float64Array(every).fill(Infinity)
  least[0] = 0
  for (let set = 1; set < every; set += 1)
    subsets(set, (part) => {
      if (part & set & -set)
        least[set] = Math.min(
          least[set] as number,
          (unlimited[part] as number) + (least[set ^ part] as number),
        )
    })
  for (const one of all.filter(({ most }) => most !== Infinity)) {
    const cost = weigh(request, pieces, one)
    for (let taken = 0; taken < Math.min(one.most, pieces.length); taken += 1)
      least = withOneMore(least, cost)
  }
  const total = least[every - 1] as number
  return total === Infinity
    ? { pence: Infinity, waste: Infinity }
    : { pence: Math.floor(total / weight), waste: (total % weight) / 10 }
}

/** The least for every set when one more length may be taken. */
function withOneMore(least: Float64Array, cost: Float64Array): Float64Array {
  const next = least.slice()
  least.forEach((_, set) =>
    subsets(set, (part) => {
      next[set] = Math.min(next[set] as number, (cost[part] as number) + (least[set ^ part] as number))
    }),
  )
  return next
}
