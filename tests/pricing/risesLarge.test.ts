import { describe, expect, it } from 'vitest'
import type { PriceBook } from '../../shared/pricing/book.ts'
import { everyPrice, percentRise } from '../../shared/pricing/percentRise.ts'
import { pence } from '../../shared/pricing/pence.ts'
import { riseEffects } from '../../shared/pricing/riseEffects.ts'
import { day, book, all, risen } from './quotedGates.ts'

/** A book of 5,000 timber lines with ten prices each behind the full book’s own. */
function largeBook(): PriceBook {
  const items = [...book.items]
  const prices = [...book.prices]
  for (let line = 0; line < 5000; line += 1) {
    const itemId = items.length + 1
    const facts = {
      use: 'other',
      species: `timber ${line % 50}`,
      exThickness: 25,
      exWidth: 100,
      thickness: 20 + (line % 30),
      width: 100 + line,
      tongue: null,
      groove: null,
      treated: false,
    } as const
    items.push({ id: itemId, kind: 'timber', name: `line ${line}`, facts, retired: false, sample: true })
    for (let month = 1; month <= 10; month += 1) {
      const startsOn = `2025-${String(month).padStart(2, '0')}-01`
      prices.push({
        itemId,
        supplierId: 1,
        unit: 'metre',
        size: null,
        id: prices.length + 1,
        pence: pence(100 + line + month),
        startsOn,
        origin: 'list',
        riseId: null,
        addedAt: '',
      })
    }
  }
  return { ...book, items, prices }
}

describe('two hundred quotations over a book of 5,000 lines with ten prices each', () => {
  it('show their effects at once, and how soon is printed', () => {
    const large = largeBook()
    const quoted = Array.from({ length: 5 }, () => all).flat()
    const after = risen(
      large,
      percentRise({ book: large, filter: { ...everyPrice, kind: 'timber' }, bp: 400, day }),
    )
    const takes = Array.from({ length: 7 }, () => {
      const from = performance.now()
      expect(riseEffects({ quoted, before: large, after, day })).toHaveLength(200)
      return performance.now() - from
    })
    const least = Math.min(...takes)
    process.stdout.write(
      `effects on 200 quotations: ${least.toFixed(1)} ms at best of 7, ${Math.max(...takes).toFixed(1)} ms at worst\n`,
    )
    // An aim of a few ms, which the bench `price-rise` shows; what is held here is that it doesn’t hang.
    expect(least).toBeLessThan(1000)
  })
})
