import type { Supplier } from '../../shared/pricing/item.ts'
import type { RowFilter } from './priceRows.ts'
import { kindWords } from './priceWords.ts'

/** What a filter shows, in words that still tell a year later: 'all timber from Much Mallet, not touched since 2026-03-01'. */
export function filterWords(filter: RowFilter, suppliers: readonly Supplier[]): string {
  const { kind, supplierId, untouchedSince, search } = filter
  const goods =
    kind === 'retired'
      ? 'what is no longer offered'
      : kind === null
        ? 'the whole list'
        : `all ${kindWords[kind].toLowerCase()}`
  const supplier = suppliers.find(({ id }) => id === supplierId)?.name
  return [
    `${goods}${supplier ? ` from ${supplier}` : ''}`,
    ...(search.trim() === '' ? [] : [`with “${search.trim()}”`]),
    ...(untouchedSince === null ? [] : [`not touched since ${untouchedSince}`]),
  ].join(', ')
}
