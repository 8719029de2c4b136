import * as v from 'valibot'
import { specShape } from '../gate/spec.ts'
import { isPence, pence } from './pence.ts'
import { mostMarginBp } from './profit.ts'
import { priceUnits } from './price.ts'
import { currencies, taxRoundings } from './terms.ts'
import { operations } from './needs.ts'

/** Parsers for money where it comes in from outside. Each says what is accepted. */
const words = (most = 300) =>
  v.pipe(v.string('a text'), v.maxLength(most, `a text of up to ${most} characters`))
const range = (called: string, least: number, most: number) => {
  const accepted = `${called} from ${least} to ${most}`
  return v.pipe(
    v.number(accepted),
    v.finite(accepted),
    v.minValue(least, accepted),
    v.maxValue(most, accepted),
  )
}
const whole = (called: string, least: number, most: number) =>
  v.pipe(range(called, least, most), v.integer(`${called}, whole`))

/** Whether the calendar has a day written as 2026-05-31: no 31 February. */
function isInCalendar(iso: string): boolean {
  const [year = 0, month = 0, date = 0] = iso.split('-').map(Number)
  const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0
  const days = [31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month - 1] ?? 0
  return date >= 1 && date <= days
}

export const day = v.pipe(
  v.string('a day as 2026-05-31'),
  v.isoDate('a day as 2026-05-31'),
  v.check(isInCalendar, 'a day that the calendar has, as 2026-05-31'),
)
export const rowId = whole('a number', 1, Number.MAX_SAFE_INTEGER)
const sum = v.pipe(
  v.number('a sum in whole pence'),
  v.check((amount) => isPence(amount), 'a sum in whole pence, up to ten million pounds'),
  v.transform(pence),
)
const notNegative = v.pipe(
  v.number('a price in whole pence, not below 0'),
  v.check((amount) => isPence(amount) && amount >= 0, 'a price in whole pence, not below 0'),
  v.transform(pence),
)
const percent = (most = 10_000) => whole('basis points', 0, most)
const length = range('a length in mm', 0.1, 20_000)

export const itemFacts = v.variant('kind', [
  v.strictObject({
    kind: v.literal('timber'),
    name: words(),
    facts: v.strictObject({
      use: v.picklist(['boards', 'ledges', 'braces', 'frame', 'other']),
      species: words(60),
      exThickness: length,
      exWidth: length,
      thickness: length,
      width: length,
      tongue: v.nullable(range('a length in mm', 0, 100)),
      groove: v.nullable(range('a length in mm', 0, 100)),
      treated: v.boolean('yes or no'),
    }),
  }),
  v.strictObject({
    kind: v.literal('ironmongery'),
    name: words(),
    facts: v.strictObject({ piece: v.nullable(words(60)) }),
  }),
  v.strictObject({
    kind: v.literal('fixing'),
    name: words(),
    facts: v.strictObject({
      form: v.picklist(['screw', 'nail', 'bolt', 'other']),
      diameter: length,
      length,
    }),
  }),
  v.strictObject({
    kind: v.literal('finish'),
    name: words(),
    facts: v.strictObject({
      coverage: range('m² a litre', 0.1, 100),
      coats: whole('a number of coats', 1, 10),
    }),
  }),
  v.strictObject({
    kind: v.literal('work'),
    name: words(),
    facts: v.strictObject({ rate: v.picklist(['hour', 'site hour', 'kilometre', 'visit']) }),
  }),
])

export const supplierShape = v.strictObject({ name: words(), phone: words(60), notes: words(2000) })

export const supplyShape = v.strictObject({
  itemId: rowId,
  supplierId: rowId,
  code: words(60),
  lengths: v.pipe(v.array(length), v.maxLength(30, 'up to 30 lengths')),
  usual: v.boolean('yes or no'),
})

