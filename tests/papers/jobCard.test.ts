import { describe, expect, it } from 'vitest'
import type { GateSpec } from '../../shared/gate/spec.ts'
import { jobCard } from '../../shared/papers/jobCard.ts'
import { paperSizes } from '../../shared/papers/page.ts'
import { inJobUnit } from '../../shared/papers/stepBlocks.ts'
import { outside, overlaps } from '../drawing/wordBoxes.ts'
import { cardOf, header, longHeader } from '../fixtures/cards.ts'
import { hardGates, type HardGate } from '../fixtures/hardGates.ts'
import { allWords, boxesOn, wordsOf } from './pageBoxes.ts'

const hard = (name: string): HardGate => {
  const found = hardGates.find((gate) => gate.name === name)
  if (!found) throw new Error(`no gate called ${name}`)
  return found
}
const usual = hard('the usual gate')

describe('a job card', () => {
  it.each(hardGates)(
    'of $name has one to three pages, its words within the margins and none over another',
    (gate) => {
      for (const parts of [
        {},
        { format: 'a4' as const },
        { format: 'letter' as const, header: longHeader, draft: true },
      ]) {
        const paper = jobCard(cardOf(gate, parts))
        expect(paper.pages.length).toBeGreaterThanOrEqual(1)
        expect(paper.pages.length).toBeLessThanOrEqual(3)
        for (const page of paper.pages) {
          const boxes = boxesOn(page)
          expect(
            outside(boxes, { left: 10, top: 10, right: page.width - 10, bottom: page.height - 15 }),
          ).toEqual([])
          expect(overlaps(boxes)).toEqual([])
        }
      }
    },
  )

  it('says on every page whose gate it is, when it is promised, which revision and which page', () => {
    const paper = jobCard(cardOf(usual))
    paper.pages.forEach((_, i) => {
      for (const words of [
        '26-017',
        'A. Customer, Testford',
        'promised 12 June 2026',
        'revision 3, issued 4 May 2026',
        `page ${i + 1} of ${paper.pages.length}`,
      ])
        expect(wordsOf(paper, i)).toContain(words)
    })
  })

  it('of a draft says so on every page, and has no date', () => {
    const paper = jobCard(cardOf(usual, { draft: true, header: { ...header, issuedAt: null } }))
    paper.pages.forEach((_, i) => expect(wordsOf(paper, i).match(/draft – not issued/g)).toHaveLength(2))
    expect(paper.issuedAt).toBeNull()
    expect(allWords(jobCard(cardOf(usual)))).not.toContain('draft')
  })

  it('has the back elevation on page 1 as large as the sheet allows, and a line that is 100 mm long', () => {
    const [first] = jobCard(cardOf(usual)).pages
    const drawing = first?.marks.find((mark) => mark.kind === 'drawing')
    expect(drawing).toMatchObject({ scale: 10, drawing: { title: 'Back, as it lies on the bench' } })
    const check = first?.marks.find(
      (mark) => mark.kind === 'line' && Math.abs(mark.x2 - mark.x1 - 100) < 1e-9,
    )
    expect(check).toBeDefined()
    expect(wordsOf(jobCard(cardOf(usual)), 0)).toContain('This line is 100 mm: measure it.')
  })

  it('sets the figures that matter large on page 1: leaf, boards, edge boards, angle, saw, length', () => {
    const gate = cardOf(usual)
    const leaf = gate.design.leaves[0]
    const brace = leaf?.braces[0]
    const [first] = jobCard(gate).pages
    const large = (first?.marks ?? []).flatMap((mark) =>
      mark.kind === 'text' && mark.size >= 18 ? [mark.text] : [],
    )
    expect(large).toEqual(
      expect.arrayContaining([
        '900 × 1800',
        String(leaf?.boards.length),
        `${brace?.angle.toFixed(1)}°`,
        String(Math.floor((brace?.length ?? 0) * 2 + 0.5) / 2),
      ]),
    )
    expect(wordsOf(jobCard(gate), 0)).toContain(`saw ${brace?.sawSetting.toFixed(1)}° off square`)
  })

  it('gives every cut with a box to tick, its number, and its length in both units in 13 points or more', () => {
    const input = cardOf(usual)
    const paper = jobCard(input)
    const marks = paper.pages.flatMap((page) => page.marks)
    const texts = marks.flatMap((mark) => (mark.kind === 'text' ? [mark] : []))
    for (const cut of input.design.cuts)
      expect(
        texts.some(
          (mark) => mark.text === String(cut.length) && mark.size >= 13 && mark.weight === 'semibold',
        ),
      ).toBe(true)
    expect(texts.some((mark) => mark.text === '70 ⅞″' && mark.size >= 13)).toBe(true)
    const ticks = marks.filter((mark) => mark.kind === 'box' && mark.width === 5)
    expect(ticks).toHaveLength(input.design.cuts.length)
  })

  it('sets nothing to read under 11 points outside the drawings', () => {
    for (const gate of hardGates)
      for (const page of jobCard(cardOf(gate)).pages)
        for (const mark of page.marks) if (mark.kind === 'text') expect(mark.size).toBeGreaterThanOrEqual(11)
  })

  it('has every step of making, every caution, every hole and the count of fixings', () => {
    const input = cardOf(hard('eight feet by four, a brace in each bay'))
    const words = allWords(jobCard(input)).replace(/\s+/g, ' ')
    for (const step of input.design.steps.filter(({ stage }) => stage === 'making')) {
      expect(words).toContain(
        inJobUnit(`${step.title}. ${step.text}`, input.unit).split(' ').slice(0, 9).join(' '),
      )
      for (const caution of step.cautions) expect(words).toContain(caution.split(' ').slice(-4).join(' '))
    }
    const cautions = input.design.checks.filter((check) => check.level === 'caution')
    expect(cautions.length).toBeGreaterThan(0)
    for (const caution of cautions) expect(words).toContain(caution.message.split(' ').slice(0, 4).join(' '))
    for (const hole of input.design.holes) expect(words).toContain(hole.fixing)
    expect(words).toContain(`Fixings: ${input.design.leaves[0]?.fixings.length} in all`)
  })

  it('gives a guide line for both sides of a guided saw’s base: a 10 mm trim at 40 mm is marked at 50', () => {
    const spec: GateSpec = { ...usual.spec, boards: { ...usual.spec.boards, endTrim: 10 } }
    expect(allWords(jobCard(cardOf({ ...usual, spec })))).toContain('50 left, 115 right')
  })

  it('shows the section and the face of the usual gate, on A4', () => {
    const titles = jobCard(cardOf(usual)).pages.flatMap((page) =>
      page.marks.flatMap((mark) => (mark.kind === 'drawing' ? [mark.drawing.title] : [])),
    )
    expect(titles).toEqual(['Back, as it lies on the bench', 'Section, from above', 'Face'])
  })

  it('is the same whenever it is laid out', () => {
    expect(jobCard(cardOf(usual))).toEqual(jobCard(cardOf(usual)))
  })

  it('fits the sheet it is asked for', () => {
    for (const format of ['a4', 'letter'] as const)
      for (const page of jobCard(cardOf(usual, { format })).pages)
        expect(page).toMatchObject(paperSizes[format])
  })
})
