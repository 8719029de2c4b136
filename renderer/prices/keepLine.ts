import type { PriceItem } from '../../shared/pricing/item.ts'
import { sentences } from '../api.ts'
import type { usePricesStore } from '../stores/prices.ts'
import type { LineEntry } from './lineEntry.ts'

/** A line of the list to be kept for an item: who sells it, how, for how much; the lengths kept there; whether it is usually bought there. */
export type LineToKeep = { item: PriceItem; entry: LineEntry; lengths: number[]; usual: boolean }

/** Puts a line of the price list down: its supplier where it is a new one, how that keeps it, its price from today. Gives what went wrong, '' for nothing. */
export async function keepLine(
  prices: ReturnType<typeof usePricesStore>,
  { item, entry, lengths, usual }: LineToKeep,
): Promise<string> {
  if (entry.pence === null) return 'Still wanted: the price.'
  let supplierId = item.kind === 'work' ? null : entry.supplierId
  if (item.kind !== 'work') {
    if (supplierId === null) {
      const added = await prices.addSupplier({ name: entry.supplierName.trim(), phone: '', notes: '' })
      if (!added.ok) return sentences(added)
      supplierId = added.value.id
    }
    const supply = { itemId: item.id, supplierId, code: entry.code.trim(), lengths, usual }
    const kept = await prices.keepSupply(supply)
    if (!kept.ok) return sentences(kept)
  }
  const { unit, size, pence } = entry
  return sentences(
    await prices.addPrice({ itemId: item.id, supplierId, unit, size, pence, startsOn: prices.today }),
  )
}
