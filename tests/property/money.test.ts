import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readMoney, writeMoney } from '../../shared/pricing/moneyText.ts'
import { mostPence, pence } from '../../shared/pricing/pence.ts'
import { marginOfMarkup, profitOn } from '../../shared/pricing/profit.ts'
import { splitPence } from '../../shared/pricing/splitPence.ts'
import { taxOn } from '../../shared/pricing/tax.ts'
import { currencies, taxRoundings } from '../../shared/pricing/terms.ts'
import { seed, soak } from '../fixtures/sample.ts'

const numRuns = soak ? 200_000 : 10_000
process.stdout.write(`Money: ${numRuns} random sums a property, seed ${seed}\n`)

const sum = fc
  .oneof(fc.integer({ min: -2000, max: 2000 }), fc.integer({ min: -mostPence, max: mostPence }))
  .map(pence)
const weight = fc.oneof(fc.integer({ min: 0, max: 5 }), fc.nat(mostPence))

describe('a random sum', () => {
  it('shared out by any weights loses and makes no penny, and no share is a penny off its due', () => {
    fc.assert(
      fc.property(sum, fc.array(weight, { minLength: 1, maxLength: 12 }), (total, weights) => {
        const shares = splitPence(total, weights)
        expect(shares.reduce((all: bigint, share) => all + BigInt(share), 0n)).toBe(BigInt(total))
        const all = weights.reduce((one: bigint, other) => one + BigInt(other), 0n)
        if (all === 0n) return
        shares.forEach((share, index) => {
          const off = BigInt(share) * all - BigInt(total) * BigInt(weights[index] as number)
          expect(off < all && off > -all).toBe(true)
        })
      }),
      { seed, numRuns },
    )
  })

  it('shared out gives the odd pennies to those that fell shortest, the earlier of two alike', () => {
    fc.assert(
      fc.property(fc.nat(100_000), fc.array(fc.nat(50), { minLength: 2, maxLength: 8 }), (total, weights) => {
        const shares = splitPence(pence(total), weights)
        const all = weights.reduce((one, other) => one + other, 0)
        if (all === 0) return
        const short = weights.map((one) => (total * one) % all)
        const extra = shares.map(
          (share, index) => share - Math.floor((total * (weights[index] as number)) / all),
        )
        for (let a = 0; a < weights.length; a += 1)
          for (let b = 0; b < weights.length; b += 1)
            if (extra[a] === 0 && extra[b] === 1)
              expect((short[b] as number) > (short[a] as number) || (short[a] === short[b] && b < a)).toBe(
                true,
              )
      }),
      { seed, numRuns },
    )
  })

  it('is read as it was written, in every currency', () => {
    fc.assert(
      fc.property(sum, fc.constantFrom(...currencies), (amount, currency) => {
        expect(readMoney(writeMoney(amount, currency), currency)).toEqual({ ok: true, value: amount })
      }),
      { seed, numRuns },
    )
  })

  it('any text is read as a sum or refused in a sentence, never thrown at', () => {
    const text = fc.oneof(fc.string(), fc.string({ unit: fc.constantFrom(...'0123456789.,- £€$p') }))
    fc.assert(
      fc.property(text, fc.constantFrom(...currencies), (typed, currency) => {
        const read = readMoney(typed, currency)
        if (read.ok) expect(Number.isSafeInteger(read.value)).toBe(true)
        else expect(read.problems[0]?.message).toMatch(/\.$/)
      }),
      { seed, numRuns },
    )
  })

  it('with a markup makes the margin that the markup is said to come to', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1_000_000, max: 10_000_000 }), fc.nat(30_000), (cost, bp) => {
        const profit = profitOn(pence(cost), { by: 'markup', bp })
        expect(Math.abs((profit * 10_000) / (cost + profit) - marginOfMarkup(bp))).toBeLessThan(0.6)
      }),
      { seed, numRuns },
    )
  })
})

describe('tax on random lines', () => {
  const lines = fc.array(fc.integer({ min: -50_000, max: 500_000 }).map(pence), {
    minLength: 1,
    maxLength: 9,
  })
  it('adds up line by line, and is by each rounding no further from the exact tax than its rule allows', () => {
    fc.assert(
      fc.property(lines, fc.nat(3000), fc.constantFrom(...taxRoundings), (nets, bp, rounding) => {
        const { tenths, totalTenths, tax } = taxOn(nets, bp, rounding)
        expect(tenths.reduce((all, one) => all + one, 0)).toBe(totalTenths)
        const exact = (nets.reduce((all: number, net) => all + net, 0) * bp) / 10_000
        const most = { 'total down': 1, 'total nearest': 0.5, 'line down to 0.1': 1 + 0.1 * nets.length }
        const perLine = rounding === 'line nearest 1' ? 0.5 * nets.length : 1 + 0.25 * nets.length
        expect(Math.abs(tax - exact)).toBeLessThanOrEqual(
          (rounding in most ? most[rounding as keyof typeof most] : perLine) + 1e-6,
        )
        if (rounding === 'total down' && exact >= 0) expect(tax).toBeLessThanOrEqual(exact)
      }),
      { seed, numRuns },
    )
  })
})
