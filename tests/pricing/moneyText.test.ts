import { describe, expect, it } from 'vitest'
import { readMoney, writeMoney } from '../../shared/pricing/moneyText.ts'
import { mostPence, pence } from '../../shared/pricing/pence.ts'
import { readPercent, writePercent } from '../../shared/pricing/percent.ts'
import type { Currency } from '../../shared/pricing/terms.ts'

const refusal = (text: string, currency: Currency = 'GBP') => {
  const read = readMoney(text, currency)
  if (read.ok) throw new Error(`${text} was read as ${read.value}`)
  return read.problems[0]
}

describe('a sum of money', () => {
  it.each([
    [123450, 'GBP', '£1,234.50'],
    [7, 'GBP', '£0.07'],
    [-1234, 'EUR', '−€12.34'],
    [100000000, 'USD', '$1,000,000.00'],
    [0, 'GBP', '£0.00'],
  ] as const)('of %i in %s is written %s', (amount, currency, text) => {
    expect(writeMoney(pence(amount), currency)).toBe(text)
  })

  it.each([
    ['£12.34', 'GBP', 1234],
    ['12.34', 'GBP', 1234],
    ['12,34 €', 'EUR', 1234],
    ['12,34', 'GBP', 1234],
    ['1,234.50', 'GBP', 123450],
    ['1.234,50', 'EUR', 123450],
    ['1 234,50', 'EUR', 123450],
    ['1,234,567', 'GBP', 123456700],
    ['£ 1,234.5', 'GBP', 123450],
    ['.5', 'GBP', 50],
    ['12', 'USD', 1200],
    ['0012.30', 'GBP', 1230],
    ['-5.25', 'GBP', -525],
    ['−£5.25', 'GBP', -525],
    ['£-5.25', 'GBP', -525],
    ['8p', 'GBP', 8],
    ['GBP 3.10', 'GBP', 310],
  ] as const)('typed %s in %s is %i', (text, currency, amount) => {
    expect(readMoney(text, currency)).toEqual({ ok: true, value: amount })
  })

  it('that could be a thousand or one and a bit is asked about, not guessed', () => {
    expect(refusal('1,234')?.message).toBe('‘1,234’ can be 1234 or 1.234. Type 1234.00, or 1.23.')
    expect(refusal('£1.234')?.code).toBe('money-ambiguous')
    expect(refusal('12.500', 'EUR')?.code).toBe('money-ambiguous')
  })

  it.each([
    '',
    ' ',
    'abc',
    '1234.567',
    '0.125',
    '0,125.00',
    '1,23,456',
    '12.3.4',
    '€12.34',
    '$5',
    '1e308',
    '=1+1',
    '£',
    '.',
    ',',
    '12..3',
    '--5',
    '1,234.567',
  ])('typed %j is refused in pounds with what is accepted', (text) => {
    expect(refusal(text)?.message).toMatch(/Type it as £12\.34, 12\.34, 12,34 £ or 1,234\.50\./)
  })

  it('over ten million is refused, the most is not', () => {
    expect(readMoney('10,000,000.00', 'GBP')).toEqual({ ok: true, value: mostPence })
    expect(refusal('10,000,000.01')?.message).toBe(
      '‘10,000,000.01’ is over £10,000,000.00, the most that is kept.',
    )
    expect(refusal('9'.repeat(39))?.code).toBe('money-large')
  })

  it('written is read again as it was', () => {
    for (const currency of ['GBP', 'EUR', 'USD'] as const)
      for (const amount of [0, 9, -9, 99, 123, 99999, 100000, -100001, 12345678, mostPence])
        expect(readMoney(writeMoney(pence(amount), currency), currency)).toEqual({ ok: true, value: amount })
  })
})

describe('a percent', () => {
  it.each([
    [2000, '20 %'],
    [1667, '16.67 %'],
    [1750, '17.5 %'],
    [-250, '−2.5 %'],
    [0, '0 %'],
  ])('of %i basis points is written %s', (bp, text) => {
    expect(writePercent(bp)).toBe(text)
  })

  it.each([
    ['20', 2000],
    ['20 %', 2000],
    ['17,5%', 1750],
    ['.25', 25],
    ['0', 0],
  ])('typed %s is %i basis points', (text, bp) => {
    expect(readPercent(text)).toEqual({ ok: true, value: bp })
  })

  it('below 0 is read where a fall is allowed, and refused elsewhere', () => {
    expect(readPercent('−3', { least: -5000 })).toEqual({ ok: true, value: -300 })
    expect(readPercent('-3').ok).toBe(false)
  })

  it.each(['', '%', '1.234', 'ten', '101', '1e2', '-'])(
    'typed %j is refused, and told from what to what',
    (text) => {
      const read = readPercent(text)
      expect(!read.ok && read.problems[0]?.message).toMatch(
        /a percent from 0 % to 100 %, such as 17\.5, is taken/,
      )
    },
  )
})
