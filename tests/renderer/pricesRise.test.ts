import { createPinia, setActivePinia } from 'pinia'
import { beforeEach, describe, expect, it } from 'vitest'
import { risePreview } from '../../shared/pricing/risePreview.ts'
import { pence } from '../../shared/pricing/pence.ts'
import type { NewPrice } from '../../shared/pricing/price.ts'
import { bad, good } from '../../shared/problem.ts'
import { usePricesStore } from '../../renderer/stores/prices.ts'
import { useRiseStore } from '../../renderer/stores/rise.ts'
import { bookAnswers, priceBook } from './priceBook.ts'

type Applied = { prices: NewPrice[]; origin: string; stamp: string }

/** A carrier with the invented book behind it, that says what it was asked to write. moved: somebody else changed prices meanwhile. */
function carrier() {
  const asked: Applied[] = []
  const self = { asked, moved: false }
  const answers = {
    ...bookAnswers(priceBook),
    'prices.rises': async () => good([]),
    'prices.preview': async ({ prices }: { prices: NewPrice[] }) =>
      good(risePreview({ book: priceBook(), newPrices: prices, quoted: [], day: '2026-06-15' })),
    'prices.apply': async (given: Applied) => {
      if (self.moved)
        return bad({ code: 'stale', field: '', message: 'Prices changed meanwhile. Look again.' })
      asked.push(given)
      const { origin, prices } = given
      return good({
        id: 1,
        origin,
        addedAt: '2026-06-15T10:00:00.000Z',
        undoneAt: null,
        lines: prices.length,
      })
    },
  }
  Object.defineProperty(window, 'bracework', { value: answers, configurable: true })
  return self
}
const hinge = { itemId: 2, supplierId: 12, unit: 'pair', size: null } as const
const screws = { itemId: 3, supplierId: 12, unit: 'box', size: 200 } as const

describe('a rise on its way', () => {
  beforeEach(() => setActivePinia(createPinia()))
  const draft = (sum: number) => ({
    origin: 'by hand',
    make: (startsOn: string): NewPrice[] => [
      { ...hinge, pence: pence(sum), startsOn },
      { ...screws, pence: pence(1120), startsOn },
    ],
  })

  it('writes the prices that change, from the day chosen, with the stamp of what was looked at', async () => {
    const book = carrier()
    const rise = useRiseStore()
    await rise.propose(draft(1950))
    await rise.start('2026-08-03')
    expect(rise.preview).toMatchObject({
      unchanged: 1,
      lines: [{ old: 1899, new: 1950, startsOn: '2026-08-03' }],
    })
    const stamp = rise.preview?.stamp
    expect(await rise.apply()).toBe(true)
    expect(book.asked).toEqual([
      { prices: [{ ...hinge, pence: 1950, startsOn: '2026-08-03' }], origin: 'by hand', stamp },
    ])
    expect(rise.draft).toBeNull()
    expect(rise.applied).toMatchObject({ lines: 1 })
  })

  it('stays on the table when prices changed meanwhile, with the reason', async () => {
    const book = carrier()
    book.moved = true
    const rise = useRiseStore()
    await rise.propose(draft(1950))
    expect(await rise.apply()).toBe(false)
    expect(rise.trouble).toBe('Prices changed meanwhile. Look again.')
    expect(rise.draft).not.toBeNull()
    await rise.look()
    expect(rise.trouble).toBe('')
  })

  it('takes prices typed in, drops one typed back to what stands, and puts them all back', async () => {
    carrier()
    const prices = usePricesStore()
    await prices.read()
    const row = (key: string) => {
      const found = prices.rows.find((one) => one.key === key)
      if (!found) throw new Error(`no row ${key}`)
      return found
    }
    prices.type(row('2/12/pair/'), pence(2001))
    prices.type(row('3/12/box/200'), pence(1200))
    prices.type(row('3/12/box/200'), pence(1120))
    expect(prices.typedPrices('2026-07-01')).toEqual([{ ...hinge, pence: 2001, startsOn: '2026-07-01' }])
    prices.putBack()
    expect(prices.typedPrices('2026-07-01')).toEqual([])
  })
})
