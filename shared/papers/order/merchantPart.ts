import { figureText } from '../../drawing/figureText.ts'
import type { OrderLine } from '../../ordering/orderModel.ts'
import { writeMoney } from '../../pricing/moneyText.ts'
import { pence, sumPence, type Pence } from '../../pricing/pence.ts'
import type { Block } from '../flow.ts'
import type { Measure } from '../page.ts'
import { paperDate } from '../paperDate.ts'
import { letterhead } from '../quotationHead.ts'
import { paragraph, table, type Cell, type Column } from '../table.ts'
import { fitWords } from '../words.ts'
import { writeLine } from '../writeLine.ts'
import type { TimberOrderInput } from './timberOrderInput.ts'

/** The lines that go to one supplier. name is '' where none was named. */
export type Supply = { name: string; lines: OrderLine[] }

/** What is asked of each supplier, in the order's own order. */
export function supplies(lines: readonly OrderLine[]): Supply[] {
  const found = new Map<string, Supply>()
  for (const line of lines) {
    const key = `${line.supplierId}|${line.supplier}`
    const own = found.get(key)
    if (own) own.lines.push(line)
    else found.set(key, { name: line.supplier, lines: [line] })
  }
  return [...found.values()]
}

/** What a line comes to before tax. */
export const lineSum = ({ pence: each, count }: OrderLine): Pence => pence(each * count)

const sectionWords = ({ name, species }: OrderLine): string => (species === '' ? name : `${name}, ${species}`)

/** Lines of one section behind each other, the section said once. */
function lineRows(lines: readonly OrderLine[], input: TimberOrderInput): Cell[][] {
  const { write, other } = figureText(input.unit)
  const money = (sum: Pence) => writeMoney(sum, input.currency)
  const sections = [...new Set(lines.map(sectionWords))]
  return sections.flatMap((section) =>
    lines
      .filter((line) => sectionWords(line) === section)
      .map((line, i): Cell[] => [
        i === 0 ? section : 'the same',
        write(line.length),
        input.unit === 'mm' ? '' : other(line.length),
        String(line.count),
        money(pence(line.pence)),
        money(lineSum(line)),
      ]),
  )
}

const end = { align: 'end' as const }

/** Columns of what is asked for; in inches the millimetres stand beside them, since timber is sold by the metre. */
function columnsFor({ unit }: TimberOrderInput, width: number): Column[] {
  const cut = { ...end, size: 14, weight: 'semibold' as const }
  const other = unit === 'mm' ? 0 : 24
  return [
    { title: 'Timber', width: width - 102 - other },
    { title: unit === 'mm' ? 'Length mm' : 'Length', width: 28, ...cut },
    { title: '', width: other, ...end },
    { title: 'No.', width: 16, ...cut },
    { title: 'each', width: 26, ...end },
    { title: 'sum', width: 32, ...end },
  ].filter((column) => column.width > 0)
}

/** Metres of timber in all, to the tenth. */
const metres = (lines: readonly OrderLine[]): string =>
  (lines.reduce((sum, { length, count }) => sum + length * count, 0) / 1000).toFixed(1)

function totalBlock(lines: readonly OrderLine[], { currency }: TimberOrderInput, width: number): Block {
  const count = lines.reduce((sum, line) => sum + line.count, 0)
  const total = writeMoney(sumPence(lines.map(lineSum)), currency)
  const at = { kind: 'text' as const, size: 14, weight: 'semibold' as const, ink: 'black' as const }
  return {
    height: 8,
    marks: (x, y) => [
      { ...at, x, y: y + 6, text: 'Sum before tax', anchor: 'start' },
      {
        ...{ ...at, size: 11, weight: 'regular' as const, anchor: 'start' as const },
        ...{
          x: x + 44,
          y: y + 6,
          text: `${count} ${count === 1 ? 'length' : 'lengths'}, ${metres(lines)} m`,
        },
      },
      { ...at, x: x + width - 3, y: y + 6, text: total, anchor: 'end' },
    ],
  }
}

/** Number, day and to whom, over what is asked for. */
function addressed(
  { order }: TimberOrderInput,
  { name }: Supply,
  { width, measure }: { width: number; measure: Measure },
): Block {
  const base = { kind: 'text' as const, ink: 'black' as const, anchor: 'start' as const }
  const day = paperDate(order.placedOn)
  const room = width - measure(` · ${day}`, 12, 'regular')
  const whom = name === '' ? 'To your supplier' : `To ${name}`
  const { text, size } = fitWords(whom, { width: room, most: 12, least: 11, weight: 'regular' }, measure)
  return {
    height: 15,
    above: 5,
    withNext: true,
    marks: (x, y) => [
      { ...base, x, y: y + 5, size: 16, weight: 'semibold', text: `Timber order ${order.number}` },
      { ...base, x, y: y + 11.4, size, weight: 'regular', text: `${text} · ${day}` },
    ],
  }
}

/**
 * The part that goes to a supplier: the workshop's letterhead, number and day, what is asked for by section with the price of each and the sum
 * before tax, and where to write how it comes. Nothing of whom it is for.
 */
export function merchantBlocks(
  input: TimberOrderInput,
  supply: Supply,
  { width, measure }: { width: number; measure: Measure },
): Block[] {
  const columns = columnsFor(input, width)
  const rows = lineRows(supply.lines, input).map((cells) =>
    input.unit === 'mm' ? cells.filter((_, i) => i !== 2) : cells,
  )
  return [
    letterhead(input.workshop, input.business, { width, measure }),
    addressed(input, supply, { width, measure }),
    ...table({ columns, rows, followed: true }, measure),
    { ...totalBlock(supply.lines, input, width), withNext: true },
    {
      ...paragraph(
        'Prices as they stood on the day of the order. Please say before you cut or send if one has changed, or if a length can’t be had.',
        { width, measure },
      ),
      withNext: true,
    },
    writeLine(
      [
        { label: 'To be delivered, or fetched, on', share: 0.6 },
        { label: 'Signed', share: 0.4 },
      ],
      width,
    ),
  ]
}
