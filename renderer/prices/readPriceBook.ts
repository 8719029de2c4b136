import type { PriceBook } from '../../shared/pricing/book.ts'
import type { Price } from '../../shared/pricing/price.ts'
import { good, type Result } from '../../shared/problem.ts'
import { request } from '../api.ts'

/** Every price that counts, some at a time; undefined where prices changed while they came, so that they don't fit together. */
async function allPrices(): Promise<Result<Price[] | undefined>> {
  const prices: Price[] = []
  let stamp: string | undefined
  for (;;) {
    const some = await request('prices.some', { after: prices.at(-1)?.id ?? 0 })
    if (!some.ok) return some
    stamp ??= some.value.stamp
    if (stamp !== some.value.stamp) return good(undefined)
    prices.push(...some.value.prices)
    if (!some.value.more) return good(prices)
  }
}

/** The price book as it stands. However long it is, it comes in pieces that don't hold the window up. */
export async function readPriceBook(): Promise<Result<PriceBook>> {
  const lines = await request('prices.lines', {})
  if (!lines.ok) return lines
  for (;;) {
    const prices = await allPrices()
    if (!prices.ok) return prices
    if (prices.value) return good({ ...lines.value, prices: prices.value })
  }
}
