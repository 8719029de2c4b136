import { describe, expect, it } from 'vitest'
import { careNote } from '../../shared/papers/care/careNote.ts'
import type { JobCardInput } from '../../shared/papers/jobCardInput.ts'
import { outside, overlaps } from '../drawing/wordBoxes.ts'
import { longHeader } from '../fixtures/cards.ts'
import { everySo } from '../fixtures/sample.ts'
import { wholeCards } from '../fixtures/wholeCards.ts'
import { allWords, boxesOn } from './pageBoxes.ts'
import { bytesByZone, printedMeasure, readBack } from './paperReading.ts'
import { business } from './quotationInputs.ts'

const gateOf = (start: string, parts: Partial<JobCardInput> = {}): JobCardInput => {
  const found = wholeCards.find(({ name }) => name.startsWith(start))
  if (!found) throw new Error(`no gate ${start}`)
  return { ...found.input, handover: { business }, ...parts }
}

const words = (input: JobCardInput): string => allWords(careNote(input)).replace(/\s+/g, ' ')

describe('the care note of each of forty gates', () => {
  it.each(wholeCards)(
    '$name is one page, its words within the margins and none over another',
    ({ input }) => {
      for (const parts of [
        {},
        { format: 'letter' as const, header: longHeader },
        { unit: 'in' as const, draft: true },
        { handover: { business, finish: { name: 'Clear exterior oil', coats: 2 } } },
      ]) {
        const paper = careNote({ ...input, handover: { business }, ...parts })
        expect(paper.pages).toHaveLength(1)
        for (const page of paper.pages) {
          const boxes = boxesOn(page)
          expect(
            outside(boxes, { left: 19, top: 10, right: page.width - 19, bottom: page.height - 15 }),
          ).toEqual([])
          expect(overlaps(boxes)).toEqual([])
        }
      }
    },
  )

  it.each(everySo(3, wholeCards))(
    '$name reads back with the size of its leaf and its timber',
    async ({ input }) => {
      const said = (await readBack(careNote({ ...input, handover: { business } }, printedMeasure)))
        .flat()
        .join(' ')
        .replace(/\s+/g, ' ')
      const [leaf] = input.design.leaves
      if (!input.spec.stable) expect(said).toContain(`${Math.round((leaf?.width ?? 0) * 2) / 2} mm wide`)
      expect(said.toLowerCase()).toContain(input.spec.boards.section.species.toLowerCase())
      expect(said).not.toContain('not included')
      for (const part of [
        'Looking after your',
        'What we made',
        'Keep fingers',
        'don’t fit a motor',
        'Handed over by',
      ])
        expect(said).toContain(part)
    },
  )
})

describe('a care note', () => {
  it('carries the workshop’s address and how to ring it', () => {
    const said = words(gateOf('01'))
    for (const part of ['Unit 3, Test Yard', 'ring us on 01632 960 111', 'for A. Customer'])
      expect(said).toContain(part)
    expect(words({ ...gateOf('01'), handover: undefined } as JobCardInput)).toContain('tell us.')
  })

  it('says of iron and oak only where there is oak', () => {
    expect(words(gateOf('17'))).toContain('Iron stains European oak')
    expect(words(gateOf('01'))).not.toContain('Iron stains')
  })

  it('says of a finish what is known of it, and leaves room for it where nothing is', () => {
    const unknown = words(gateOf('01'))
    expect(unknown).toContain('If it has a finish')
    expect(unknown).toContain('Finish and colour, if one was put on')
    const oiled = words(
      gateOf('01', { handover: { business, finish: { name: 'Clear exterior oil', coats: 2 } } }),
    )
    expect(oiled).toContain('Clear exterior oil, 2 coats')
    expect(oiled).not.toContain('if one was put on')
    expect(words(gateOf('01', { handover: { business, finish: null } }))).toContain('Left bare')
  })

  it('speaks of treated timber only where some is', () => {
    const input = gateOf('01')
    expect(words(input)).not.toContain('treated')
    const timbers = { [input.spec.boards.section.species]: { treated: true } }
    expect(words({ ...input, spec: { ...input.spec, timbers } })).toContain(
      'never burn offcuts or dust from it',
    )
  })

  it('speaks of lock, latch and bolts only where they are listed', () => {
    expect(words(gateOf('01'))).toContain('graphite')
    expect(words(gateOf('17'))).toContain('Oil the hinge pins spring and autumn')
    expect(words(gateOf('18'))).toContain('draw every bolt')
    expect(words(gateOf('01'))).not.toContain('draw every bolt')
  })

  it('gives the movement of a board from the design, where the air is known', () => {
    const input = gateOf('36')
    const { movement } = input.design
    if (!movement) throw new Error('no movement')
    const change = movement.wettest.boardChange - movement.driest.boardChange
    const told = Math.floor(change * 2 + 0.5) / 2
    expect(words(input)).toContain(`about ${told} mm a board`)
    expect(words(gateOf('01'))).not.toContain('we reckon')
  })

  it('calls a pair gates, and a stable door a door', () => {
    expect(words(gateOf('18'))).toContain('Looking after your gates')
    expect(words(gateOf('26'))).toContain('Looking after your door')
  })

  it('sets its figures in 11 points or more, the workshop’s own address aside', () => {
    const [page] = careNote(gateOf('15')).pages
    const small =
      page?.marks.flatMap((mark) => (mark.kind === 'text' && mark.size < 11 ? [mark.text] : [])) ?? []
    expect(
      small.every((text) =>
        `${business.address}${business.phone}${business.email}${business.website}`.includes(text),
      ),
    ).toBe(true)
  })

  it('has the same bytes in five time zones', async () => {
    const [first, ...others] = await bytesByZone(() => careNote(gateOf('36'), printedMeasure))
    for (const other of others) expect(Buffer.compare(first ?? Buffer.alloc(0), other)).toBe(0)
  })
})
