import type { StandardTimes } from '../shared/pricing/needs.ts'
import type { Business } from '../shared/pricing/shapes.ts'
import type { MoneySettings } from '../shared/pricing/terms.ts'

/** How a workshop charges until it has said its own: common practice throughout but the rate of tax, which is the United Kingdom's. */
export const startingMoney: MoneySettings = {
  currency: 'GBP',
  tax: {
    registered: true,
    name: 'VAT',
    number: '',
    rates: [{ from: '2011-01-04', bp: 2000 }],
    rounding: 'total down',
  },
  wasteBp: 1000,
  overheadBp: 1500,
  profit: { by: 'markup', bp: 2000 },
  depositBp: 3000,
  validDays: 30,
  fixingsBy: 'share',
  finishBy: 'share',
}

/** Minutes for one of each operation until the workshop has its own: common practice. */
export const startingTimes: StandardTimes = {
  'set up': 30,
  cut: 2,
  rip: 4,
  bevel: 3,
  board: 6,
  fixing: 1,
  notch: 12,
  tenon: 25,
  'shaped top board': 6,
  hinge: 15,
  lock: 45,
  latch: 15,
  bolt: 12,
  'finish square metre': 15,
  'site visit': 60,
  'hang leaf': 120,
}

/** A workshop that has said nothing of itself yet. */
export const noBusiness: Business = {
  address: '',
  phone: '',
  email: '',
  website: '',
  terms: '',
  included: '',
  notIncluded: '',
  logo: null,
}
