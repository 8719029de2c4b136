import { describe, expect, it } from 'vitest'
import { design } from '../../shared/gate/design.ts'
import type { GateSpec } from '../../shared/gate/spec.ts'
import { calledIn, describeGate } from '../../shared/describe/describeGate.ts'
import type { Described } from '../../shared/describe/described.ts'
import { wholeGates } from '../drawing/wholeGates.ts'
import { gateWith } from '../fixtures/gates.ts'

const describedOf = (spec: GateSpec, parts: Partial<Described> = {}): Described => {
  const outcome = design(spec)
  if (!outcome.made) throw new Error('this gate can’t be made')
  return { spec, design: outcome.design, unit: 'mm', ...parts }
}
const told = (spec: GateSpec, parts: Partial<Described> = {}): string =>
  describeGate(describedOf(spec, parts)).join(' ')

const whole = (name: string): GateSpec => {
  const found = wholeGates.find((one) => one.name === name)
  if (!found) throw new Error(`no gate ${name}`)
  return found.spec
}

describe('a gate in plain words', () => {
  it.each(wholeGates)('of $name is whole sentences with its own sizes and no gap in them', ({ spec }) => {
    for (const unit of ['mm', 'in'] as const) {
      const described = describedOf(spec, { unit, finish: { name: 'clear oil', coats: 2 } })
      const sentences = describeGate(described)
      expect(sentences.length).toBeGreaterThanOrEqual(6)
      for (const sentence of sentences) {
        expect(sentence).toMatch(/^[A-Z].*\.$/)
        expect(sentence).not.toMatch(
          /undefined|null|NaN|Infinity|\[object| {2}|,,| [,.;]|\(\)|\bno (?!fixings)|-to-|_/,
        )
      }
      expect(new Set(sentences).size).toBe(sentences.length)
      const words = sentences.join(' ')
      const leaf = described.design.leaves[0]
      const half = (mm: number) => String(Math.floor(mm * 2 + 0.5) / 2)
      expect(words).toContain(half(leaf?.width ?? NaN))
      expect(words).toContain(half(spec.boards.section.thickness))
      expect(words).toContain(half(spec.boards.section.width))
      expect(words).toContain(half(spec.ledges.section.width))
      if (spec.braces) expect(words).toContain(half(spec.braces.section.width))
      if (spec.frame) expect(words).toContain(half(spec.frame.topRail.width))
      if (spec.top.shape !== 'level') expect(words).toContain(half(spec.top.rise))
      expect(words).toContain('′')
      expect(words).toMatch(new RegExp(`on the ${spec.hung}|${spec.hung}-hand`))
    }
  })

  it.each(wholeGates)('of $name says nothing that only its maker needs', ({ spec }) => {
    expect(told(spec)).not.toMatch(/\bex \d|T&G|hanging|closing edge|Orchard|Yard|Paddock|Hazel|kerf|£/)
  })

  it('tells the usual gate like this', () => {
    expect(describeGate(describedOf(whole('01-plain-left'), { finish: null }))).toEqual([
      'A ledged and braced gate, 900 mm wide and 1800 mm high (2′ 11 ⁷⁄₁₆″ × 5′ 10 ⅞″).',
      'Made throughout in European redwood.',
      'The face is of tongued, grooved and V-jointed boards, 20 mm (¹³⁄₁₆″) thick and showing 112 mm (4 ⁷⁄₁₆″) each, those at the edges cut down to suit; 2 mm is left at each joint for the timber to swell.',
      'The boards are screwed on from behind, so that no fixings show on the face.',
      'Behind the boards are three ledges, 145 × 28 mm (5 ¹¹⁄₁₆″ × 1 ⅛″), with bevelled ends.',
      'Two braces, 95 × 28 mm (3 ¾″ × 1 ⅛″), in one line from bottom to top, rise from the hinge side, carry the gate’s weight and keep it from sagging.',
      'Seen from the boarded face, the gate hangs on the left.',
      'It hangs on two tee hinges with straps 600 mm (23 ⅝″) long, and has a thumb latch, a rim deadlock and a pull handle 150 mm (5 ⅞″) long. The ironmongery is galvanised.',
      'It is left bare, for you to finish as you like.',
    ])
  })

  it('tells a pair in inches with its curve over both leaves, the width of the two, its strip and all that is fitted', () => {
    const words = told(whole('20-pair-strip-bowed'), { unit: 'in' })
    for (const part of [
      'A pair of ledged and braced gates with a bowed top, each 3′ 11 ¼″ wide and 6′ 2 ¹³⁄₁₆″ high at the highest point (1200 × 1900 mm)',
      // 1200 + 8 + 1200
      'the two together are 7′ 10 ¹³⁄₁₆″ (2408 mm) wide, with the ⁵⁄₁₆″ (8 mm) gap between them.',
      'The two tops make one curve, 9 ¹³⁄₁₆″ (250 mm) higher in the middle than at its ends.',
      'A cover strip on one closes over the other by ⅞″ (22 mm) where the two meet.',
      'the left-hand gate opens first.',
      'They hang on four hook-and-band hinges with straps 29 ½″ (750 mm) long',
      'and a drop bolt 23 ⅝″ (600 mm) long.',
    ])
      expect(words).toContain(part)
  })

  it('tells both halves of a stable door, which is always a door', () => {
    const words = told(whole('26-stable-door'), { called: 'gate' })
    expect(words).toContain('A ledged and braced stable door in two halves, 900 mm wide and 2050 mm high')
    // 2050 − 1150 − 4
    expect(words).toContain(
      'The lower half is 1150 mm (3′ 9 ¼″) high and the upper 896 mm (35 ¼″), with a gap of 4 mm',
    )
    expect(words).toContain('both halves hang on the left')
    expect(words).not.toContain('gate')
  })

  it('tells the frame, the opening it is made for, the ground, the way it opens, the nails and the notches', () => {
    expect(told(whole('13-framed'))).toContain(
      'The frame, of stiles 95 × 48 mm (3 ¾″ × 1 ⅞″) and a top rail 120 × 48 mm (4 ¾″ × 1 ⅞″) mortised and tenoned together, holds the boards in a rebate.',
    )
    expect(told(whole('29-opening-gaps'))).toContain(
      'made to fit your opening as measured, 920 mm (3′ 0 ¼″) at its narrowest and 1850 mm (6′ 0 ¹³⁄₁₆″) at its lowest, leaving 6 mm at the hinge side, 10 mm at the latch side and 50 mm under the gate.',
    )
    expect(told(whole('30-opening-lintel-pair'))).toContain('30 mm under the gates and 12 mm over them.')
    expect(told(whole('31-foot-follows-rising'))).toContain(
      'Its foot is cut to follow the slope of the ground.',
    )
    expect(told(whole('35-opens-to-face'))).toContain(
      'hangs on the left and opens towards you, through 120 degrees.',
    )
    expect(told(whole('33-level-over-rising-ground'))).toContain('opens away from you, through 110 degrees.')
    expect(told(whole('12-raked-high-closing-nailed'))).toContain('nailed through from the face')
    expect(told(whole('11-raked-high-hanging'))).toContain(
      'slopes by 180 mm (7 ¹⁄₁₆″), higher at the hinge side.',
    )
    expect(told(whole('22-pair-raked-to-meeting'))).toContain(
      'The tops slope up by 200 mm (7 ⅞″) to where the two meet.',
    )
    expect(told(whole('06-notched-two-ledges'))).toContain('let into the ledges')
    expect(told(whole('19-pair-right-rebated'))).toContain('one closes over the other by 15 mm in a rebate')
    expect(told(whole('39-eight-feet-weathered'))).toContain('with upper edges sloped to shed water')
  })

  it('names each timber where there are several, as it is spelt, and says where one is treated', () => {
    expect(told(whole('38-own-timber-one-foot'))).toContain('(1 ¾″ × ¹³⁄₁₆″) in ekki')
    expect(told(whole('37-square-edged-cedar'))).toContain(
      'Made throughout in western redcedar. The face is of square-edged boards',
    )
    const treated = gateWith(
      { boards: { rip: 'both' } },
      { timbers: { 'European redwood': { treated: true } } },
    )
    expect(told(treated)).toContain('Made throughout in treated European redwood.')
  })

  it('tells a piece of the workshop’s own by its own name, and each finish where they differ', () => {
    const spec = gateWith(
      { boards: { rip: 'both' } },
      {
        ironmongery: [
          { id: 'tee-450-stainless', kind: 'hinge', name: 'Yard tee hinge 450, stainless', quantity: 3 },
          { id: 'own', kind: 'latch', name: 'forged latch from the village', quantity: 1 },
          { id: 'cap', kind: 'other', name: 'lead cap', quantity: 2 },
        ],
      },
    )
    expect(told(spec)).toContain(
      'It hangs on three stainless tee hinges with straps 450 mm (17 ¹¹⁄₁₆″) long, and has a latch (forged latch from the village) and 2 × lead cap.',
    )
  })

  it('says plainly what isn’t included where no hinge, or no ironmongery at all, is part of it', () => {
    expect(told(whole('02-plain-right-tongues-to-hanging'))).toContain(
      'Hinges, latch and other ironmongery are not included.',
    )
    const latch = { id: 'own', kind: 'latch' as const, name: '', quantity: 1 }
    expect(told(gateWith({ boards: { rip: 'both' } }, { ironmongery: [latch] }))).toContain(
      'Hinges are not included; a latch is included.',
    )
  })

  it('tells the finish where one is known, says so where it is bare, and keeps quiet where nothing is known', () => {
    const spec = whole('01-plain-left')
    expect(told(spec, { finish: { name: 'Moss green stain', coats: 3 } })).toContain(
      'Finished at the workshop with three coats of Moss green stain.',
    )
    expect(told(spec, { finish: { name: 'oil', coats: 1 } })).toContain('one coat of oil.')
    expect(told(spec)).not.toMatch(/bare|Finished/)
  })

  it('is a door where the job’s title speaks of one', () => {
    expect(calledIn('Shed door')).toBe('door')
    expect(calledIn('Side gate next to Doorn House')).toBe('gate')
    expect(told(whole('03-ledged-shed-door'), { called: calledIn('Doors') })).toContain(
      'A ledged door, 762 mm wide',
    )
  })

  it('refuses a design without a leaf', () => {
    const spec = whole('01-plain-left')
    expect(() => describeGate({ spec, design: { leaves: [] }, unit: 'mm' })).toThrow(RangeError)
  })
})
