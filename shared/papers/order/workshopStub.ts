import { figureText } from '../../drawing/figureText.ts'
import type { Block } from '../flow.ts'
import type { Measure } from '../page.ts'
import { heading, paragraph, table } from '../table.ts'
import type { Supply } from './merchantPart.ts'
import type { TimberOrderInput } from './timberOrderInput.ts'

/** Where the paper is torn: what is over it goes out, what is under it stays. */
const tearLine = (width: number): Block => ({
  height: 6,
  above: 5,
  withNext: true,
  marks: (x, y) => [
    { kind: 'line', x1: x, y1: y + 1, x2: x + width, y2: y + 1, width: 0.3, ink: 'black', dash: [2.5, 1.8] },
    {
      ...{
        kind: 'text',
        x: x + width / 2,
        y: y + 5.2,
        text: 'tear off here: the upper part goes to the supplier',
      },
      ...{ size: 9, weight: 'regular', ink: 'grey', anchor: 'middle' },
    },
  ],
})

const jobWords = ({ order }: TimberOrderInput): string =>
  order.jobs
    .map(({ number, customer }) => [number, customer].filter((part) => part !== '').join(' '))
    .join(', ')

/** What stays in the workshop: for which jobs the timber is, and a box to tick for each row as it comes. */
export function stubBlocks(
  input: TimberOrderInput,
  { name, lines }: Supply,
  { width, measure }: { width: number; measure: Measure },
): Block[] {
  const { order, unit } = input
  const { write } = figureText(unit)
  const columns = [
    { title: '', width: 9 },
    { title: 'No.', width: 14, align: 'end' as const, size: 14, weight: 'semibold' as const },
    {
      title: unit === 'mm' ? 'Length mm' : 'Length',
      width: 28,
      align: 'end' as const,
      size: 14,
      weight: 'semibold' as const,
    },
    { title: 'Timber', width: width - 111 },
    { title: 'came, and on what day', width: 60 },
  ]
  const rows = lines.map(({ count, length, name: section }) => [
    { tick: true as const },
    ...[String(count), write(length), section, ''],
  ])
  const about = `Order ${order.number}${name === '' ? '' : ` from ${name}`}, for ${jobWords(input)}.`
  const note = order.note.trim()
  const said = note === '' ? [about] : [about, `Note: ${note}`]
  return [
    tearLine(width),
    { ...heading('To book in when it comes'), above: 0 },
    ...said.map((words) => ({ ...paragraph(words, { width, measure }), withNext: true })),
    ...table({ columns, rows }, measure),
  ]
}
