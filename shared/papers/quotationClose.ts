import { writeMoney } from '../pricing/moneyText.ts'
import type { QuotedMoney } from '../pricing/quotation.ts'
import type { Business } from '../pricing/shapes.ts'
import { stacked, type Block } from './flow.ts'
import { paperDate } from './paperDate.ts'
import { careWords } from './quotationCare.ts'
import type { QuotationInput } from './quotationInput.ts'
import { dashed, strongLine, prose, section, type, typedLines, words } from './quotationLook.ts'
import { optionName, type PriceRoom } from './quotationPrice.ts'
import { priceRow } from './quotationTable.ts'

/** Most that the two lists may take beside one another, mm: past that they stand one under the other. */
const mostBeside = 70

const list = (title: string, text: string, room: PriceRoom): Block[] =>
  typedLines(text).length === 0 ? [] : [section(title), ...dashed(text, room)]

/** What is part of the price and what isn't, side by side where both are short. */
function includedBlocks({ included, notIncluded }: Business, room: PriceRoom): Block[] {
  const space = 8
  const half = { ...room, width: (room.width - space) / 2 }
  const [left, right] = [
    stacked(list('Included', included, half)),
    stacked(list('Not included', notIncluded, half)),
  ]
  if (left.height === 0 || right.height === 0 || Math.max(left.height, right.height) > mostBeside)
    return [...list('Included', included, room), ...list('Not included', notIncluded, room)]
  return [
    {
      height: Math.max(left.height, right.height),
      above: 6,
      marks: (x, y) => [...left.marks(x, y), ...right.marks(x + half.width + space, y)],
    },
  ]
}

/** How it is accepted, in a sentence. */
function howToAccept({ options, settings, validUntil }: QuotedMoney): string {
  const tick = options.length > 1 ? 'tick the one you choose, sign' : 'sign'
  const deposits = new Set(options.map(({ estimate }) => estimate.deposit))
  const [deposit] = deposits
  const sum =
    deposits.size === 1 && deposit !== undefined && deposit > 0
      ? ` with the deposit of ${writeMoney(deposit, settings.currency)}`
      : [...deposits].some((one) => one > 0)
        ? ' with its deposit'
        : ''
  return `To go ahead, please ${tick} and send back a copy${sum} by ${paperDate(validUntil)}.`
}

/** Each option with a box to tick and its total. */
function choices({ options, settings }: QuotedMoney, room: PriceRoom): Block[] {
  if (options.length < 2) return []
  const width = room.width - 8
  return options.map((option, i): Block => {
    const row = priceRow(
      { words: optionName(option, i), figures: [writeMoney(option.estimate.gross, settings.currency)] },
      { ...room, width, figure: 36, count: 1 },
    )
    return {
      ...row,
      above: i === 0 ? 2.4 : 0.6,
      marks: (x, y) => [
        { kind: 'box', x, y: y + 1, width: 4.2, height: 4.2, stroke: { width: 0.3, ink: 'black' } },
        ...row.marks(x + 8, y),
      ],
    }
  })
}

/** Room to sign, to write a name and a date. */
function signature(width: number): Block {
  const fields: [label: string, share: number][] = [
    ['Signed', 0.42],
    ['Name', 0.34],
    ['Date', 0.24],
  ]
  const space = 6
  return {
    height: 19,
    marks: (x, y) => {
      let at = x
      return fields.flatMap(([label, share]) => {
        const own = (width + space) * share - space
        const marks = [
          strongLine(at, y + 14, own),
          words(label, { x: at, y: y + 18 }, { size: type.small, ink: 'grey' }),
        ]
        at += own + space
        return marks
      })
    },
  }
}

/** The place to accept, all on one page. */
const acceptance = (money: QuotedMoney, room: PriceRoom): Block => ({
  ...stacked([
    section('Your order'),
    ...prose(howToAccept(money), room),
    ...choices(money, room),
    signature(room.width),
  ]),
  above: 6,
})

/** What follows the price: what is included, terms, looking after it, and the place to sign. */
export function closeBlocks({ business, money }: QuotationInput, room: PriceRoom): Block[] {
  const small = { ...room, size: type.small }
  const terms = typedLines(business.terms)
  return [
    ...includedBlocks(business, room),
    ...(terms.length === 0
      ? []
      : [section('Terms'), ...terms.flatMap((text) => prose(text, { ...small, above: 1.2 }))]),
    section('Looking after it'),
    ...careWords(money.options).flatMap((text) => prose(text, { ...small, above: 1, indent: 4, mark: '–' })),
    acceptance(money, room),
  ]
}
