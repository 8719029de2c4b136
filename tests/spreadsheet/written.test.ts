import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { decimalOf, readAmount } from '../../shared/spreadsheet/amount.ts'
import { delimiters } from '../../shared/spreadsheet/delimiter.ts'
import { guard, unguard } from '../../shared/spreadsheet/guard.ts'
import { readRows, type Row } from '../../shared/spreadsheet/rows.ts'
import { readUnit, writeUnit } from '../../shared/spreadsheet/unitWords.ts'
import { writeList, plainSum } from '../../shared/spreadsheet/writeList.ts'

const runs = { seed: 20260311, numRuns: 2000 }
const cell = fc.oneof(
  fc.string({ unit: 'grapheme', maxLength: 12 }),
  fc.string({
    unit: fc.constantFrom('"', "'", '=', '-', '+', '@', ';', ',', '|', '\t', '\n', ' ', 'a', '1'),
    maxLength: 8,
  }),
)

describe('a list that is written', () => {
  it('guards what a spreadsheet would work out, and leaves plain numbers below nothing alone', () => {
    expect(['=1+1', '+44 20', '-x', '@SUM', '\tx', '\rx'].map(guard)).toEqual([
      "'=1+1",
      "'+44 20",
      "'-x",
      "'@SUM",
      "'\tx",
      "'\rx",
    ])
    expect(['-4.20', '-12', '4.20', 'a=b', "'s"].map(guard)).toEqual(['-4.20', '-12', '4.20', 'a=b', "'s"])
  })

  it('gives every cell back when its guard is taken off', () => {
    fc.assert(
      fc.property(cell, (text) => {
        fc.pre(!/^="[^"]*"$/.test(text))
        expect(unguard(guard(text))).toBe(text)
      }),
      runs,
    )
  })

  it('never lets a cell begin with what is worked out', () => {
    fc.assert(
      fc.property(cell, (text) => {
        expect(guard(text)).toMatch(/^(?![=+\-@\t\r])|^-\d+([.,]\d+)?$/)
      }),
      runs,
    )
  })

  it('comes back row for row, cut into pieces anywhere, with each delimiter', () => {
    fc.assert(
      fc.property(
        fc.array(fc.array(cell, { minLength: 2, maxLength: 5 }), { minLength: 1, maxLength: 8 }),
        fc.constantFrom(...delimiters),
        fc.integer({ min: 1, max: 40 }),
        (rows, delimiter, piece) => {
          const full = rows.filter((row) => row.some((one) => unguard(guard(one)).trim() !== ''))
          fc.pre(full.length > 0 && !/^"?sep=/i.test(full[0]?.[0] ?? ''))
          const text = writeList(full, delimiter).slice(1)
          const read: Row[] = []
          const reader = readRows(delimiter, {
            row: (row) => read.push(row),
            bad: (line) => expect.unreachable(`line ${line.line}: ${line.reason}`),
          })
          for (let at = 0; at < text.length; at += piece) reader.feed(text.slice(at, at + piece))
          reader.end()
          expect(read.map(({ cells }) => cells.map(unguard))).toEqual(
            full.map((row) => row.map((one) => unguard(guard(one)))),
          )
        },
      ),
      runs,
    )
  })

  it('has each sum read back to the penny, with either mark', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1_000_000_000 }), (pence) => {
        const point = plainSum(pence)
        expect(readAmount(point, 'point')).toEqual({ ok: true, hundredths: pence })
        expect(readAmount(point.replace('.', ','), 'comma')).toEqual({ ok: true, hundredths: pence })
      }),
      runs,
    )
  })

  it('has each unit read back', () => {
    const units = [
      { unit: 'metre', size: null },
      { unit: 'length', size: 4850.5 },
      { unit: 'each', size: null },
      { unit: 'pair', size: null },
      { unit: 'box', size: 250 },
      { unit: 'tin', size: 0.75 },
      { unit: 'hour', size: null },
      { unit: 'kilometre', size: null },
      { unit: 'visit', size: null },
    ] as const
    expect(units.map((one) => readUnit(writeUnit(one)))).toEqual(units)
  })

  it('tells the decimal mark of a column from its cells together', () => {
    expect(decimalOf(['1,234', '12,5', '7'], 'point')).toBe('comma')
    expect(decimalOf(['1,234', '12.5', '7'], 'comma')).toBe('point')
    expect(decimalOf(['1,234', '7'], 'comma')).toBe('comma')
    expect(readAmount('1,234', 'point')).toEqual({ ok: true, hundredths: 123_400 })
    expect(readAmount('1,234', 'comma')).toEqual({ ok: true, hundredths: 123.4 })
  })
})
