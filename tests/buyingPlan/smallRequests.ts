import { seeded, type Draws } from '../../build/bench/seeded.ts'
import type { BuyRequest } from '../../shared/cutting/buyingPlan/request.ts'

/** A length in mm between two, in whole steps; steps of a tenth come out as tenths. */
const lengthBy = (draws: Draws, step: number, [low, high]: readonly [number, number]): number =>
  Math.max(step, Math.round(Math.floor(draws.between(low, high) / step) * step * 10) / 10)

/** Up to eight pieces of up to four lengths, up to four merchant's lengths (some limited, some at no price) and three rack pieces, by its seed. */
export function smallRequest(seed: number): BuyRequest {
  const draws = seeded(seed)
  const step = draws.one([1, 0.1, 5, 50, 300])
  const lengths = Array.from({ length: draws.between(1, 4) }, () => lengthBy(draws, step, [300, 2400]))
  const parts = Array.from({ length: draws.between(1, 8) }, () => ({
    section: 'board',
    length: draws.one(lengths),
    quantity: 1,
  }))
  const stock = Array.from({ length: draws.between(1, 4) }, () => ({
    section: 'board',
    length: lengthBy(draws, step, [600, 4800]),
    pence: draws.one([0, draws.between(1, 2000), draws.between(1, 20) * 100]),
    ...(draws.between(0, 2) === 0 ? { available: draws.between(0, 4) } : {}),
  }))
  const rack = Array.from({ length: draws.between(0, 3) }, () => ({
    section: 'board',
    length: lengthBy(draws, step, [300, 2600]),
    pence: draws.one([0, 0, draws.between(0, 100)]),
  }))
  return {
    version: 1,
    kerf: draws.one([0, 3, 2.4, 3.2]),
    endTrim: draws.one([0, 20, 7.5, 33]),
    leastOffcut: draws.one([0, 450, 900]),
    parts,
    stock,
    rack,
  }
}

/** One merchant's length and what it costs: dearer a metre when short or very long (invented prices). */
function merchantLength(draws: Draws, length: number, pencePerMetre: number) {
  const dearer = length < 2400 ? 1.3 : length <= 3600 ? 1.08 : length <= 4800 ? 1.12 : 1.22
  const pence = Math.round((length / 1000) * pencePerMetre * dearer * (1 + draws.between(-2, 2) / 100))
  return { section: 'board', length, pence }
}

/** What a job asks for: 10 to 15 pieces of 3 or 4 lengths, 6 to 12 merchant's lengths, with a rack or without. */
export function jobRequest(seed: number, { rack: hasRack }: { rack: boolean }): BuyRequest {
  const draws = seeded(seed)
  const ranges = [
    [1650, 2150],
    [560, 1150],
    [1050, 1500],
    [300, 2450],
  ] as const
  const lengths = Array.from({ length: draws.between(3, 4) }, () => {
    const [low, high] = draws.one(ranges)
    return draws.between(low, high)
  })
  const parts = Array.from({ length: draws.between(10, 15) }, (_, piece) => ({
    section: 'board',
    length: lengths[piece] ?? draws.one(lengths),
    quantity: 1,
    mark: `${draws.one(['gate', 'door', 'wicket'])} ${draws.between(1, 9)}`,
  }))
  const pencePerMetre = draws.between(90, 490)
  const kept = [3600, ...Array.from({ length: draws.between(5, 11) }, () => draws.between(1800, 6300, 300))]
  const stock = [...new Set(kept)].map((length) => ({
    ...merchantLength(draws, length, pencePerMetre),
    ...(hasRack && length !== 3600 && draws.between(1, 10) <= 4 ? { available: draws.between(0, 5) } : {}),
  }))
  const rack = Array.from({ length: hasRack ? draws.between(2, 20) : 0 }, () => ({
    section: 'board',
    length: draws.between(450, 2600),
    pence: draws.between(0, 60),
  }))
  return { version: 1, kerf: 3, endTrim: 20, leastOffcut: 450, parts, stock, rack }
}

/** A list in another order, by a seed. */
export function shuffled<T>(list: readonly T[], seed: number): T[] {
  const draws = seeded(seed)
  const left = [...list]
  return list.map(() => left.splice(draws.between(0, left.length - 1), 1)[0] as T)
}
