import { workshopSetting } from '../gate/figures.ts'
import { asInput, missingWords, moneyFigure, type Asked, type Costed } from './costedLine.ts'
import { estimateGroups } from './estimate.ts'
import { finishLines } from './finishLine.ts'
import { fixingLines, ironmongeryLines } from './pieceLines.ts'
import { toPence, type Pence } from './pence.ts'
import type { StandingBook } from './standingBook.ts'
import type { Currency, EstimateEntry } from './terms.ts'
import { timberLines } from './timberLines.ts'
import { workLines } from './workLines.ts'

type Overrule = EstimateEntry['overrules'][string]

/** A line at another quantity in its own unit: at its price, or in proportion where it has several. */
function atQuantity(line: Costed, quantity: number, currency: Currency): Costed {
  const ratio = line.quantity === 0 ? 0 : quantity / line.quantity
  const amount = toPence(line.each === null ? line.pence * ratio : quantity * line.each)
  return {
    ...line,
    quantity,
    pence: amount,
    missing: quantity === 0 ? null : line.missing,
    overruled: true,
    ...(line.metres === undefined ? {} : { metres: line.metres * ratio }),
    explain: () =>
      moneyFigure(amount, currency, {
        formula:
          line.each === null
            ? 'sum worked out × quantity put by hand / quantity worked out'
            : 'quantity put by hand × price, to a whole penny',
        inputs: {
          'quantity put by hand': quantity,
          'quantity worked out': line.quantity,
          ...(line.each === null
            ? asInput('sum worked out', line.pence, currency)
            : asInput('price', line.each, currency)),
        },
        source: line.explain().source,
      }),
  }
}

/** A line at a sum put by hand, whatever it was worked out as; it then needs no price. */
const atSum = (line: Costed, amount: Pence, currency: Currency): Costed => ({
  ...line,
  pence: amount,
  missing: null,
  overruled: true,
  explain: () =>
    moneyFigure(amount, currency, {
      formula: 'sum put by hand',
      inputs: {
        ...asInput('put by hand', amount, currency),
        ...asInput('worked out', line.pence, currency),
      },
      source: workshopSetting,
    }),
})

/** A line with what was put by hand; work has had its number and minutes already. */
function overruledLine(line: Costed, own: Overrule, currency: Currency): Costed {
  const counted =
    own.quantity === undefined || line.unit === 'minute' ? line : atQuantity(line, own.quantity, currency)
  return own.pence === undefined ? counted : atSum(counted, own.pence, currency)
}

/** A line still without a price says so. */
const withReason = (line: Costed): Costed =>
  line.missing === null ? line : { ...line, words: `${line.words}: ${missingWords[line.missing]}` }

/** Lines of the joiner's own, as they were put. */
const extraLines = ({ entry, settings }: Asked): Costed[] =>
  entry.extras.map(({ id, words, pence }) => ({
    id: `extras.${id}`,
    group: 'extras',
    words,
    quantity: 1,
    unit: 'each',
    each: pence,
    pence,
    priceId: null,
    missing: null,
    overruled: false,
    explain: () =>
      moneyFigure(pence, settings.currency, {
        formula: 'as entered',
        inputs: asInput('entered', pence, settings.currency),
        source: workshopSetting,
      }),
  }))

/** Every line of cost, in the order of their groups, with what was put by hand; none explained yet. */
export function costedLines(book: StandingBook, asked: Asked): Costed[] {
  const { overrules } = asked.entry
  const { currency } = asked.settings
  const lines = [
    ...timberLines(book, asked),
    ...fixingLines(book, asked),
    ...ironmongeryLines(book, asked),
    ...finishLines(book, asked),
    ...workLines(book, asked),
    ...extraLines(asked),
  ].map((line) => {
    const own = Object.hasOwn(overrules, line.id) ? overrules[line.id] : undefined
    return withReason(own ? overruledLine(line, own, currency) : line)
  })
  return estimateGroups.flatMap((group) => lines.filter((line) => line.group === group))
}
