import { describe, expect, it } from 'vitest'
import { against, betterTime, percentOff } from '../../renderer/after/against.ts'
import { writeFigureFully, writeInput } from '../../renderer/format.ts'
import {
  boughtWords,
  chargedWhole,
  namedApart,
  readQuantity,
  writeQuantity,
} from '../../renderer/price/lineWords.ts'
import {
  finishOf,
  inFinish,
  withConstruction,
  withPiece,
  withSection,
} from '../../renderer/price/optionChoices.ts'
import { standsOn } from '../../renderer/stores/quotations.ts'
import { keptKind, mostLogoBytes, readLogo } from '../../renderer/workshop/logoPicture.ts'
import { missingWords } from '../../shared/pricing/costedLine.ts'
import type { EstimateLine } from '../../shared/pricing/estimate.ts'
import { pence } from '../../shared/pricing/pence.ts'
import type { StandingQuotation } from '../../shared/pricing/requests.ts'
import { standardTimes } from '../../shared/pricing/standardTimes.ts'
import type { WorkDone } from '../../shared/pricing/workDone.ts'
import { gate } from '../fixtures/gates.ts'

const line = (id: string, some: Partial<EstimateLine>): EstimateLine => ({
  id,
  group: id.split('.')[0] as EstimateLine['group'],
  words: id,
  quantity: 1,
  unit: 'minute',
  each: null,
  pence: pence(0),
  priceId: null,
  missing: null,
  overruled: false,
  how: { value: 0, unit: '£', formula: 'x', inputs: {}, source: 'x' },
  ...some,
})
const done = (some: Partial<WorkDone>): WorkDone => ({
  id: 1,
  jobId: 7,
  what: 'hours',
  group: 'making',
  operation: '',
  quantity: 1,
  note: '',
  on: '2026-06-03',
  ...some,
})

describe('what a job took beside its estimate', () => {
  const lines = [
    line('timber.ex 32 × 150', { unit: 'metre', quantity: 7.5 }),
    line('timber.ex 25 × 125', { unit: 'length', quantity: 4, metres: 14.4 }),
    line('making.rip', { quantity: 24 }),
    line('making.board', { quantity: 36 }),
    line('hanging.kilometres', { unit: 'kilometre', quantity: 40 }),
    line('fixings.screw', { unit: 'box', quantity: 0.35, pence: pence(343) }),
  ]

  it('is told by group in hours, metres and sums, an operation entered by name under its group', () => {
    const rows = against({ lines }, [
      done({ quantity: 2.5 }),
      done({ operation: 'rip', quantity: 0.75 }),
      done({ what: 'timber', group: 'timber', quantity: 25 }),
      done({ what: 'cost', group: 'fixings', quantity: 410 }),
    ])
    const told = rows.map(({ words, estimated, done: took }) => [
      words,
      Math.round(estimated * 100) / 100,
      took,
    ])
    expect(told).toEqual([
      ['Timber', 21.9, 25],
      ['Fixings', 343, 410],
      ['Making', 1, 3.25],
      ['Rips', 0.4, 0.75],
      ['Measuring and hanging', 0, null],
    ])
  })

  it('gives the time of one from how often it was done, whatever the standard was, and none twice', () => {
    const rips = { group: 'making' as const, operation: 'rip', jobs: 3, estimated: 56, done: 90, count: 14 }
    expect(betterTime(standardTimes, rips)).toEqual({ operation: 'rip', minutes: 6.5 })
    expect(betterTime({ ...standardTimes, rip: 6.5 }, rips)).toBeUndefined()
    expect(betterTime(standardTimes, { ...rips, count: undefined })).toBeUndefined()
    expect(betterTime(standardTimes, { ...rips, operation: '' })).toBeUndefined()
    const fixings = {
      group: 'making' as const,
      operation: 'fixing',
      jobs: 1,
      estimated: 51,
      done: 61,
      count: 68,
    }
    expect(betterTime(standardTimes, fixings)).toEqual({ operation: 'fixing', minutes: 0.9 })
  })

  it('is off by a whole percent, and by none where nothing was estimated', () => {
    expect(percentOff({ estimated: 50, done: 90 })).toBe(80)
    expect(percentOff({ estimated: 0, done: 12 })).toBeUndefined()
  })
})

describe('how timber is bought', () => {
  const whole = line('timber.ex 32 × 150', {
    unit: 'metre',
    lengths: [
      { size: 3000, count: 2 },
      { size: 4200, count: 3 },
    ],
  })
  const inputs = { 'net metres': 14.2, 'waste %': 7.5 }
  const waste = line('timber.ex 25 × 125', { how: { ...whole.how, inputs } })

  it('is said by its lengths, the longest first, or by its net length and waste', () => {
    expect(boughtWords(whole)).toBe('5 lengths: 3 of 4.2 m, 2 of 3.0 m')
    expect(boughtWords({ ...whole, lengths: [{ size: 3962, count: 1 }] })).toBe('1 length of 3.962 m')
    expect(boughtWords(waste)).toBe('14.2 m net and 7.5 % waste')
  })

  it('isn’t said of a line put by hand, without a price, or of no timber', () => {
    expect(boughtWords({ ...whole, overruled: true })).toBe('')
    expect(boughtWords({ ...waste, missing: 'no length' })).toBe('')
    expect(boughtWords(line('making.rip', {}))).toBe('')
  })

  it('is charged whole where any line buys lengths, and only then', () => {
    expect(chargedWhole([waste, whole])).toMatch(/^whole lengths as bought/)
    expect(chargedWhole([waste, { ...whole, overruled: true }])).toBe('')
  })
})

