import { describe, expect, it } from 'vitest'
import { careNote } from '../../shared/papers/care/careNote.ts'
import { dayList } from '../../shared/papers/dayList/dayList.ts'
import { labelLayout, labelSheets } from '../../shared/papers/labels/labelLayouts.ts'
import { partLabels } from '../../shared/papers/labels/partLabels.ts'
import { timberOrder } from '../../shared/papers/order/timberOrder.ts'
import type { PaperDocument } from '../../shared/papers/page.ts'
import { inkBounds } from '../electron/inkBounds.ts'
import { longHeader } from '../fixtures/cards.ts'
import { wholeCards } from '../fixtures/wholeCards.ts'
import { orderInput } from './orderInputs.ts'
import { opened, painted, pixels, printedMeasure } from './paperReading.ts'
import { business } from './quotationInputs.ts'

const chosen = ['01', '15', '24', '39'].map((start) => {
  const found = wholeCards.find(({ name }) => name.startsWith(start))
  if (!found) throw new Error(`no gate ${start}`)
  return { ...found.input, header: longHeader, handover: { business } }
})
const formats = ['a4', 'letter'] as const

async function expectClearEdges(paper: PaperDocument): Promise<void> {
  const pdf = await opened(await painted(paper))
  for (let page = 1; page <= pdf.numPages; page++) {
    const ink = await inkBounds(pdf, page)
    for (const side of ['left', 'top', 'right'] as const) expect(ink[side]).toBeGreaterThanOrEqual(10)
    expect(ink.bottom).toBeGreaterThanOrEqual(15)
  }
}

describe('ink, read off the pixels', () => {
  it.each(formats)('keeps 10 mm from the edges and 15 from the foot on %s', async (format) => {
    for (const input of chosen) await expectClearEdges(careNote({ ...input, format }, printedMeasure))
    const jobs = chosen.map(({ spec, design, header }) => ({
      number: header.number,
      customer: header.customer.name,
      title: header.title,
      spec,
      design,
    }))
    const day = { workshop: longHeader.workshop, day: '2026-05-04', jobs, unit: 'mm' as const, format }
    await expectClearEdges(dayList(day, printedMeasure))
    await expectClearEdges(timberOrder(await orderInput(3, { format }), printedMeasure))
  })

  it.each(labelSheets)('keeps 3 mm inside every label: %s', async (sheet) => {
    const fine = 6
    for (const input of chosen.slice(0, 3)) {
      const pdf = await opened(
        await painted(partLabels({ ...input, labels: { sheet, start: 1 } }, printedMeasure)),
      )
      const layout = labelLayout(sheet, 'a4')
      const { data, width, height } = await pixels(pdf, 1, fine)
      const stray: string[] = []
      for (let y = 0; y < height; y++)
        for (let x = 0; x < width; x++) {
          if ((data[(y * width + x) * 4] ?? 255) > 200) continue
          const within = (at: number, from: number, size: number): number => {
            const into = ((at + 0.5) / fine - from) % size
            return Math.min(into, size - into)
          }
          const clear = Math.min(within(x, layout.left, layout.width), within(y, layout.top, layout.height))
          if (clear < 2.8) stray.push(`${x} ${y}`)
        }
      expect(stray).toEqual([])
    }
  })
})
