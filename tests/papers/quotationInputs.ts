import { describeGate } from '../../shared/describe/describeGate.ts'
import { design } from '../../shared/gate/design.ts'
import type { GateSpec } from '../../shared/gate/spec.ts'
import type { LengthUnit } from '../../shared/job/job.ts'
import type { QuotationInput } from '../../shared/papers/quotationInput.ts'
import type { EstimateLine, OfferLine } from '../../shared/pricing/estimate.ts'
import { needsOf } from '../../shared/pricing/needsOf.ts'
import { pence, sumPence } from '../../shared/pricing/pence.ts'
import type { QuotedMoney, QuotedOption } from '../../shared/pricing/quotation.ts'
import type { Business } from '../../shared/pricing/shapes.ts'
import { standardMoney } from '../../shared/pricing/standardMoney.ts'
import { standardTimes } from '../../shared/pricing/standardTimes.ts'
import { taxOn } from '../../shared/pricing/tax.ts'
import { plainEntry, type MoneySettings, type TaxRounding } from '../../shared/pricing/terms.ts'
import { wholeGates } from '../drawing/wholeGates.ts'
import { header } from '../fixtures/cards.ts'

/** The workshop on a customer's paper, invented. */
export const business: Business = {
  address: 'Unit 3, Test Yard\nTest Lane\nTestford\nTT1 2ZZ',
  phone: '01632 960 111',
  email: 'bench@workshop.example',
  website: 'workshop.example',
  terms:
    'The deposit is due with your order; the balance within 14 days of the work being done.\nWork is put in hand in the order in which deposits come in; we tell you the week once yours has.\nThe goods stay ours until they are paid for.',
  included:
    'Measuring on site\nAll timber, fixings and ironmongery described here\nDelivery within 20 miles\nHanging on posts that are sound',
  notIncluded: 'New posts or work on walls\nPainting after hanging\nRemoving what stands there now',
  logo: null,
}

export const whole = (name: string): GateSpec => {
  const found = wholeGates.find((one) => one.name === name)
  if (!found) throw new Error(`no gate ${name}`)
  return found.spec
}

/** Amounts of the workshop's own that no customer may read: none of them is a sum of others. */
export const secret = { cost: 71_317, overhead: 10_698, profit: 16_403, each: 4_127 } as const

const figure = {
  value: 1,
  unit: '',
  formula: 'a formula of the bench',
  inputs: {},
  source: 'its own book',
} as const

const internal: EstimateLine = {
  id: 'timber.secret',
  group: 'timber',
  words: 'Boards from Secret Merchant',
  quantity: 17.3,
  unit: 'metre',
  each: pence(secret.each),
  pence: pence(secret.cost),
  priceId: 1,
  missing: null,
  overruled: false,
  how: figure as EstimateLine['how'],
}

/** What one option is offered as: its gate and its lines, pence without tax. */
export type Offered = {
  name?: string
  spec?: GateSpec
  description?: string[]
  lines: [words: string, net: number][]
  depositBp?: number
  taxBp?: number
}

/** An option whose sums follow from its lines, as they are worked out everywhere. */
export function optionOf(offered: Offered, settings: MoneySettings, unit: LengthUnit): QuotedOption {
  const spec = offered.spec ?? whole('01-plain-left')
  const made = design(spec)
  if (!made.made) throw new Error('this gate can’t be made')
  const nets = offered.lines.map(([, net]) => pence(net))
  const net = sumPence(nets)
  const taxBp = settings.tax.registered ? (offered.taxBp ?? 2000) : 0
  const { tenths, totalTenths, tax } = taxOn(nets, taxBp, settings.tax.rounding)
  const gross = pence(net + tax)
  const how = figure as EstimateLine['how']
  return {
    name: offered.name ?? '',
    spec,
    description:
      offered.description ??
      describeGate({ spec, design: made.design, unit, finish: { name: 'clear oil', coats: 2 } }),
    needs: needsOf(spec, made.design),
    entry: plainEntry,
    estimate: {
      on: '2026-05-04',
      lines: [internal],
      cost: pence(secret.cost),
      overhead: pence(secret.overhead),
      profit: pence(secret.profit),
      discount: pence(0),
      net,
      taxBp,
      taxTenths: totalTenths,
      tax,
      gross,
      deposit: pence(Math.floor((gross * (offered.depositBp ?? 3000)) / 10_000)),
      asked: { by: 'markup', bp: 2357 },
      markupBp: 2357,
      marginBp: 1907,
      missing: [],
      how: { overhead: how, profit: how, discount: how, tax: how, deposit: how },
    },
    offer: offered.lines.map(([words, own], i): OfferLine => ({
      words,
      net: pence(own),
      taxTenths: tenths[i] ?? 0,
    })),
  }
}

