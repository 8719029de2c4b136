import { describe, expect, it } from 'vitest'
import type { Design } from '../../shared/gate/designModel.ts'
import { fittingSheet } from '../../shared/papers/fittingSheet.ts'
import { isPlainLeaf, jobCard } from '../../shared/papers/jobCard.ts'
import type { JobCardInput } from '../../shared/papers/jobCardInput.ts'
import type { PaperDocument } from '../../shared/papers/page.ts'
import { inJobUnit } from '../../shared/papers/stepBlocks.ts'
import { writeShortMm } from '../../shared/units/writeLength.ts'
import { outside, overlaps } from '../drawing/wordBoxes.ts'
import { longHeader } from '../fixtures/cards.ts'
import { wholeCards } from '../fixtures/wholeCards.ts'
import { allWords, boxesOn, printable } from './pageBoxes.ts'
import { everySo } from '../fixtures/sample.ts'

const gateOf = (start: string): JobCardInput => {
  const found = wholeCards.find(({ name }) => name.startsWith(start))
  if (!found) throw new Error(`no gate ${start}`)
  return found.input
}

const words = (paper: PaperDocument): string => allWords(paper).replace(/\s+/g, ' ')
const titles = (paper: PaperDocument): string[] =>
  paper.pages.flatMap(({ marks }) =>
    marks.flatMap((mark) => (mark.kind === 'drawing' ? [mark.drawing.title] : [])),
  )

/** The last words of a step, which stand on the paper as they are whatever its lengths are written in. */
const ending = (text: string): string => text.split(' ').slice(-4).join(' ')

function stepsMissing(design: Design, stage: 'making' | 'hanging', said: string): string[] {
  return design.steps
    .filter((step) => step.stage === stage)
    .filter(
      ({ title, text, cautions }) =>
        !said.includes(`${title}.`) ||
        !said.includes(ending(text)) ||
        cautions.some((caution) => !said.includes(ending(caution))),
    )
    .map(({ title }) => title)
}

describe('the card of each of forty gates', () => {
  it('is tried with forty', () => expect(wholeCards).toHaveLength(40))

  it.each(everySo(2, wholeCards))(
    '$name keeps its words within the margins and none over another',
    ({ input }) => {
      for (const parts of [
        {},
        { format: 'letter' as const, header: longHeader, draft: true },
        { unit: 'in' as const },
      ])
        for (const make of [jobCard, fittingSheet])
          for (const page of make({ ...input, ...parts }).pages) {
            const boxes = boxesOn(page)
            expect(outside(boxes, printable(page))).toEqual([])
            expect(overlaps(boxes)).toEqual([])
          }
    },
  )

  it.each(wholeCards)('$name takes no more pages than it may', ({ name, input }) => {
    const plain = isPlainLeaf(input.spec)
    const most = plain ? 3 : input.design.leaves.length > 1 ? 8 : 6
    expect(jobCard(input).pages.length).toBeLessThanOrEqual(most)
    // A Letter sheet is 18 mm lower.
    const letter = jobCard({ ...input, format: 'letter' }).pages.length
    expect(letter).toBeLessThanOrEqual(plain ? most : most + 1)
    // Only the pair with everything on it sends its last steps over to a third.
    const more = name.startsWith('24') ? 3 : 2
    expect(fittingSheet(input).pages.length).toBeLessThanOrEqual(more)
  })

  it.each(wholeCards)('$name lists every piece of the cut list once, with a box to tick', ({ input }) => {
    const { cuts, leaves } = input.design
    const paper = jobCard(input)
    const marks = paper.pages.flatMap((page) => page.marks)
    const lengths = marks.flatMap((mark) =>
      mark.kind === 'text' && mark.size === 14 && mark.weight === 'semibold' ? [mark.text] : [],
    )
    for (const { length, quantity } of cuts)
      for (const figure of [writeShortMm(length), String(quantity)]) expect(lengths).toContain(figure)
    const parts = leaves.flatMap(({ boards, ledges, braces, frame }) => [
      ...boards,
      ...ledges,
      ...braces,
      ...frame,
    ])
    const strip = input.spec.meeting?.edge === 'strip' ? 1 : 0
    expect(cuts.reduce((sum, { quantity }) => sum + quantity, 0)).toBe(parts.length + strip)
    const ticks = marks.filter((mark) => mark.kind === 'box' && mark.width === 5)
    expect(ticks.length).toBeGreaterThanOrEqual(cuts.length)
  })

  it.each(wholeCards)('$name gives every hole, and every fixing is counted', ({ input }) => {
    const said = words(jobCard(input))
    for (const { through, fixing, quantity } of input.design.holes)
      expect(said).toContain(`${through} ${fixing} ${quantity}`)
    const fixings = input.design.leaves.reduce((sum, leaf) => sum + leaf.fixings.length, 0)
    expect(said).toContain(`Fixings: ${fixings} in all`)
    expect(input.design.holes.reduce((sum, { quantity }) => sum + quantity, 0)).toBe(fixings)
  })

  it.each(wholeCards)(
    '$name has every step and caution of making, and of hanging on card or sheet',
    ({ input }) => {
      const card = words(jobCard(input))
      expect(stepsMissing(input.design, 'making', card)).toEqual([])
      expect(stepsMissing(input.design, 'hanging', words(fittingSheet(input)))).toEqual([])
      if (!isPlainLeaf(input.spec)) expect(stepsMissing(input.design, 'hanging', card)).toEqual([])
      for (const { level, message } of input.design.checks)
        if (level === 'caution') expect(card).toContain(ending(message))
    },
  )

  it.each(wholeCards)('$name shows the back and the swing, each at 1 : 50 or larger', ({ input }) => {
    const papers = isPlainLeaf(input.spec) ? [jobCard(input), fittingSheet(input)] : [jobCard(input)]
    const drawn = papers.flatMap(({ pages }) =>
      pages.flatMap(({ marks }) => marks.flatMap((mark) => (mark.kind === 'drawing' ? [mark] : []))),
    )
    for (const start of ['Back', 'Swing'])
      expect(drawn.filter(({ drawing }) => drawing.title.startsWith(start))).toHaveLength(1)
    for (const { scale } of drawn) expect(scale).toBeLessThanOrEqual(50)
  })

  it.each(wholeCards)('$name lists every piece of ironmongery', ({ input }) => {
    const said = words(isPlainLeaf(input.spec) ? fittingSheet(input) : jobCard(input))
    const start = said.indexOf('Ironmongery')
    if (input.spec.ironmongery.length === 0) expect(start).toBe(-1)
    for (const { name } of input.spec.ironmongery) expect(said.slice(start)).toContain(name.split(' ')[0])
  })
})

