import type { Price } from '../../shared/pricing/price.ts'

/** A small graph of a line's prices in a box of width × height: past as steps, what lies ahead apart, a dot for today's. */
export type PriceGraph = { past: string; ahead: string; dot: { x: number; y: number } | null }

const dayNumber = (iso: string): number => Date.parse(`${iso}T00:00:00Z`) / 864e5
const round = (number: number): number => Math.round(number * 10) / 10

type Corner = { x: number; y: number }
const path = (corners: readonly Corner[]): string =>
  corners.length < 2 ? '' : corners.map(({ x, y }, index) => `${index === 0 ? 'M' : 'L'}${x} ${y}`).join(' ')

/**
 * Draws prices (in the order in which they come to hold) as steps: each holds until the next. The whole of the height is used from the
 * lowest to the highest; a price that never moved lies midway. today is ISO.
 */
export function priceGraph(
  prices: readonly Pick<Price, 'pence' | 'startsOn'>[],
  today: string,
  box: { width: number; height: number },
): PriceGraph {
  const edge = 3
  const [first, last] = [prices[0], prices.at(-1)]
  if (!first || !last) return { past: '', ahead: '', dot: null }
  const now = dayNumber(today)
  const begin = Math.min(dayNumber(first.startsOn), now - 30)
  const end = Math.max(now, dayNumber(last.startsOn) + (last.startsOn > today ? 30 : 0))
  const sums = prices.map(({ pence }) => pence)
  const [least, most] = [Math.min(...sums), Math.max(...sums)]
  const x = (day: number) => round(edge + ((day - begin) / (end - begin)) * (box.width - 2 * edge))
  const y = (sum: number) =>
    most === least
      ? round(box.height / 2)
      : round(edge + ((most - sum) / (most - least)) * (box.height - 2 * edge))
  const corners = (shown: readonly Pick<Price, 'pence' | 'startsOn'>[], until: number): Corner[] =>
    shown.flatMap(({ pence, startsOn }, index) => {
      const next = shown[index + 1]
      return [
        { x: x(dayNumber(startsOn)), y: y(pence) },
        { x: x(next ? dayNumber(next.startsOn) : until), y: y(pence) },
      ]
    })
  const past = prices.filter(({ startsOn }) => startsOn <= today)
  const ahead = prices.filter(({ startsOn }) => startsOn > today)
  const standing = past.at(-1)
  const from = standing ? [{ pence: standing.pence, startsOn: today }] : []
  return {
    past: path(corners(past, now)),
    ahead: ahead.length === 0 ? '' : path(corners([...from, ...ahead], end)),
    dot: standing ? { x: x(now), y: y(standing.pence) } : null,
  }
}
