import type { ItemKind } from '../../shared/pricing/item.ts'
import type { Pence } from '../../shared/pricing/pence.ts'
import { sizedUnits, type PriceUnit } from '../../shared/pricing/price.ts'
import { unitsOf } from '../../shared/pricing/unitsOfKind.ts'

/** A line of the price list while it is entered. supplierId null: a supplier not yet in the book, by name. */
export type LineEntry = {
  supplierId: number | null
  supplierName: string
  code: string
  unit: PriceUnit
  size: number | null
  pence: Pence | null
}

export const emptyLine = (kind: ItemKind, supplierId: number | null): LineEntry => ({
  supplierId,
  supplierName: '',
  code: '',
  unit: unitsOf[kind][0] ?? 'each',
  size: null,
  pence: null,
})

/** What is still wanted before a line can be kept, in a sentence; '' when nothing is. */
export function lineWants(entry: LineEntry, kind: ItemKind): string {
  const wants: string[] = []
  if (kind !== 'work' && entry.supplierId === null && entry.supplierName.trim() === '')
    wants.push('the supplier’s name')
  if (entry.unit in sizedUnits && entry.size === null) {
    const sizes = { length: 'the length', box: 'how many are in a box', tin: 'the litres in a tin' }
    wants.push(sizes[entry.unit as keyof typeof sizes])
  }
  if (entry.pence === null) wants.push('the price')
  if (wants.length === 0) return ''
  const last = wants.pop() ?? ''
  return `Still wanted: ${wants.length > 0 ? `${wants.join(', ')} and ` : ''}${last}.`
}