describe('a version made another gate', () => {
  const iron = {
    ...gate,
    ironmongery: [
      { id: 'tee-450-galvanised', kind: 'hinge' as const, name: 'x', quantity: 2, side: 'hanging' as const },
    ],
  }
  it('loses its braces when it is ledged alone, and gets them back braced', () => {
    const ledged = withConstruction(gate, 'ledged', undefined)
    expect(ledged.construction).toBe('ledged')
    expect(ledged.braces).toBeUndefined()
    const brace = { name: 'own', species: 'European oak', thickness: 31, width: 99 }
    expect(withConstruction(ledged, 'ledged-braced', brace).braces?.section).toEqual(brace)
  })
  it('takes another section for one part and leaves the others', () => {
    const oak = { name: 'oak', species: 'European oak', thickness: 22, width: 118, tongue: 7, groove: 8 }
    const made = withSection(gate, 'boards', oak)
    expect(made.boards.section).toEqual(oak)
    expect(made.ledges).toEqual(gate.ledges)
  })
  it('has the same pieces in another finish, as many and on the same side', () => {
    const stainless = inFinish(iron, 'stainless')
    expect(stainless.ironmongery).toMatchObject([{ id: 'tee-450-stainless', quantity: 2, side: 'hanging' }])
    expect([finishOf(iron), finishOf(stainless)]).toEqual(['galvanised', 'stainless'])
  })
  it('does without a piece that is taken out', () => {
    expect(withPiece(iron, 0, null).ironmongery).toEqual([])
  })
})

describe('a quotation stands', () => {
  const quoted = (acceptance: StandingQuotation['acceptance']) =>
    ({ money: { validUntil: '2026-06-30' }, acceptance }) as StandingQuotation
  it('to the end of its last day, lapses after it, and is accepted whenever it was accepted', () => {
    expect(standsOn(quoted(null), '2026-06-30')).toBe('stands')
    expect(standsOn(quoted(null), '2026-07-01')).toBe('lapsed')
    const acceptance = { paperId: 3, option: 0, acceptedOn: '2026-06-12', note: '' }
    expect(standsOn(quoted(acceptance), '2027-01-01')).toBe('accepted')
  })
})

describe('words and figures of an estimate', () => {
  it('tell a line’s name apart from why it has no price', () => {
    const words = `Screw 5 × 50, 68: ${missingWords['no item']}`
    expect(namedApart({ words, missing: 'no item' })).toEqual({
      name: 'Screw 5 × 50, 68',
      why: missingWords['no item'],
    })
    expect(namedApart({ words: 'Rips', missing: null })).toEqual({ name: 'Rips', why: '' })
  })
  it('read a quantity with comma or point, with its unit, and none below 0', () => {
    expect([readQuantity('14,25 m'), readQuantity('3'), readQuantity('-2'), readQuantity('')]).toEqual([
      14.25,
      3,
      undefined,
      undefined,
    ])
    expect(writeQuantity(14.2499)).toBe('14.25')
  })
  it('print sums of a working as sums', () => {
    expect(writeFigureFully({ value: 15.8, unit: '£' }, 'mm')).toBe('£15.80')
    expect(writeInput('an hour €', 38)).toEqual({ called: 'an hour', words: '€38.00' })
    expect(writeInput('minutes', 12.3456)).toEqual({ called: 'minutes', words: '12.346' })
  })
})

describe('a logo', () => {
  const png = Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 1, 2, 3])
  const jpeg = Uint8Array.from([0xff, 0xd8, 0xff, 0xe0, 9, 8, 7])
  it('is taken as PNG or JPEG by its own first bytes and known again from what is kept', () => {
    const kept = [png, jpeg].map((bytes) => readLogo(bytes))
    expect(kept.map((one) => (one.ok ? keptKind(one.value) : 'refused'))).toEqual(['png', 'jpeg'])
    expect(kept[0]?.ok && atob(kept[0].value).length).toBe(11)
  })
  it('is refused when it is another kind of picture, or over 0.7 MB', () => {
    const gif = readLogo(Uint8Array.from([0x47, 0x49, 0x46, 0x38, 0x39, 0x61]))
    expect(!gif.ok && gif.problems[0]?.message).toContain('PNG or a JPEG')
    const large = new Uint8Array(mostLogoBytes + 1)
    large.set(png)
    const refused = readLogo(large)
    expect(!refused.ok && refused.problems[0]?.message).toContain('0.7 MB')
  })
})
