import { describe, expect, it } from 'vitest'
import { design } from '../../shared/gate/design.ts'
import { parseSpec } from '../../shared/gate/parseSpec.ts'
import type { GateSpec } from '../../shared/gate/spec.ts'
import { standardDraft } from '../../shared/gate/standardSpec.ts'
import { compareCards, type ComparedCard } from '../../shared/job/compare.ts'

const draft = standardDraft()
const standard: GateSpec = {
  ...draft,
  size: { from: 'leaf', width: 915, height: 1800 },
  boards: { ...draft.boards, rip: 'both' },
  ledges: { ...draft.ledges, count: 2 },
}

const header = {
  workshop: 'Test bench',
  number: '2026-003',
  title: 'Side gate',
  customer: { name: 'Peg Sash', address: '1 Row', town: 'Nether Test', phone: '', email: '' },
  due: '2026-05-31',
  notes: '',
  revision: 1,
  issuedAt: '2026-03-02T11:00:00.000Z',
}

function card(changed: Partial<GateSpec> = {}, head: Partial<typeof header> = {}): ComparedCard {
  const spec = parseSpec({ ...standard, ...changed })
  if (!spec.ok) throw new Error(JSON.stringify(spec.problems))
  const outcome = design(spec.value)
  return { header: { ...header, ...head }, spec: spec.value, parts: outcome.made ? outcome.design : null }
}

describe('what differs between two cards', () => {
  it('is nothing between a card and itself, and between two revisions of one gate', () => {
    expect(compareCards(card(), card(), 'mm')).toEqual([])
    expect(
      compareCards(card(), card({}, { revision: 2, issuedAt: '2026-04-01T09:00:00.000Z' }), 'mm'),
    ).toEqual([])
  })

  it('is said in the joiner’s words and both units: the size and every part that follows', () => {
    const wider = card({ size: { from: 'leaf', width: 930.275, height: 1800 } })
    const found = compareCards(card(), wider, 'mm')
    expect(found).toContainEqual({ what: 'leaf width', before: '915 mm · 36″', after: '930.3 mm · 36 ⅝″' })
    const names = found.map((difference) => difference.what)
    // Ripped at both edges, the leaf's width goes into the two outer boards; ledges and brace follow it.
    expect(names).toEqual(
      expect.arrayContaining([
        'board 1 width',
        'bottom ledge length',
        'top ledge length',
        'brace length',
        'brace angle',
      ]),
    )
    expect(names.filter((name) => /board [2-8] width|height/.test(name))).toEqual([])
  })

  it('has the job’s own unit first', () => {
    const taller = card({ size: { from: 'leaf', width: 915, height: 1803.4 } })
    expect(compareCards(card(), taller, 'in')).toContainEqual({
      what: 'leaf height',
      before: '70 ⅞″ · 1800 mm',
      after: '71″ · 1803.4 mm',
    })
  })

  it('names what one side lacks: boards, a middle ledge, the braces', () => {
    const found = compareCards(
      card(),
      card({ construction: 'ledged', braces: undefined, ledges: { ...standard.ledges, count: 3 } }),
      'mm',
    )
    expect(found).toContainEqual({ what: 'construction', before: 'ledged and braced', after: 'ledged' })
    expect(found.find(({ what }) => what === 'middle ledge length')?.before).toBe('none')
    expect(found.find(({ what }) => what === 'brace length')?.after).toBe('none')
  })

  it('tells the head of the paper too: customer, date promised, notes', () => {
    const customer = { ...header.customer, name: 'Peg Mullion' }
    expect(
      compareCards(card(), card({}, { customer, due: '2026-06-07', notes: 'ring first' }), 'mm'),
    ).toEqual([
      { what: 'customer', before: 'Peg Sash', after: 'Peg Mullion' },
      { what: 'date promised', before: '31 May 2026', after: '7 June 2026' },
      { what: 'notes', before: '', after: 'ring first' },
    ])
  })

  it('says that a gate can’t be made as entered, with what was entered, and no parts', () => {
    const stopped = card({
      size: { from: 'leaf', width: 930, height: 1800 },
      boards: { ...standard.boards, rip: 'closing' },
    })
    expect(stopped.parts).toBeNull()
    expect(compareCards(card(), stopped, 'mm')).toEqual([
      { what: 'gate', before: 'can be made', after: 'can’t be made as entered' },
      { what: 'leaf width', before: '915 mm · 36″', after: '930 mm · 36 ⅝″' },
      { what: 'boards ripped at', before: 'both edges', after: 'closing edge' },
    ])
  })
})
