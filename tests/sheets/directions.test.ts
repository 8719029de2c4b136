import { describe, expect, it } from 'vitest'
import { makeCard } from '../../electron/makeCard.ts'
import { visualOrder } from '../../electron/paint/visualOrder.ts'
import { isolateNames } from '../../shared/papers/isolateNames.ts'
import { header } from '../fixtures/cards.ts'
import { wholeCards } from '../fixtures/wholeCards.ts'
import { opened } from '../papers/paperReading.ts'

/** What stands on the page from left to right. */
const seen = (text: string): string =>
  visualOrder(text)
    .map((part) => (part.backwards ? [...part.text].reverse().join('') : part.text))
    .join('')

describe('names written from the right', () => {
  it('leave the figure that follows them where it is', () => {
    const name = 'שער'
    expect(seen(`saw ${name}: 900 mm`)).toBe('saw 900 :רעש mm')
    const kept = isolateNames({ text: `saw ${name}: 900 mm`, name }, name)
    expect(seen(kept.text)).toBe('saw רעש: 900 mm')
  })

  it('have their own figures in order, on the side that their readers look for them', () => {
    expect(seen(isolateNames('רחוב 217', ['רחוב 217']))).toBe('217 בוחר')
    expect(seen(`${isolateNames('רחוב 217', ['רחוב 217'])}, 12 mm`)).toBe('217 בוחר, 12 mm')
    expect(seen('שער 1830 mm')).toContain('1830')
  })

  it('can’t be turned about, nor turn anything, by signs that nobody sees', () => {
    expect(seen('never closed \u202E900 mm')).toBe('never closed 900 mm')
    expect(seen('over\u202Eridden\u202C 12 mm')).toBe('overridden 12 mm')
    expect(seen('\u2067mark\u2069 34 mm\u200F')).toBe('mark 34 mm')
  })

  it('are left alone where there are none', () => {
    const plain = { title: 'Side gate', sizes: [900, 1800], none: null }
    expect(isolateNames(plain, plain)).toBe(plain)
  })

  it('are kept to themselves on a card as it is made: every figure of it reads as one of a plain card does', async () => {
    const gate = wholeCards[0]?.input
    if (!gate) throw new Error('no gate')
    const figuresOf = async (name: string) => {
      const saws = [{ name, kerf: 3, tooth: 6, guideLeft: 41, guideRight: 107 }]
      const { workshop } = gate.spec
      const spec = workshop ? { ...gate.spec, workshop: { ...workshop, saws } } : gate.spec
      const { bytes } = await makeCard({ ...gate, spec, header: { ...header, title: name } })
      const pdf = await opened(bytes)
      const items: string[] = []
      for (let page = 1; page <= pdf.numPages; page++)
        for (const item of (await (await pdf.getPage(page)).getTextContent()).items)
          if ('str' in item) items.push(...item.str.split(/\s+/).filter((word) => /^\d[\d.]*$/.test(word)))
      return items.sort()
    }
    expect(await figuresOf('مسور')).toEqual(await figuresOf('saw'))
  })
})
