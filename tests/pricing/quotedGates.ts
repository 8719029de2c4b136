import type { PriceBook } from '../../shared/pricing/book.ts'
import type { Price } from '../../shared/pricing/price.ts'
import type { QuotedMoney } from '../../shared/pricing/quotation.ts'
import type { StandingJob } from '../../shared/pricing/riseEffects.ts'
import { standardMoney } from '../../shared/pricing/standardMoney.ts'
import { standardTimes } from '../../shared/pricing/standardTimes.ts'
import { standingBook } from '../../shared/pricing/standingBook.ts'
import { plainEntry } from '../../shared/pricing/terms.ts'
import { estimateFrom } from '../../shared/pricing/workEstimate.ts'
import { fullBook, neededGates, type NeededGate } from './pricedGates.ts'

export const day = '2026-06-15'
export const later = '2026-07-01'
export const { book } = fullBook()
export const settings = standardMoney
export const times = standardTimes

export function moneyOf(gates: readonly NeededGate[], of: PriceBook = book): QuotedMoney {
  const open = standingBook(of, day)
  return {
    settings,
    times,
    on: day,
    validUntil: '2026-07-15',
    options: gates.map(({ name, spec, needs }) => ({
      name,
      spec,
      description: [],
      needs,
      entry: plainEntry,
      estimate: estimateFrom(open, { needs, entry: plainEntry, settings, times }),
      offer: [],
    })),
  }
}

export const jobOf = (
  number: number,
  gates: readonly NeededGate[],
  option: number | null = null,
): StandingJob => ({
  jobId: number,
  number: `26-${number}`,
  customer: `Customer ${number}`,
  title: 'a gate',
  paperId: number + 500,
  money: moneyOf(gates),
  acceptance: option === null ? null : { option },
})

export const all = neededGates.map((gate, index) => jobOf(index + 1, [gate]))

/** A book with prices added as a rise would add them. */
export const risen = (
  of: PriceBook,
  prices: readonly Omit<Price, 'id' | 'origin' | 'riseId' | 'addedAt'>[],
): PriceBook => ({
  ...of,
  prices: [
    ...of.prices,
    ...prices.map((price, index) => ({
      ...price,
      id: of.prices.length + 1 + index,
      origin: 'a rise',
      riseId: 1,
      addedAt: '',
    })),
  ],
})

/** What an option costs with its overhead, worked out the long way by a whole estimate. */
export function costAt(of: PriceBook, gate: NeededGate, on: string): number {
  const { cost, overhead } = estimateFrom(standingBook(of, on), {
    needs: gate.needs,
    entry: plainEntry,
    settings,
    times,
  })
  return cost + overhead
}
