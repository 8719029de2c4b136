import type { PriceLine } from '../../shared/pricing/price.ts'
import { plannedTimber } from '../../shared/pricing/planTimber.ts'
import type { Asked } from '../../shared/pricing/costedLine.ts'
import type { Needs } from '../../shared/pricing/needs.ts'
import { standardMoney } from '../../shared/pricing/standardMoney.ts'
import { standardTimes } from '../../shared/pricing/standardTimes.ts'
import { plainEntry } from '../../shared/pricing/terms.ts'
import { aBook, needs as allNeeds, section, timberFacts } from './aWorkedEstimate.ts'

/** Blanks that come on two lengths of 4.8 m by the plan and on three by first fit. */
export const fourAndTwo = [
  { mark: 'ledge', length: 1905, quantity: 2 },
  { mark: 'board', length: 1430, quantity: 4 },
]

/** Needs of timber alone, of one section. */
export const needs: Needs = {
  ...allNeeds,
  timber: [{ kind: 'timber', section, use: 'ledges', pieces: fourAndTwo }],
  fixings: [],
  ironmongery: [],
  work: [],
}

export const asked = (over: Partial<Asked> = {}): Asked => ({
  needs,
  entry: plainEntry,
  settings: standardMoney,
  times: standardTimes,
  buyTimber: plannedTimber,
  ...over,
})

export const id = `timber.${section.name}`

type Offer = Pick<PriceLine, 'unit' | 'size'> & { pence: number; supplierId?: number }

/** A book with the section at some prices, and the lengths each supplier keeps. */
export function timberBook(offers: readonly Offer[], kept: Record<number, number[]> = {}) {
  const book = aBook(['timber'])
  const itemId = book.addItem('timber', section.name, timberFacts)
  for (const { pence: sum, ...line } of offers) book.addPrice({ itemId, ...line }, sum)
  for (const [supplierId, lengths] of Object.entries(kept))
    book.supplies.push({ itemId, supplierId: Number(supplierId), code: '', lengths, usual: false })
  return { ...book, itemId }
}
