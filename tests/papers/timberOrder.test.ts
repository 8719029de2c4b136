import { describe, expect, it } from 'vitest'
import { barMarks, type BarScale } from '../../shared/papers/order/barDiagram.ts'
import { cuttings } from '../../shared/papers/order/cuttings.ts'
import { lineSum, supplies } from '../../shared/papers/order/merchantPart.ts'
import { timberOrder } from '../../shared/papers/order/timberOrder.ts'
import type { TimberOrderInput } from '../../shared/papers/order/timberOrderInput.ts'
import { writeMoney } from '../../shared/pricing/moneyText.ts'
import { pence } from '../../shared/pricing/pence.ts'
import { writeInches, writeShortMm } from '../../shared/units/writeLength.ts'
import { outside, overlaps } from '../drawing/wordBoxes.ts'
import { longHeader } from '../fixtures/cards.ts'
import { orderInput } from './orderInputs.ts'
import { boxesOn, printable, wordsOf } from './pageBoxes.ts'
import { bytesByZone, printedMeasure, readBack } from './paperReading.ts'

const orders = new Map<number, Promise<TimberOrderInput>>()

/** An order for so many jobs, placed once for all the checks. */
async function orderOf(jobs: number, parts: Partial<TimberOrderInput> = {}): Promise<TimberOrderInput> {
  const known = orders.get(jobs) ?? orderInput(jobs)
  orders.set(jobs, known)
  return { ...(await known), ...parts }
}

/** The same order with everything as long as people really write it, from two suppliers and over many lines. */
async function longOrder(): Promise<TimberOrderInput> {
  const input = await orderOf(3)
  const [line] = input.order.lines
  const [length] = input.order.lengths
  if (!line || !length) throw new Error('an order without lines')
  const lines = Array.from({ length: 40 }, (_, i) => ({
    ...line,
    id: i + 1,
    supplierId: i % 2,
    supplier: i % 2 === 0 ? longHeader.customer.name : 'חצר העצים 12',
    name: `${line.name} ${longHeader.title}`.slice(0, 60 + i),
    length: 2400 + 300 * (i % 9),
    count: 1 + i,
  }))
  const short = Array.from({ length: 60 }, (_, i) => ({
    length: 41.5 + (i >> 1),
    mark: `26-0${i >> 3} ${longHeader.title} ${i >> 2}`,
  }))
  const jobs = input.order.jobs.map((job) => ({ ...job, customer: longHeader.customer.name }))
  const lengths = [
    ...input.order.lengths,
    { ...length, id: 99, count: 30, length: 4200, cuts: short, offcut: 12 },
  ]
  return {
    ...input,
    workshop: longHeader.workshop,
    order: { ...input.order, jobs, lines, lengths, note: longHeader.title },
  }
}

const laid = (input: TimberOrderInput) => timberOrder(input, printedMeasure)

