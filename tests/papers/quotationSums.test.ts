import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { quotation } from '../../shared/papers/quotation.ts'
import { taxRoundings } from '../../shared/pricing/terms.ts'
import { moneyOf, quotationOf, vat } from './quotationInputs.ts'
import { printedRows } from './quotationReading.ts'

describe('a quotation’s sums', () => {
  const offer = fc.record({
    lines: fc.array(
      fc.tuple(
        fc.constantFrom('Gate', 'Hanging', 'Delivery', 'Lock', 'Posts'),
        fc.integer({ min: -5_000, max: 900_000 }),
      ),
      { minLength: 1, maxLength: 9 },
    ),
    depositBp: fc.integer({ min: 0, max: 10_000 }),
    taxBp: fc.constantFrom(0, 500, 875, 1750, 2000, 2100),
  })

  it('are the sums of the lines printed over them, whatever the offer, the rounding and the number of options', () => {
    fc.assert(
      fc.property(
        fc.array(offer, { minLength: 1, maxLength: 4 }),
        fc.constantFrom(...taxRoundings),
        fc.boolean(),
        (offers, rounding, registered) => {
          const byLine = registered && rounding.startsWith('line')
          const money = moneyOf(offers, vat(rounding, registered))
          const rows = printedRows(quotation(quotationOf({ money })))
          const tables = tablesOf(rows, byLine)
          expect(tables.flatMap((table) => table.gross)).toEqual(
            money.options.map(({ estimate }) => estimate.gross * 10),
          )
          for (const { lines, net, tax, gross, deposit, balance } of tables)
            gross.forEach((total, i) => {
              if (lines.length > 0) {
                const sum = lines.reduce((all, { sums }) => all + (sums[i] ?? NaN), 0)
                expect(registered ? net[i] : total).toBe(sum)
              }
              if (registered) expect((net[i] ?? NaN) + (tax[i] ?? NaN)).toBe(total)
              if (deposit.length > 0) expect((deposit[i] ?? NaN) + (balance[i] ?? NaN)).toBe(total)
            })
          if (byLine) expectLineTax(rows, offers.length)
        },
      ),
      { seed: 20_260_504, numRuns: 120 },
    )
  })

  type Row = ReturnType<typeof printedRows>[number]
  const of = (rows: Row[], start: string): number[] =>
    rows.find(({ label }) => label.startsWith(start))?.sums ?? []

  /** One table for each row of options: the lines over the sums (none of a line's tax), and the sums. */
  function tablesOf(rows: Row[], byLine: boolean) {
    const own = /^(Price without|VAT|Total|Deposit|Balance|In all|Option)/
    const tables: { lines: Row[]; sums: Row[] }[] = [{ lines: [], sums: [] }]
    for (const row of rows) {
      if (/^(In all|Option)/.test(row.label)) continue
      const isSum = own.test(row.label)
      const last = tables.at(-1)
      if (!isSum && last && last.sums.length > 0) tables.push({ lines: [row], sums: [] })
      else if (
        isSum &&
        /^(Price without|Total$)/.test(row.label) &&
        last &&
        last.sums.some(({ label }) => label.startsWith('Total'))
      )
        tables.push({ lines: [], sums: [row] })
      else (isSum ? last?.sums : last?.lines)?.push(row)
    }
    return tables
      .filter(({ sums }) => sums.length > 0)
      .map(({ lines, sums }) => ({
        lines: byLine ? lines.map(({ label, sums: [net = NaN] }) => ({ label, sums: [net] })) : lines,
        net: of(sums, 'Price without'),
        tax: of(sums, 'VAT'),
        gross: of(sums, 'Total'),
        deposit: of(sums, 'Deposit'),
        balance: of(sums, 'Balance'),
      }))
  }

  /** Where each line's tax is shown, the column adds up too: to what is said in all, and taken down to the tax of the total. */
  function expectLineTax(rows: Row[], options: number): void {
    if (options === 1) {
      const lines = rows.filter(({ sums }) => sums.length === 2)
      const all = lines.reduce((sum, { sums }) => sum + (sums[1] ?? NaN), 0)
      expect(Math.trunc(all / 10) * 10 + 0).toBe((of(rows, 'VAT')[0] ?? NaN) + 0)
      return
    }
    let [net, tax] = [0, 0]
    let ends = 0
    for (const { label, sums } of rows) {
      if (/^(Price without|VAT|Total|Deposit|Balance|Option)/.test(label) || sums.length !== 2) continue
      if (label === 'In all') {
        expect(sums).toEqual([net, tax])
        ;[net, tax] = [0, 0]
        ends += 1
        continue
      }
      net += sums[0] ?? NaN
      tax += sums[1] ?? NaN
    }
    expect(ends).toBe(options)
  }
})
