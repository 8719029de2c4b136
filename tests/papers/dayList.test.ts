import { describe, expect, it } from 'vitest'
import { writeShortMm } from '../../shared/units/writeLength.ts'
import { dayList } from '../../shared/papers/dayList/dayList.ts'
import { dayPieces, dayRips, settingGroups, totals } from '../../shared/papers/dayList/dayCuts.ts'
import type { DayJob, DayListInput } from '../../shared/papers/dayList/dayListInput.ts'
import { outside, overlaps } from '../drawing/wordBoxes.ts'
import { longHeader } from '../fixtures/cards.ts'
import { wholeCards } from '../fixtures/wholeCards.ts'
import { allWords, boxesOn, printable } from './pageBoxes.ts'
import { bytesByZone, printedMeasure, readBack } from './paperReading.ts'

const jobOf = (start: string, number: string): DayJob => {
  const found = wholeCards.find(({ name }) => name.startsWith(start))
  if (!found) throw new Error(`no gate ${start}`)
  const { spec, design } = found.input
  return { number, customer: 'A. Customer', title: 'Side gate', spec, design }
}

const listOf = (jobs: DayJob[], parts: Partial<DayListInput> = {}): DayListInput => ({
  workshop: 'Workshop of the tests',
  day: '2026-05-04',
  jobs,
  unit: 'mm',
  format: 'a4',
  ...parts,
})

const several = [jobOf('01', '26-011'), jobOf('15', '26-012'), jobOf('20', '26-013'), jobOf('08', '26-014')]

describe('the day list of each of forty gates', () => {
  it.each(wholeCards)('$name reads back with every length to cut and to finish', async ({ name, input }) => {
    const job = jobOf(name, '26-017')
    const said = (await readBack(dayList(listOf([job]), printedMeasure))).flat()
    for (const { blank, length, quantity } of input.design.cuts)
      for (const figure of [blank, length, quantity]) expect(said).toContain(writeShortMm(figure))
    for (const { fence } of dayRips([job])) expect(said).toContain(writeShortMm(fence))
  })

  it.each(wholeCards)('$name has each piece once, under a setting that its saws know', ({ name, input }) => {
    const job = jobOf(name, '26-017')
    const pieces = dayPieces([job])
    const grouped = settingGroups(pieces).flatMap(({ sections }) => sections.flatMap((group) => group.pieces))
    expect(new Set(grouped)).toEqual(new Set(pieces))
    expect(grouped).toHaveLength(input.design.cuts.length)
    const known = new Set(
      input.design.sawSettings.map(({ angle, lean }) => `${lean} ${Math.round(angle * 10) / 10}`),
    )
    for (const { setting } of settingGroups(pieces))
      if (setting.kind === 'flat' || setting.kind === 'bevel')
        expect(known).toContain(`${setting.kind} ${setting.angle}`)
    const fences = input.design.leaves.flatMap(({ boards }) => boards.filter(({ fence }) => fence !== null))
    expect(dayRips([job])).toHaveLength(fences.length)
  })

  it.each(wholeCards)('$name keeps its words within the margins and none over another', ({ name }) => {
    const job = {
      ...jobOf(name, longHeader.number),
      customer: longHeader.customer.name,
      title: longHeader.title,
    }
    for (const parts of [{}, { format: 'letter' as const }, { unit: 'in' as const }])
      for (const page of dayList(listOf([job], { ...parts, workshop: longHeader.workshop })).pages) {
        const boxes = boxesOn(page)
        expect(outside(boxes, printable(page))).toEqual([])
        expect(overlaps(boxes)).toEqual([])
      }
  })
})

describe('a day list over several jobs', () => {
  it('puts one setting of the saw once, square first, then by angle', () => {
    const groups = settingGroups(dayPieces(several)).map(({ setting }) => setting)
    expect(groups.map(({ kind, angle }) => `${kind} ${angle}`)).toEqual([
      'square 0',
      'flat 8',
      'flat 28.8',
      'flat 41.3',
      'bevel 15',
      'marked 0',
    ])
  })

  it('has like sections of several jobs together, the longest first', () => {
    const [square] = settingGroups(dayPieces(several))
    const boards = square?.sections.find(({ section }) => section.startsWith('ex 25 × 125'))
    expect(new Set(boards?.pieces.map(({ job }) => job.number))).toEqual(
      new Set(['26-011', '26-012', '26-013', '26-014']),
    )
    const blanks = boards?.pieces.map(({ blank }) => blank) ?? []
    expect(blanks).toEqual([...blanks].sort((a, b) => b - a))
  })

  it('counts the pieces of the jobs’ cut lists, and the metres that their blanks take', () => {
    const cuts = several.flatMap(({ design }) => design.cuts)
    const sum = totals(dayPieces(several))
    expect(sum.pieces).toBe(cuts.reduce((all, { quantity }) => all + quantity, 0))
    expect(sum.metres).toBeCloseTo(
      cuts.reduce((all, { quantity, blank }) => all + quantity * blank, 0) / 1000,
      9,
    )
    expect(allWords(dayList(listOf(several))).replace(/\s+/g, ' ')).toContain(
      `In all ${sum.pieces} ${sum.metres.toFixed(1)}`,
    )
  })

  it('has a box to tick on every row, and sets what is cut in 14 points', () => {
    const marks = dayList(listOf(several)).pages.flatMap((page) => page.marks)
    const ticks = marks.filter((mark) => mark.kind === 'box' && mark.width === 5 && mark.height === 5)
    expect(ticks).toHaveLength(dayPieces(several).length + dayRips(several).length)
    const large = marks.flatMap((mark) => (mark.kind === 'text' && mark.size === 14 ? [mark.text] : []))
    for (const { blank, length, quantity } of dayPieces(several))
      for (const figure of [blank, length, quantity]) expect(large).toContain(writeShortMm(figure))
    for (const mark of marks) if (mark.kind === 'text') expect(mark.size).toBeGreaterThanOrEqual(11)
  })

  it('warns at the saw, and of treated timber and harmful dust where there is some', () => {
    const plain = allWords(dayList(listOf([jobOf('01', '26-011')])))
    expect(plain).toContain('Guards and riving knife on')
    expect(plain).toContain('extraction on')
    expect(plain).not.toContain('Treated timber')
    const oak = jobOf('17', '26-015')
    expect(allWords(dayList(listOf([oak])))).toContain('Dust of European oak harms more than most')
    const treated = { ...oak, spec: { ...oak.spec, timbers: { 'European oak': { treated: true } } } }
    expect(allWords(dayList(listOf([treated])))).toContain('never burn offcuts or dust')
  })

  it('says the depth of the blade for the timber and one tooth, leaning or not', () => {
    // 28 through at 15° is 28 / cos 15° = 28.99; the saw's tooth comes on top.
    const [ledges] = dayPieces([jobOf('01', '26-011')]).filter(({ setting }) => setting.kind === 'bevel')
    const [saw] = jobOf('01', '').spec.workshop?.saws ?? []
    expect(ledges?.depths[0]).toBeCloseTo(28 / Math.cos((15 * Math.PI) / 180) + (saw?.tooth ?? 5), 6)
  })

  it('has the same bytes in five time zones', async () => {
    const [first, ...others] = await bytesByZone(() => dayList(listOf(several), printedMeasure))
    for (const other of others) expect(Buffer.compare(first ?? Buffer.alloc(0), other)).toBe(0)
  })
})