export const newPriceShape = v.pipe(
  v.strictObject({
    itemId: rowId,
    supplierId: v.nullable(rowId),
    unit: v.picklist(priceUnits, `one of ${priceUnits.join(', ')}`),
    size: v.nullable(range('a size', 0.001, 1_000_000)),
    pence: notNegative,
    startsOn: day,
  }),
  v.forward(
    v.check(
      ({ unit, size }) => (size !== null) === (unit === 'length' || unit === 'box' || unit === 'tin'),
      'a size for a length, a box or a tin, and none for the rest',
    ),
    ['size'],
  ),
)

const profit = v.pipe(
  v.strictObject({ by: v.picklist(['markup', 'margin']), bp: percent(100_000) }),
  v.check(
    ({ by, bp }) => by === 'markup' || bp <= mostMarginBp,
    `a margin of up to ${mostMarginBp / 100} %, or a markup`,
  ),
)

const discount = v.variant('by', [
  v.strictObject({ by: v.literal('percent'), bp: percent() }),
  v.strictObject({ by: v.literal('sum'), pence: notNegative }),
])

const lineId = words(200)

export const entryShape = v.strictObject({
  overrules: v.record(
    lineId,
    v.strictObject({
      quantity: v.optional(range('a quantity', 0, 1_000_000)),
      minutes: v.optional(range('minutes', 0, 1_000_000)),
      pence: v.optional(notNegative),
    }),
  ),
  extras: v.pipe(
    v.array(
      v.strictObject({ id: words(40), words: words(), pence: sum, group: v.picklist(['making', 'hanging']) }),
    ),
    v.maxLength(50, 'up to 50 lines of your own'),
  ),
  chosen: v.record(lineId, rowId),
  finish: v.nullable(v.strictObject({ itemId: rowId, coats: v.nullable(whole('a number of coats', 1, 10)) })),
  siteVisits: whole('a number of visits', 0, 100),
  kilometres: range('kilometres', 0, 10_000),
  discount: v.nullable(discount),
  profit: v.nullable(profit),
  depositBp: v.nullable(percent()),
})

export const moneyShape = v.strictObject({
  currency: v.picklist(currencies),
  tax: v.strictObject({
    registered: v.boolean('yes or no'),
    name: words(30),
    number: words(60),
    rates: v.pipe(
      v.array(v.strictObject({ from: day, bp: percent() })),
      v.minLength(1, 'at least one rate'),
      v.maxLength(50, 'up to 50 rates'),
    ),
    rounding: v.picklist(taxRoundings),
  }),
  timberBy: v.optional(v.picklist(['lengths', 'waste'], 'lengths or waste'), 'lengths'),
  wasteBp: percent(),
  overheadBp: percent(100_000),
  profit,
  depositBp: percent(),
  validDays: whole('a number of days', 1, 365),
  fixingsBy: v.picklist(['share', 'box']),
  finishBy: v.picklist(['share', 'tin']),
})

const minutes = range('minutes', 0, 10_000)
export const timesShape = v.strictObject(
  Object.fromEntries(operations.map((operation) => [operation, minutes])) as Record<
    (typeof operations)[number],
    typeof minutes
  >,
)

export const workDoneShape = v.strictObject({
  jobId: rowId,
  what: v.picklist(['hours', 'timber', 'cost']),
  group: v.picklist(['timber', 'fixings', 'ironmongery', 'finish', 'making', 'hanging', 'extras']),
  operation: words(60),
  quantity: range('a quantity', -1_000_000, 1_000_000),
  note: words(2000),
  on: day,
})

/** The workshop as it stands on a customer's paper. logo: a PNG or JPEG in base64, null for none. */
export const businessShape = v.strictObject({
  address: words(1000),
  phone: words(60),
  email: words(200),
  website: words(200),
  terms: words(8000),
  included: words(4000),
  notIncluded: words(4000),
  logo: v.nullable(v.pipe(v.string(), v.maxLength(1_500_000, 'a picture of up to 1 MB'))),
})
export type Business = v.InferOutput<typeof businessShape>

export const optionShape = v.strictObject({
  name: words(60),
  spec: v.nullable(specShape),
  entry: entryShape,
})
