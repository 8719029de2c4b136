import { describe, expect, it } from 'vitest'
import { standardDraft } from '../../shared/gate/standardSpec.ts'
import { gateWords, remembered, sizeWordsOf } from '../../shared/job/gateWords.ts'

const leaf = (width: number | null, height: number | null) => ({ from: 'leaf' as const, width, height })

describe('the words a gate is remembered by', () => {
  it('say its sizes from the limits on, and nothing of the usual gate or of sizes to come', () => {
    const { wide, narrow, tall, short } = remembered
    const said = (width: number | null, height: number | null, leaves: 1 | 2 = 1) =>
      sizeWordsOf({ size: leaf(width, height), leaves }).join(' ')
    expect(said(915, 1790)).toBe('')
    expect(said(null, null)).toBe('')
    expect([said(wide, 1300), said(wide - 1, 1300)]).toEqual(['wide', ''])
    expect([said(narrow, null), said(narrow + 1, null)]).toEqual(['narrow', ''])
    expect([said(900, tall), said(900, tall - 1)]).toEqual(['tall high', ''])
    expect([said(null, short), said(null, short + 1)]).toEqual(['short low', ''])
    expect([said(1200, 1900), said(760, 1000)]).toEqual([
      'wide tall high big large',
      'narrow short low small little',
    ])
  })

  it('count both leaves of a pair, and the least width of an opening', () => {
    expect(sizeWordsOf({ size: leaf(610, 1400), leaves: 2 })).toEqual(['wide'])
    const opening = {
      ...{ from: 'opening' as const, widths: [1010, 998, 1022] as [number, number, number] },
      ...{ heights: [1500, 1510] as [number, number], hangingGap: 6, closingGap: 10, groundGap: 50 },
    }
    expect(sizeWordsOf({ size: opening, leaves: 1 })).toEqual([])
  })

  it('tell make, leaves, top, timbers and ironmongery, each word once', () => {
    const spec = standardDraft()
    const words = gateWords({
      ...spec,
      leaves: 2,
      top: { shape: 'bowed', rise: 90 },
      stable: { lowerHeight: 1000, gap: 6 },
      ironmongery: [{ id: 'x', kind: 'hinge', name: 'Strap hinge', quantity: 2 }],
    })
    expect(words).toBe(
      'ledged braced boarded pair double stable bowed arched curved european redwood hinge strap',
    )
  })
})
