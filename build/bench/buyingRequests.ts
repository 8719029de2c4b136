import type { BuyRequest } from '../../shared/cutting/buyingPlan/request.ts'
import { seeded, type Draws } from './seeded.ts'

/** How much is bought at once: for a job, a week's, a quarter's work; or few stock lengths for many part lengths, the hardest. */
export const scales = ['job', 'week', 'quarter', 'corner'] as const
export type Scale = (typeof scales)[number]

type Size = { lengths: [number, number]; pieces: [number, number]; stocks: [number, number] }

const sizes: Record<Scale, Size> = {
  job: { lengths: [3, 4], pieces: [10, 15], stocks: [6, 12] },
  week: { lengths: [22, 28], pieces: [90, 110], stocks: [6, 12] },
  quarter: { lengths: [200, 200], pieces: [1000, 1000], stocks: [6, 12] },
  corner: { lengths: [24, 24], pieces: [90, 110], stocks: [1, 3] },
}

/** A part's length, mm: boards of gates, ledges, braces, and anything. */
function partLength(draws: Draws): number {
  const kind = draws.between(1, 100)
  if (kind <= 35) return draws.between(1650, 2150)
  if (kind <= 60) return draws.between(560, 1150)
  return kind <= 75 ? draws.between(1050, 1500) : draws.between(300, 2450)
}

/** What a length costs, pence: dearer by the metre when short or long, cheapest about 3.6 m, a little of chance in it. */
function priceOf(draws: Draws, length: number, pencePerMetre: number): number {
  const short = length < 2400 ? 1.06 : 1
  const long =
    length > 4800 ? draws.between(1080, 1180) / 1000 : length > 3600 ? draws.between(1020, 1050) / 1000 : 1
  const chance = draws.between(980, 1020) / 1000
  return Math.max(1, Math.round((length / 1000) * pencePerMetre * short * long * chance))
}

function stockOf(draws: Draws, count: number, rack: boolean): BuyRequest['stock'] {
  const lengths = new Set<number>()
  while (lengths.size < count) lengths.add(draws.between(1800, 6300, 300))
  // Something without limit must hold the longest part, or there may be no plan.
  if (Math.max(...lengths) < 2700) lengths.add(draws.between(2700, 6300, 300))
  const pencePerMetre = draws.between(90, 490)
  const longest = Math.max(...lengths)
  return [...lengths]
    .sort((a, b) => a - b)
    .map((length) => ({
      section: 'board',
      length,
      pence: priceOf(draws, length, pencePerMetre),
      ...(rack && length !== longest && draws.between(1, 100) <= 40 && { available: draws.between(1, 8) }),
    }))
}

/** So many part lengths, about four pieces of each: a week's work stretched or shrunk. */
const ofLengths = (lengths: number): Size => ({
  ...sizes.week,
  lengths: [lengths, lengths],
  pieces: [lengths * 4, lengths * 4],
})

/**
 * An invented request of a scale, by its seed; with a rack, some stock limited and 2 to 20 offcuts at up to 60 pence. Kerf 3, trim 20. partLengths:
 * so many instead of the scale's.
 */
export function requestOf(
  scale: Scale,
  seed: number,
  { rack = false, stocks = 0, partLengths = 0 } = {},
): BuyRequest {
  const draws = seeded(seed)
  const size = partLengths > 0 ? ofLengths(partLengths) : sizes[scale]
  const stock = stockOf(draws, stocks || draws.between(...size.stocks), rack)
  const lengths = Array.from({ length: draws.between(...size.lengths) }, () => partLength(draws))
  const quantities = lengths.map(() => 1)
  const pieces = draws.between(...size.pieces)
  for (let piece = lengths.length; piece < pieces; piece += 1) {
    const part = draws.between(0, lengths.length - 1)
    quantities[part] = (quantities[part] ?? 0) + 1
  }
  const offcuts = () => ({
    section: 'board',
    length: draws.between(450, 2600),
    pence: draws.between(0, 60),
  })
  return {
    ...{ version: 1, kerf: 3, endTrim: 20, leastOffcut: 450, stock },
    parts: lengths.map((length, part) => ({ section: 'board', length, quantity: quantities[part] ?? 1 })),
    ...(rack && { rack: Array.from({ length: draws.between(2, 20) }, offcuts) }),
  }
}
