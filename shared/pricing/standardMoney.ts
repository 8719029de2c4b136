import type { MoneySettings } from './terms.ts'

/**
 * How a new workshop charges until it says otherwise: starting values only, to be set by the workshop. VAT at 20 % from 4 January 2011;
 * 17.5 % before that, so that an old paper can be worked out again (gov.uk, "VAT rates": from memory).
 */
export const standardMoney: MoneySettings = {
  currency: 'GBP',
  tax: {
    registered: true,
    name: 'VAT',
    number: '',
    rates: [
      { from: '2010-01-01', bp: 1750 },
      { from: '2011-01-04', bp: 2000 },
    ],
    rounding: 'total down',
  },
  timberBy: 'lengths',
  wasteBp: 1000,
  overheadBp: 1500,
  profit: { by: 'markup', bp: 2000 },
  depositBp: 3000,
  validDays: 30,
  fixingsBy: 'share',
  finishBy: 'tin',
}
