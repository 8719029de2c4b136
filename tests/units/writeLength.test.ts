import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { inchParts, isOnTape } from '../../shared/units/inch.ts'
import { readLength } from '../../shared/units/readLength.ts'
import {
  writeBoth,
  writeFeet,
  writeForField,
  writeInches,
  writeLength,
  writeMm,
  writeShortMm,
} from '../../shared/units/writeLength.ts'

const readBack = (text: string, unit: 'mm' | 'in'): number => {
  const reading = readLength(text, unit, { allowZero: true, max: 1e6 })
  if (reading.kind !== 'length') throw new Error(`${text} was not read back: ${JSON.stringify(reading)}`)
  return reading.mm
}

describe('millimetres', () => {
  test('keep their places in a column', () => {
    expect([1803.4, 1830, 0.05, 0].map((mm) => writeMm(mm))).toEqual(['1803.4', '1830.0', '0.1', '0.0'])
    expect(writeMm(1830.6, 0)).toBe('1831')
    expect(writeMm(930.275, 2)).toBe('930.28')
  })

  test('round on the decimal figures, halves up in size', () => {
    expect(writeMm(1.005, 2)).toBe('1.01')
    expect(writeMm(1803.45)).toBe('1803.5')
    expect(writeMm(-1803.45)).toBe('−1803.5')
  })

  test('drop closing noughts in running text, and only those after the point', () => {
    expect([1830, 1803.4, 1800.04].map((mm) => writeShortMm(mm))).toEqual(['1830', '1803.4', '1800'])
    expect(writeShortMm(930.275, 3)).toBe('930.275')
    expect(writeShortMm(1200, 0)).toBe('1200')
  })
})

describe('inches', () => {
  test.each([
    [1803.4, 16, '71″'],
    [930.275, 16, '36 ⅝″'],
    [927.1, 16, '36 ½″'],
    [920.75, 16, '36 ¼″'],
    [933.45, 16, '36 ¾″'],
    [917.575, 16, '36 ⅛″'],
    [923.925, 16, '36 ⅜″'],
    [936.625, 16, '36 ⅞″'],
    [931.8625, 16, '36 ¹¹⁄₁₆″'],
    [931.465625, 64, '36 ⁴³⁄₆₄″'],
    [915.19375, 32, '36 ¹⁄₃₂″'],
    [931.8625, 2, '36 ½″'],
    [406.2, 16, '16″'],
    [15.875, 16, '⅝″'],
    [0.79375, 16, '¹⁄₁₆″'],
    [0.7, 16, '0″'],
    [-930.275, 16, '−36 ⅝″'],
    [-0.7, 16, '0″'],
    [0, 16, '0″'],
  ] as const)('%d mm to a division of %d is %s', (mm, division, written) => {
    expect(writeInches(mm, division)).toBe(written)
  })

  test('come apart as whole, numerator and denominator, reduced', () => {
    expect(inchParts(930.275, 16)).toEqual({ negative: false, whole: 36, numerator: 5, denominator: 8 })
    expect(inchParts(-406.2, 8)).toEqual({ negative: true, whole: 16, numerator: 0, denominator: 1 })
  })

  test('round a half up even where binary sums have lost its last bit', () => {
    expect(inchParts(915.19375 - 2e-13, 16)).toEqual({
      negative: false,
      whole: 36,
      numerator: 1,
      denominator: 16,
    })
  })

  test('are on the tape only at a 64th', () => {
    expect([930.275, 0.396875, 1828.8, 0].every(isOnTape)).toBe(true)
    expect([1830, 930.3, 0.4].some(isOnTape)).toBe(false)
  })
})

describe('feet', () => {
  test.each([
    [1803.4, '5′ 11″'],
    [1816.1, '5′ 11 ½″'],
    [1828.8, '6′ 0″'],
    [1828.7, '6′ 0″'],
    [930.275, '3′ 0 ⅝″'],
    [152.4, '6″'],
    [-1803.4, '−5′ 11″'],
    [0, '0″'],
  ])('%d mm is %s', (mm, written) => {
    expect(writeFeet(mm)).toBe(written)
  })
})

describe('both units', () => {
  test('lead with the job’s own', () => {
    expect(writeLength(1803.4, 'mm')).toBe('1803.4 mm')
    expect(writeLength(930.275, 'in')).toBe('36 ⅝″')
    expect(writeBoth(930.275, 'mm')).toBe('930.3 mm · 36 ⅝″')
    expect(writeBoth(1803.4, 'in')).toBe('71″ · 1803.4 mm')
  })
})

describe('a kept length in an entry field', () => {
  test.each([
    [1830, 'mm', '1830'],
    [930.275, 'mm', '930.2750'],
    [930.275, 'in', '36 5/8"'],
    [15.875, 'in', '5/8"'],
    [1828.8, 'in', '72"'],
    [1830, 'in', '1830 mm'],
    [0, 'in', '0"'],
    [0, 'mm', '0'],
  ] as const)('%d mm in a job in %s stands as %j', (mm, unit, written) => {
    expect(writeForField(mm, unit)).toBe(written)
  })
})

describe('every length', () => {
  const anyMm = fc.double({ min: -12000, max: 12000, noNaN: true })
  const tenThousandths = fc.integer({ min: 500, max: 100_000_000 }).map((n) => n / 10_000)

  test('is written without -0, NaN, an exponent or an infinity', () => {
    fc.assert(
      fc.property(anyMm, (mm) => {
        for (const text of [
          writeMm(mm),
          writeShortMm(mm, 3),
          writeInches(mm),
          writeFeet(mm),
          writeBoth(mm, 'in'),
        ]) {
          expect(text).not.toMatch(/NaN|Infinity|e|undefined/)
          expect(text).not.toMatch(/[-−]0(\.0+)?(″| mm|$)/)
        }
      }),
      { seed: 254, numRuns: 2000 },
    )
  })

  test('in inches or feet reads back within a 32nd', () => {
    fc.assert(
      fc.property(tenThousandths, (mm) => {
        for (const text of [writeInches(mm), writeFeet(mm), writeLength(mm, 'in')])
          expect(Math.abs(readBack(text, 'mm') - mm)).toBeLessThanOrEqual(25.4 / 32 + 1e-9)
      }),
      { seed: 32, numRuns: 2000 },
    )
  })

  test('to 0.0001 mm in an entry field reads back as itself, without a question', () => {
    fc.assert(
      fc.property(tenThousandths, fc.constantFrom('mm' as const, 'in' as const), (mm, unit) => {
        expect(Math.abs(readBack(writeForField(mm, unit), unit) - mm)).toBeLessThan(1e-6)
        if (unit === 'mm') expect(readBack(writeForField(mm, unit), unit)).toBe(mm)
      }),
      { seed: 3048, numRuns: 2000 },
    )
  })

  test('to 0.1 mm reads back as itself', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 100_000 }), (tenths) => {
        expect(readBack(writeLength(tenths / 10, 'mm'), 'in')).toBe(tenths / 10)
      }),
      { seed: 10, numRuns: 1000 },
    )
  })

  test('that is none is a mistake of the program, and throws', () => {
    for (const mm of [NaN, Infinity, -Infinity, 1e10])
      for (const write of [writeMm, writeShortMm, writeInches, writeFeet])
        expect(() => write(mm)).toThrow(RangeError)
  })
})