/** Money of a workshop registered for VAT unless told. */
export function moneyOf(
  offers: Offered[],
  { unit = 'mm', ...parts }: Partial<MoneySettings> & { unit?: LengthUnit } = {},
): QuotedMoney {
  const settings: MoneySettings = {
    ...standardMoney,
    tax: { ...standardMoney.tax, number: 'TT 000 1234 56' },
    ...parts,
  }
  return {
    settings,
    times: standardTimes,
    on: '2026-05-04',
    validUntil: '2026-06-03',
    options: offers.map((offered) => optionOf(offered, settings, unit)),
  }
}

export const plainLines: Offered['lines'] = [
  ['The gate, made', 61_250],
  ['Visits and hanging', 14_800],
  ['Delivery', 3_000],
]

/** A quotation of the usual gate, some parts changed. */
export const quotationOf = (parts: Partial<QuotationInput> = {}): QuotationInput => ({
  header,
  business,
  money: moneyOf([{ lines: plainLines }]),
  unit: 'mm',
  format: 'a4',
  draft: false,
  ...parts,
})

const redwood = whole('01-plain-left')
const inTimber = (species: string): GateSpec => ({
  ...redwood,
  boards: { ...redwood.boards, section: { ...redwood.boards.section, species } },
  ledges: { ...redwood.ledges, section: { ...redwood.ledges.section, species } },
  ...(redwood.braces
    ? { braces: { ...redwood.braces, section: { ...redwood.braces.section, species } } }
    : {}),
})

/** The same gate in three timbers: one drawing, three prices. */
export const threeTimbers: Offered[] = [
  { name: 'European redwood', spec: redwood, lines: plainLines },
  {
    name: 'Larch',
    spec: inTimber('Larch'),
    lines: [
      ['The gate, made', 72_410],
      ['Visits and hanging', 14_800],
      ['Delivery', 3_000],
    ],
  },
  {
    name: 'European oak',
    spec: inTimber('European oak'),
    lines: [
      ['The gate, made', 103_995],
      ['Visits and hanging', 16_200],
      ['Stainless fixings', 2_135],
      ['Delivery', 3_000],
    ],
  },
]

/** Three gates that look different. */
export const threeShapes: Offered[] = [
  { name: 'Level, ledged and braced', spec: redwood, lines: plainLines },
  {
    name: 'With a bowed top',
    spec: whole('09-bowed'),
    lines: [
      ['The gate, made', 70_125],
      ['Visits and hanging', 14_800],
    ],
  },
  {
    name: 'Framed',
    spec: whole('13-framed'),
    lines: [
      ['The gate, made', 95_040],
      ['Visits and hanging', 15_900],
    ],
  },
]

/** A registered workshop's tax, rounded one way or another; or that of one that isn't registered. */
export const vat = (rounding: TaxRounding, registered = true) => ({
  tax: {
    registered,
    name: 'VAT',
    number: 'TT 000 1234 56',
    rates: [{ from: '2011-01-04', bp: 2000 }],
    rounding,
  },
})

/** Three lines and thirty more. */
export const manyLines: Offered['lines'] = [
  ...plainLines,
  ...Array.from({ length: 30 }, (_, i): [string, number] => [
    `Extra line ${i + 1} of the joiner’s own`,
    1000 + 7 * i,
  ]),
]
