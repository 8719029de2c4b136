import { describe, expect, it } from 'vitest'
import type { EstimateLine } from '../../shared/pricing/estimate.ts'
import { estimateRecord } from '../../shared/pricing/estimateRecord.ts'
import { optionDifference } from '../../shared/pricing/optionDifference.ts'
import { needsOf } from '../../shared/pricing/needsOf.ts'
import { pence } from '../../shared/pricing/pence.ts'
import { standardMoney } from '../../shared/pricing/standardMoney.ts'
import { standardTimes } from '../../shared/pricing/standardTimes.ts'
import { plainEntry } from '../../shared/pricing/terms.ts'
import type { WorkDone } from '../../shared/pricing/workDone.ts'
import { estimate } from '../../shared/pricing/workEstimate.ts'
import type { GateSpec } from '../../shared/gate/spec.ts'
import { designOf, gate, gateWith } from '../fixtures/gates.ts'
import { addRates, emptyBook, stock } from './aBook.ts'

const line = (id: string, quantity: number, metres?: number): EstimateLine => ({
  id,
  group: id.split('.')[0] as EstimateLine['group'],
  words: id,
  quantity,
  unit: metres === undefined ? 'minute' : 'length',
  each: null,
  pence: pence(1),
  priceId: null,
  missing: null,
  overruled: false,
  how: { value: 0.01, unit: '£', formula: 'x', inputs: {}, source: 'x' },
  metres,
})

const done = (jobId: number, rest: Partial<WorkDone>): WorkDone => ({
  id: 1,
  jobId,
  what: 'hours',
  group: 'making',
  operation: '',
  quantity: 0,
  note: '',
  on: '2026-06-15',
  ...rest,
})

describe('estimates against what was done', () => {
  it('stand by operation where hours were entered on one, by what is left of the group elsewhere', () => {
    const lines = [
      line('making.rip', 20),
      line('making.board', 36),
      line('making.cut', 44),
      line('hanging.hang leaf', 75),
    ]
    const record = estimateRecord([
      {
        jobId: 1,
        estimate: { lines },
        done: [done(1, { operation: 'rip', quantity: 0.75 }), done(1, { quantity: 2 })],
      },
      {
        jobId: 2,
        estimate: { lines: [line('making.rip', 30)] },
        done: [done(2, { operation: 'rip', quantity: 0.5 }), done(2, { operation: 'rip', quantity: 0.25 })],
      },
    ])
    expect(record).toEqual([
      { group: 'making', operation: 'rip', jobs: 2, estimated: 50, done: 90 },
      { group: 'making', operation: '', jobs: 1, estimated: 80, done: 120 },
    ])
  })

  it('have timber in metres bought, and leave sums of money out', () => {
    const lines = [line('timber.ex 32 × 150', 2, 7.2), line('timber.ex 25 × 125 T&G V', 21.4, 21.4)]
    const record = estimateRecord([
      {
        jobId: 3,
        estimate: { lines },
        done: [
          done(3, { what: 'timber', group: 'timber', operation: 'ex 32 × 150', quantity: 6.6 }),
          done(3, { what: 'timber', group: 'timber', quantity: 24 }),
          done(3, { what: 'cost', group: 'extras', quantity: 1234 }),
        ],
      },
    ])
    expect(record).toEqual([
      { group: 'timber', operation: 'ex 32 × 150', jobs: 1, estimated: 7.2, done: 6.6 },
      { group: 'timber', operation: '', jobs: 1, estimated: 21.4, done: 24 },
    ])
  })

  it('tell how often an operation was done, a finish once a coat, and not where minutes were put by hand', () => {
    const withInputs = (id: string, quantity: number, inputs: Record<string, number>) => ({
      ...line(id, quantity),
      how: { value: 1, unit: '£', formula: 'x', inputs, source: 'x' },
    })
    const lines = [
      withInputs('making.rip', 12, { number: 3, 'minutes of each': 4 }),
      withInputs('making.finish square metre', 114, { number: 9.5, 'minutes of each coat': 6, coats: 2 }),
      withInputs('making.board', 50, { minutes: 50 }),
    ]
    const names = ['rip', 'finish square metre', 'board']
    const entered = names.map((operation) => done(4, { operation, quantity: 1.5 }))
    const record = estimateRecord([{ jobId: 4, estimate: { lines }, done: entered }])
    expect(record.map(({ operation, count }) => [operation, count])).toEqual([
      ['rip', 3],
      ['finish square metre', 19],
      ['board', undefined],
    ])
  })

  it('are none where nothing was entered', () => {
    expect(estimateRecord([{ jobId: 1, estimate: { lines: [line('making.rip', 20)] }, done: [] }])).toEqual(
      [],
    )
  })
})

describe('the difference of two options', () => {
  const book = emptyBook()
  addRates(book)
  const optionOf = (name: string, spec: GateSpec) => {
    const needs = needsOf(spec, designOf(spec))
    stock(book, needs)
    const asked = {
      needs,
      entry: plainEntry,
      settings: standardMoney,
      times: standardTimes,
      book,
      day: '2026-06-15',
    }
    return { name, spec, estimate: () => estimate(asked) }
  }
  const redwood = optionOf('Redwood', gate)
  const larch = optionOf('Larch', gateWith({ boardSection: { species: 'European larch' } }))
  const [from, to] = [redwood, larch].map((one) => ({ ...one, estimate: one.estimate() }))
  const terms = { settings: standardMoney, unit: 'mm' as const }

  it('is told price first, then by cost, then by what was entered', () => {
    if (!from || !to) throw new Error('both are there')
    const told = optionDifference(from, to, terms)
    expect(told[0]).toMatch(
      /^Larch is £\d+\.\d\d (dearer|cheaper) than Redwood before VAT \(\d+(\.\d+)? %\)\.$/,
    )
    expect(told[1]).toMatch(/^Cost of timber: £\d+\.\d\d (more|less)\.$/)
    expect(told).toContain('Board timber: European larch instead of European redwood.')
    expect(optionDifference(to, from, terms)[0]).toContain(told[0]?.includes('dearer') ? 'cheaper' : 'dearer')
  })

  it('of an option with itself is none', () => {
    if (!from) throw new Error('it is there')
    expect(optionDifference(from, { ...from, name: 'The same' }, terms)).toEqual([
      'The same costs the same as Redwood.',
    ])
  })

  it('isn’t told in money where a line has no price', () => {
    if (!from || !to) throw new Error('both are there')
    const gone = { ...to, estimate: { ...to.estimate, missing: ['fixings.screw 5 × 40'] } }
    expect(optionDifference(from, gone, terms)[0]).toBe(
      'Larch has lines without a price, so the two can’t be compared.',
    )
  })
})
