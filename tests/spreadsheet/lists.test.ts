import { describe, expect, it } from 'vitest'
import type { Writing } from '../../shared/spreadsheet/encoding.ts'
import { bytesOf, readBytes, readText } from './written.ts'

const writings: [name: string, writing: Writing, marked: boolean][] = [
  ['UTF-8 with its mark', 'utf-8', true],
  ['UTF-8 without', 'utf-8', false],
  ['UTF-16', 'utf-16le', true],
  ['windows-1252', 'windows-1252', false],
]
const delimiters = [
  ['semicolons', ';'],
  ['commas', ','],
  ['tabs', '\t'],
  ['bars', '|'],
] as const

const quoted = (cell: string, delimiter: string) =>
  cell.includes(delimiter) || cell.includes('"') ? `"${cell.replaceAll('"', '""')}"` : cell
const sum = (pence: number, comma: boolean) => {
  const [whole = '', part = ''] = (pence / 100).toFixed(2).split('.')
  const grouped = whole.replace(/(\d)(?=(\d{3})+$)/g, comma ? '$1.' : '$1,')
  return `${grouped}${comma ? ',' : '.'}${part}`
}
/** An invented list: words with letters beyond plain English, an inch mark, the delimiter inside a cell, a sum over a thousand. */
const goods: [code: string, words: string, unit: string, pence: number][] = [
  ['HB-450', 'Strap hinge 18", black; heavy, with pins', 'pr', 2345],
  ['TL-0012', 'Mélèze « prêt à peindre »', '3.6 m', 1907],
  ['DK/7', 'Türband für Tor | lang', 'ea', 123456],
  ['SC050', 'Screws 5 × 50, stainless', 'box of 200', 1189],
]

describe('a merchant’s list, however it was written', () => {
  for (const [written, writing, marked] of writings)
    for (const [apart, delimiter] of delimiters)
      for (const comma of [false, true])
        it(`reads ${written}, ${apart}, decimal ${comma ? 'comma' : 'point'}`, () => {
          const rows = [
            ['Product code', 'Description', 'Unit', 'Net price'],
            ...goods.map(([code, words, unit, pence]) => [code, words, unit, sum(pence, comma)]),
          ]
          const text = rows
            .map((row) => row.map((cell) => quoted(cell, delimiter)).join(delimiter))
            .join('\r\n')
          for (const piece of [7, 4096]) {
            const list = readBytes(bytesOf(`${text}\r\n`, writing, marked), { piece })
            expect(list.writing).toBe(writing)
            expect(list.look.delimiter).toBe(delimiter)
            expect(list.look.layout.decimal).toBe(comma ? 'comma' : 'point')
            expect(list.bad).toEqual([])
            expect(list.lines.map(({ code, words, pence }) => [code, words, pence])).toEqual(
              goods.map(([code, words, , pence]) => [code, words, pence]),
            )
            expect(list.lines.map(({ line }) => line)).toEqual([2, 3, 4, 5])
            expect(list.lines.map(({ per }) => per)).toEqual([
              { unit: 'pair', size: null },
              { unit: 'length', size: 3600 },
              { unit: 'each', size: null },
              { unit: 'box', size: 200 },
            ])
          }
        })

  it('reads the euro sign and the curly apostrophe of windows-1252', () => {
    const list = readBytes(
      bytesOf('code;name;price\nA1;joiner’s pencil;€ 1,20\nA2;chalk;€ 2,35\n', 'windows-1252', false),
    )
    expect(list.lines.map(({ words, pence }) => [words, pence])).toEqual([
      ['joiner’s pencil', 120],
      ['chalk', 235],
    ])
  })

  it('takes the delimiter that a first line names, against the look of the rest', () => {
    const list = readText('sep=|\ncode|name|price\nA1|a, b, c, d|4.10\nA2|e, f, g, h|5.20\n')
    expect(list.look.delimiter).toBe('|')
    expect(list.lines.map(({ code, line, pence }) => [code, line, pence])).toEqual([
      ['A1', 3, 410],
      ['A2', 4, 520],
    ])
  })

  it('isn’t led astray by decimal commas where semicolons stand between', () => {
    const list = readText('A1;4,10\nA2;5,20\nA3;6,35\n')
    expect(list.look.delimiter).toBe(';')
    expect(list.look.layout).toMatchObject({
      headings: null,
      decimal: 'comma',
      columns: { code: 0, price: 1 },
    })
    expect(list.lines.map(({ pence }) => pence)).toEqual([410, 520, 635])
  })

  it('takes prices with the tax in them where the list has no others', () => {
    const priceOf = (headings: string, cells: string) =>
      readText(`Code;Description;${headings}\nA1;Redwood board;${cells}\nA2;Oak post;${cells}\n`).lines[0]
        ?.pence
    expect(priceOf('Price inc VAT', '12.00')).toBe(1200)
    expect(priceOf('Price inc VAT;Price ex VAT', '12.00;10.00')).toBe(1000)
    expect(priceOf('VAT;Trade price', '2.00;10.00')).toBe(1000)
  })

  it('passes over a title and an address above the headings', () => {
    const list = readText(
      'Much Mallet Timber (invented);;;\nPrices from 1 March;;;\n;;;\nCode;Description;Per;Trade price\nA1;Redwood board;m;2,15\n',
    )
    expect(list.bad).toEqual([])
    expect(list.lines).toEqual([
      {
        line: 5,
        code: 'A1',
        words: 'Redwood board',
        supplier: '',
        per: { unit: 'metre', size: null },
        listed: 215,
        pence: 215,
        rounded: false,
      },
    ])
  })

  it('keeps a line end inside quotation marks, and counts lines on past it', () => {
    const list = readText('code,name,price\nA1,"Tee hinge\nblack",4.10\nA2,Bolt,5.20\n')
    expect(list.lines.map(({ line, words }) => [line, words])).toEqual([
      [2, 'Tee hinge\nblack'],
      [4, 'Bolt'],
    ])
  })

  it('reads lists that end their lines in the three ways, mixed', () => {
    const list = readText('code,name,price\rA1,Bolt,4.10\r\nA2,Latch,5.20\nA3,Keep,6.30')
    expect(list.lines.map(({ line, code }) => [line, code])).toEqual([
      [2, 'A1'],
      [3, 'A2'],
      [4, 'A3'],
    ])
  })

  it('finds the column of codes by the codes the book has, whatever its heading', () => {
    const text = 'Nr,Unser Zeichen,Text,Preis\n1,QX,Larch board,3.40\n2,RM,Oak post,44.10\n'
    expect(readText(text, { known: ['QX', 'RM'] }).look.layout.columns).toMatchObject({
      code: 1,
      words: 2,
      price: 3,
    })
  })

  it('prefers the net price to a retail price and to tax', () => {
    const { columns } = readText(
      'Code,Description,RRP,VAT,Net\nA1,Tee hinge,9.99,2.00,4.10\nA2,Drop bolt,8.99,1.80,3.20\n',
    ).look.layout
    expect(columns.price).toBe(4)
  })
})