describe('a whole gate’s card', () => {
  it('of a pair says once what both leaves share, and who hangs where', () => {
    const said = words(jobCard(gateOf('18')))
    for (const part of ['Each leaf 900 × 1800', 'First leaf hung left', 'boards, both leaves'])
      expect(said).toContain(part)
    expect(said.match(/Boards, from the hanging edge/g)).toHaveLength(1)
  })

  it('of a stable door names its halves', () => {
    const said = words(jobCard(gateOf('26')))
    for (const part of ['Lower half 900 × 1150', 'Upper half 900 × 896', 'lower half: boards', 'both halves'])
      expect(said).toContain(part)
  })

  it('of a curved top sets its height out every 50 mm, and doesn’t repeat them in the step', () => {
    const input = gateOf('09')
    const said = words(jobCard(input))
    expect(said).toContain('Setting out the top')
    expect(said).toContain('Mark the heights of the table from the foot')
    expect(said).not.toContain('at these distances from the hanging edge')
    for (const [id, { value }] of Object.entries(input.design.figures))
      if (id.startsWith('top.height.'))
        expect(said).toContain(` ${writeShortMm(Math.floor(value * 2 + 0.5) / 2)} `)
    expect(said).not.toContain('both ends square')
  })

  it('of a framed gate gives its joints and where the ledges meet the stiles', () => {
    const input = gateOf('13')
    const said = words(jobCard(input))
    for (const part of ['Frame joints', 'shoulders apart', 'tenon', 'horn, each end', 'Bottom ledge'])
      expect(said).toContain(part)
    expect(titles(jobCard(input))).toContain('Section through the top rail')
  })

  it('of a notched brace gives its marking lengths beside the detail', () => {
    const input = gateOf('06')
    const notch = input.design.leaves[0]?.braces[0]?.notch
    const said = words(jobCard(input))
    expect(said).toContain(`depth into the ledge ${writeShortMm(notch?.depth ?? 0)} `)
    expect(said).toContain('End grain left')
    expect(titles(jobCard(input)).some((title) => title.startsWith('Notch'))).toBe(true)
  })

  it('of a surveyed opening gives what was measured and the gaps', () => {
    const said = words(jobCard(gateOf('29')))
    for (const part of ['The opening, as measured', 'widths differ by', 'gap over the ground'])
      expect(said).toContain(part)
  })

  it('shows layers, swing, meeting and ground where a gate has them', () => {
    const shown = titles(jobCard(gateOf('34')))
    for (const start of ['Back', 'Section', 'How it goes', 'Swing', 'Ground', 'Where the leaves meet'])
      expect(shown.filter((title) => title.startsWith(start))).toHaveLength(1)
  })

  it('puts the job’s own unit first in the steps', () => {
    expect(inJobUnit('cut to 1820 mm (71 ⅝″) from the end', 'in')).toBe('cut to 71 ⅝″ (1820 mm) from the end')
    expect(inJobUnit('cut to 1820 mm (71 ⅝″) from the end', 'mm')).toBe('cut to 1820 mm (71 ⅝″) from the end')
    expect(words(jobCard({ ...gateOf('13'), unit: 'in' }))).toMatch(/″ \(\d+(\.\d)? mm\)/)
  })
})
