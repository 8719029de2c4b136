import { describe, expect, it } from 'vitest'
import { notAList } from '../../shared/spreadsheet/encoding.ts'
import { bytesOf, readText } from './written.ts'
import { soak } from '../fixtures/sample.ts'

const head = 'code;name;unit;price\n'
const reasons = (text: string) => readText(head + text).bad.map(({ line, reason }) => [line, reason])
const sound = (text: string) => readText(head + text).lines.map(({ code }) => code)

describe('a line that can’t be used is told with its number and the reason, and the rest is read', () => {
  const around = (line: string) => `A1;Bolt;ea;4,10\n${line}\nA3;Keep;ea;6,30\n`
  const cases: [what: string, line: string, reason: string][] = [
    ['an exponent', 'A2;Latch;ea;1e308', '“1e308” isn’t written in plain figures'],
    ['a price below nothing', 'A2;Latch;ea;-5,20', '“-5,20” is below nothing'],
    ['a price in brackets', 'A2;Latch;ea;(5,20)', '“(5,20)” is below nothing'],
    ['a price of nothing', 'A2;Latch;ea;0,00', 'a price of nothing'],
    ['no price', 'A2;Latch;ea;', 'no price on this line'],
    ['words for a price', 'A2;Latch;ea;POA', '“POA” isn’t a price'],
    ['eleven million', 'A2;Latch;ea;11000000,00', '“11000000,00” is over ten million'],
    ['a thousand figures', `A2;Latch;ea;${'9'.repeat(1000)}`, `“${'9'.repeat(30)}” is over ten million`],
    ['a formula', 'A2;Latch;ea;=1+1', '“=1+1” is a sum for the spreadsheet to work out, not a price'],
    [
      'a formula behind our guard',
      "A2;Latch;ea;'=1+1",
      '“=1+1” is a sum for the spreadsheet to work out, not a price',
    ],
    ['the other decimal mark', 'A2;Latch;ea;5.20', '“5.20” doesn’t fit a column with a decimal comma'],
    ['a NUL', 'A2;La\0tch;ea;5,20', 'it holds a mark that can’t be read'],
    ['a cell too many', 'A2;Latch;black;ea;5,20', '5 cells where the list has 4 columns'],
    ['a cell too few', 'A2;Latch;ea', 'no price on this line'],
    ['neither code nor name', ';;ea;5,20', 'neither a code nor a name'],
    ['an unknown unit', 'A2;Latch;furlong;5,20', '“furlong” is no unit I know'],
    [
      'a tenth of a penny',
      'A2;Latch;ea;0,001',
      '“0,001” can’t be told in whole pence: price it by the box or the length',
    ],
    [
      'a quotation mark not closed',
      'A2;"Latch;ea;5,20',
      'a quotation mark is opened on this line and not closed',
    ],
  ]
  for (const [what, line, reason] of cases)
    it(`${what}`, () => {
      expect(reasons(around(line))).toEqual([[3, reason]])
      expect(sound(around(line))).toEqual(['A1', 'A3'])
    })

  it('a quotation mark not closed on the last line spoils that line only', () => {
    const text = 'A1;Bolt;ea;4,10\nA2;"Latch;ea;5,20'
    expect(reasons(text)).toEqual([[3, 'a quotation mark is opened on this line and not closed']])
    expect(sound(text)).toEqual(['A1'])
  })

  it('a quotation mark not closed near the start of 3,000 lines spoils that line only', () => {
    const lines = Array.from({ length: 3000 }, (_, n) =>
      n === 4 ? 'X;"Latch;ea;5,20' : `C${n};Bolt ${n};ea;${n + 1},10`,
    )
    const list = readText(head + lines.join('\n'))
    expect(list.lines.length).toBe(2999)
    expect(list.bad.map(({ line }) => line)).toEqual([6])
    expect(list.lines.at(-1)).toMatchObject({ code: 'C2999', line: 3001, pence: 300_010 })
  })

  it('a quotation mark inside a cell is a plain inch mark', () => {
    expect(readText(`${head}A2;Hinge 12" black;ea;5,20\n`).lines[0]).toMatchObject({
      words: 'Hinge 12" black',
      pence: 520,
    })
  })

  it('gives up with a sentence when hundreds of lines can’t be told apart', () => {
    const list = readText(head + Array.from({ length: 900 }, (_, n) => `"A${n};x`).join('\n'))
    expect(list.gaveUp).toMatch(/^More than 200 lines can’t be told apart/)
  })

  it('takes sums with signs, spaces between thousands and a code kept by ="…"', () => {
    const list = readText(
      `${head}="00123";Post;ea;€ 1 234,50\n00124;Post;ea;1.234,5\n00125;Post;ea;1’234,00 EUR\n`,
    )
    expect(list.bad).toEqual([])
    expect(list.lines.map(({ code, pence }) => [code, pence])).toEqual([
      ['00123', 123_450],
      ['00124', 123_450],
      ['00125', 123_400],
    ])
  })

  it('rounds a price with a part of a penny, and says so', () => {
    expect(
      readText(`${head}A1;Board;m;2,345\nA2;Board;m;2,34\n`).lines.map(({ pence, rounded }) => [
        pence,
        rounded,
      ]),
    ).toEqual([
      [235, true],
      [234, false],
    ])
  })

  it('says what a thing that is no list is, before reading it', () => {
    expect(notAList(Uint8Array.of(0x50, 0x4b, 3, 4, 20))).toMatch(/workbook/)
    expect(notAList(bytesOf('%PDF-1.7\n', 'utf-8', false))).toMatch(/printed page/)
    expect(notAList(new Uint8Array(200))).toMatch(/isn’t a list/)
    expect(notAList(new Uint8Array())).toMatch(/nothing in it/)
    expect(notAList(bytesOf('a;b', 'utf-16le', true))).toBeUndefined()
    expect(notAList(bytesOf('a;b', 'windows-1252', false))).toBeUndefined()
  })

  const count = soak ? 1_000_000 : 200_000
  it(`reads ${count} lines, every one accounted for`, () => {
    const lines = Array.from({ length: count }, (_, n) =>
      n % 1000 === 7 ? `C${n};Bolt;ea;POA` : `C${n};Bolt;ea;4,${10 + (n % 90)}`,
    )
    const list = readText(`${head}${lines.join('\n')}\n`, { piece: 1 << 20 })
    expect(list.lines.length).toBe(count - count / 1000)
    expect(list.bad.length).toBe(count / 1000)
    expect(list.bad.at(-1)).toMatchObject({ line: count - 991, reason: '“POA” isn’t a price' })
    expect(list.lines.at(-1)).toMatchObject({ line: count + 1, code: `C${count - 1}` })
  })
})
