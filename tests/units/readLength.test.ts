import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { readLength, type Reading } from '../../shared/units/readLength.ts'
import { askedAbout, understood } from './lengthCases.ts'
import { refused } from './refusedLengths.ts'

const mmOf = (reading: Reading): number => (reading.kind === 'length' ? reading.mm : NaN)
const messageOf = (reading: Reading): string => (reading.kind === 'problem' ? reading.message : '')
const optionsOf = (reading: Reading): number[] =>
  reading.kind === 'ask' ? reading.options.map(({ mm }) => mm) : []
const echoOf = (reading: Reading): string => (reading.kind === 'length' ? reading.echo : '')

describe('the table of typed lengths', () => {
  test('holds at least 200 different cases', () => {
    const cases = [...understood, ...askedAbout, ...refused].map(([typed, unit]) => `${unit} ${typed}`)
    expect(new Set(cases).size).toBe(cases.length)
    expect(cases.length).toBeGreaterThanOrEqual(200)
  })

  test.each(understood)('%j in a job in %s is %d mm', (typed, unit, mm) => {
    expect(readLength(typed, unit)).toMatchObject({ kind: 'length', mm })
  })

  test.each(askedAbout)('%j in a job in %s is asked about: %j', (typed, unit, options) => {
    const reading = readLength(typed, unit)
    expect(reading.kind).toBe('ask')
    expect(optionsOf(reading)).toEqual(options)
  })

  test.each(refused)('%j in a job in %s is refused: %s', (typed, unit, says) => {
    const message = messageOf(readLength(typed, unit))
    expect(message).toContain(says)
    expect(message).toMatch(/\.$/)
  })

  test.each(['', ' ', '\t\n', '\u00a0', '\u200b'])('%j is nothing typed', (typed) => {
    expect(readLength(typed, 'mm')).toEqual({ kind: 'empty' })
  })
})

describe('limits of a field', () => {
  test('0 is taken where the field allows it', () => {
    expect(readLength('0', 'mm', { allowZero: true })).toEqual({ kind: 'length', mm: 0, echo: '0 mm · 0″' })
    expect(messageOf(readLength('5-6', 'mm', { allowZero: true }))).toContain('less than nothing')
  })

  test('the most a field takes is its own and is named in both units', () => {
    expect(mmOf(readLength('300', 'mm', { max: 300 }))).toBe(300)
    expect(messageOf(readLength('301', 'mm', { max: 300 }))).toBe(
      '‘301’ is 301 mm · 11 ⅞″, over the 300 mm · 11 ¹³⁄₁₆″ that this field takes. Check the figures and the unit.',
    )
  })

  test('three digits after a mark are asked about with metres too once both lengths can be', () => {
    expect(optionsOf(readLength('1.830 m', 'mm', { max: 2_000_000 }))).toEqual([1_830_000, 1830])
  })
})

describe('what is echoed', () => {
  test.each([
    ['1803.4', 'mm', '1803.4 mm · 71″'],
    [`5' 11"`, 'mm', '1803.4 mm · 5′ 11″'],
    [`5' 11"`, 'in', '5′ 11″ · 1803.4 mm'],
    ['36 5/8"', 'mm', '930.275 mm · 36 ⅝″'],
    ['36-5/8', 'mm', 'read as inches: 36 ⅝″ · 930.275 mm'],
    ['36-5/8', 'in', '36 ⅝″ · 930.275 mm'],
    ['1200 + 5/8', 'mm', '1215.875 mm · about 47 ⅞″, the fraction read as inches'],
    ['36 43/64"', 'in', '36 ⁴³⁄₆₄″ · 931.466 mm'],
    ['1830', 'mm', '1830 mm · about 72 ¹⁄₁₆″'],
    ['1830 mm', 'in', 'about 72 ¹⁄₁₆″ · 1830 mm'],
    ['36.63', 'in', '36.63″ · 930.402 mm'],
    ['0.5', 'mm', '0.5 mm · under ¹⁄₁₆″'],
  ] as const)('%j in a job in %s: %s', (typed, unit, echo) => {
    expect(echoOf(readLength(typed, unit))).toBe(echo)
  })

  test('a question says each meaning in both units', () => {
    expect(readLength('1,830', 'mm')).toEqual({
      kind: 'ask',
      question: '‘1,830’ can be read in two ways. Which do you mean?',
      options: [
        { mm: 1830, said: '1830 mm · about 72 ¹⁄₁₆″' },
        { mm: 1.83, said: '1.83 mm · about ¹⁄₁₆″' },
      ],
    })
  })

  test('three figures that leave one length are put to the person all the same', () => {
    expect(readLength('930.275', 'mm')).toEqual({
      kind: 'ask',
      question: '‘930.275’ has three figures after its mark. Is this what you mean?',
      options: [{ mm: 930.275, said: '930.275 mm · 36 ⅝″' }],
    })
  })
})

describe('any text at all', () => {
  const limits = { max: 10000 }
  const checkReading = (reading: Reading): void => {
    if (reading.kind === 'problem') expect(reading.message).toMatch(/\S.*\.$/su)
    const lengths = reading.kind === 'length' ? [reading.mm] : optionsOf(reading)
    for (const mm of lengths) expect(mm > 0 && mm <= limits.max).toBe(true)
    if (reading.kind === 'ask') expect(lengths.length).toBeGreaterThan(0)
  }

  test('is read without a throw, and every length given is one the field takes', () => {
    const lengthLike = fc
      .array(fc.constantFrom(...`0123456789.,+-/ '"ft in mm cm ⅝½¹₁⁄′″−x`, '000', ' 830', "5'", '36-5/8'), {
        maxLength: 14,
      })
      .map((signs) => signs.join(''))
    const anyText = fc.oneof(lengthLike, fc.string({ unit: 'binary', maxLength: 70 }), fc.string())
    fc.assert(
      fc.property(anyText, fc.constantFrom('mm' as const, 'in' as const), (text, unit) => {
        checkReading(readLength(text, unit, limits))
      }),
      { seed: 1959, numRuns: 5000 },
    )
  })

  test('a sum is the sum of its parts, and a difference their difference', () => {
    const tenths = fc.integer({ min: 1, max: 40000 })
    fc.assert(
      fc.property(tenths, tenths, (a, b) => {
        const [long, short] = [Math.max(a, b) + 1, Math.min(a, b)]
        expect(mmOf(readLength(`${long / 10}+${short / 10}`, 'mm'))).toBe((long + short) / 10)
        expect(mmOf(readLength(`${long / 10} - ${short / 10}`, 'mm'))).toBe((long - short) / 10)
      }),
      { seed: 811, numRuns: 500 },
    )
  })

  test('a mixed number is the same with a space, a dash or glued glyph, and is exact', () => {
    const parts = fc.tuple(fc.integer({ min: 1, max: 380 }), fc.integer({ min: 0, max: 5 }), fc.nat(62))
    fc.assert(
      fc.property(parts, ([whole, power, n]) => {
        const denominator = 2 ** (power + 1)
        const numerator = (n % (denominator - 1)) + 1
        // 64ths of an inch are 0.396875 mm: whole numbers of 10^-6 mm, so that this sum is exact until the division
        const millionths = (whole * 64 + (numerator * 64) / denominator) * 396875
        for (const text of [`${whole} ${numerator}/${denominator}`, `${whole}-${numerator}/${denominator}"`])
          expect(mmOf(readLength(text, 'mm'))).toBe(millionths / 1_000_000)
      }),
      { seed: 64, numRuns: 1000 },
    )
  })
})