describe('a timber order', () => {
  it.each([1, 3, 6])('for %i jobs reads back with every length, price and sum', async (jobs) => {
    for (const unit of ['mm', 'in'] as const) {
      const input = await orderOf(jobs, { unit })
      const { order } = input
      const write = unit === 'mm' ? writeShortMm : writeInches
      const said = (await readBack(laid(input))).flat()
      for (const line of order.lines)
        for (const words of [
          write(line.length),
          String(line.count),
          writeMoney(pence(line.pence), 'GBP'),
          writeMoney(pence(line.pence * line.count), 'GBP'),
        ])
          expect(said).toContain(words)
      for (const { pieces, length, count } of cuttings(order.lengths)) {
        expect(said).toContain(`${count} × ${write(length)}`)
        for (const piece of pieces) expect(said).toContain(`${piece.count} × ${write(piece.length)}`)
      }
    }
  })

  it.each([1, 3, 6])('for %i jobs has every piece of its plan under one way of cutting', async (jobs) => {
    const { order } = await orderOf(jobs)
    const byMark = (all: { length: number; mark: string; count: number }[]) => {
      const sums = new Map<string, number>()
      for (const { length, mark, count } of all)
        sums.set(`${length} ${mark}`, (sums.get(`${length} ${mark}`) ?? 0) + count)
      return sums
    }
    const planned = order.lengths.flatMap(({ cuts, count }) => cuts.map((cut) => ({ ...cut, count })))
    const printed = cuttings(order.lengths).flatMap(({ pieces, mixed, count }) =>
      pieces.map((piece) => ({ ...piece, count: mixed ? piece.count : piece.count * count })),
    )
    expect(byMark(printed)).toEqual(byMark(planned))
    const shapes = cuttings(order.lengths).map(({ from, length, itemId, cuts }) =>
      JSON.stringify([from, length, itemId, cuts.map((cut) => cut.length)]),
    )
    expect(new Set(shapes).size).toBe(shapes.length)
    if (jobs > 1) expect(shapes.length).toBeLessThan(order.lengths.length)
  })

  it('sums what is asked of the merchant before tax, which is the cost of its plan', async () => {
    const input = await orderOf(3)
    const sums = supplies(input.order.lines).map(({ lines }) =>
      lines.reduce((sum, line) => sum + lineSum(line), 0),
    )
    expect(sums.reduce((all, one) => all + one, 0)).toBe(input.order.cost)
    expect((await readBack(laid(input))).flat()).toContain(writeMoney(pence(input.order.cost), 'GBP'))
  })

  it('tells the supplier nothing of whom it is for: that stands under the line to tear at', async () => {
    const input = await orderOf(3)
    const [page] = laid(input).pages
    const tear = page?.marks.find((mark) => mark.kind === 'line' && mark.dash !== undefined)
    const at = tear?.kind === 'line' ? tear.y1 : 0
    expect(at).toBeGreaterThan(100)
    for (const { number, customer } of input.order.jobs)
      for (const mark of page?.marks ?? [])
        if (mark.kind === 'text' && (mark.text.includes(number) || mark.text.includes(customer)))
          expect(mark.y).toBeGreaterThan(at)
    expect(wordsOf(laid(input), 0)).toContain(input.order.jobs[0]?.number)
  })

  it('has a part for each supplier', async () => {
    const input = await longOrder()
    const pages = laid(input).pages.map((_, i) => wordsOf(laid(input), i))
    expect(pages.filter((words) => words.includes('Sum before tax'))).toHaveLength(2)
  })

  it('says from which place of the rack each piece is taken, and what goes back', async () => {
    const input = await orderOf(1)
    const said = (await readBack(laid(input))).flat().join(' ')
    const taken = input.order.lengths.filter(({ from }) => from === 'rack')
    expect(taken.length).toBeGreaterThan(0)
    expect(said).toContain('Take from the rack first')
    expect(said).toContain('shelf B, left')
    const kept = input.order.lengths.filter(({ offcut }) => offcut >= input.order.request.leastOffcut)
    expect(kept.length).toBeGreaterThan(0)
    for (const { offcut } of kept) expect(said).toContain(writeShortMm(offcut))
    expect(said).toContain('Where it was put')
  })

  it('keeps its words within the margins and none over another, however long they are', async () => {
    for (const input of [
      await orderOf(1),
      await orderOf(3),
      await orderOf(6, { unit: 'in' }),
      await longOrder(),
    ])
      for (const format of ['a4', 'letter'] as const)
        for (const page of timberOrder({ ...input, format }).pages) {
          const boxes = boxesOn(page)
          expect(outside(boxes, printable(page))).toEqual([])
          expect(overlaps(boxes)).toEqual([])
          for (const mark of page.marks)
            if (mark.kind === 'box') expect(mark.x + mark.width).toBeLessThanOrEqual(page.width - 10)
        }
  })

  it('sets lengths to cut in 14 points', async () => {
    const input = await orderOf(3)
    const marks = laid(input).pages.flatMap((page) => page.marks)
    const sizes = new Set(
      input.order.lengths.flatMap(({ cuts }) => cuts.map(({ length }) => writeShortMm(length))),
    )
    for (const mark of marks) if (mark.kind === 'text' && sizes.has(mark.text)) expect(mark.size).toBe(14)
  })

  it('warns at the saw', async () => {
    const input = await orderOf(1, { dust: { treated: true, harmful: ['iroko'] } })
    const words = laid(input)
      .pages.map((_, i) => wordsOf(laid(input), i))
      .join(' ')
    expect(words).toContain('Guards and riving knife on')
    expect(words).toContain('Dust of iroko')
    expect(words).toContain('Treated timber')
  })

  it('has the same bytes in five time zones', async () => {
    const input = await orderOf(3)
    const [first, ...others] = await bytesByZone(() => laid(input))
    for (const other of others) expect(Buffer.compare(first ?? Buffer.alloc(0), other)).toBe(0)
  })
})

describe('the diagram of a length', () => {
  const scale: BarScale = {
    perMm: 0.04,
    kerf: 4,
    endTrim: 20,
    leastOffcut: 450,
    write: writeShortMm,
    measure: printedMeasure,
  }
  const length = {
    ...{ id: 1, itemId: 1, name: 'ex 25 × 125', length: 4200, count: 3, done: 0, rackPieceIds: [] },
    cuts: [
      { length: 1780, mark: '26-014 board' },
      { length: 1780, mark: '26-014 board' },
      { length: 93, mark: '26-017 block' },
    ],
    offcut: 515,
  }

  it('is to scale from the squared end: pieces, saw cuts between them, and what is left', () => {
    const marks = barMarks({ ...length, from: 'merchant' }, { x: 12, y: 50 }, scale)
    const pieces = marks.flatMap((mark) => (mark.kind === 'box' && mark.stroke ? [mark] : []))
    const widths = [1780, 1780, 93].map((mm) => mm * 0.04)
    pieces.forEach(({ width }, i) => expect(width).toBeCloseTo(widths[i] ?? 0, 9))
    // 20 lost on squaring, then each piece and a cut of 4: 20, 1804, 3588 from the end.
    const starts = [20, 1804, 3588].map((mm) => 12 + mm * 0.04)
    pieces.forEach(({ x }, i) => expect(x).toBeCloseTo(starts[i] ?? 0, 9))
    // 20 + 1784 + 1784 + 97 + 515 is the whole 4200.
    const ends = marks.flatMap((mark) => (mark.kind === 'line' ? [mark.x1, mark.x2] : []))
    expect(Math.max(...ends)).toBeCloseTo(12 + 4200 * 0.04, 9)
  })

  it('gives a piece of the rack no squaring', () => {
    const marks = barMarks({ ...length, from: 'rack' }, { x: 12, y: 50 }, scale)
    const first = marks.find((mark) => mark.kind === 'box' && mark.stroke)
    expect(first?.kind === 'box' && first.x).toBeCloseTo(12, 9)
  })

  it('writes a length where it has room, a number over each kind, and what goes to the rack', () => {
    const words = barMarks({ ...length, from: 'merchant' }, { x: 12, y: 50 }, scale).flatMap((mark) =>
      mark.kind === 'text' ? [mark.text] : [],
    )
    expect(words).toEqual(['1', '1780', '1780', '2', '515'])
    const wide = barMarks({ ...length, offcut: 900, from: 'merchant' }, { x: 12, y: 50 }, scale)
    expect(wide.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []))).toContain('900 to rack')
  })
})
