import type { LengthUnit } from '../job/job.ts'
import type { PaperHeader } from '../job/issuedPaper.ts'
import type { QuotedMoney } from '../pricing/quotation.ts'
import type { Business } from '../pricing/shapes.ts'
import type { PaperFormat } from './page.ts'

/**
 * All a quotation is made from: whose it is, the workshop as it stands on a customer's paper, the money as it was frozen (one option or
 * several, each with its spec, words, estimate and offer), the unit its sizes are written in first. A draft says on every page that it
 * isn't issued.
 */
export type QuotationInput = {
  header: PaperHeader
  business: Business
  money: QuotedMoney
  unit: LengthUnit
  format: PaperFormat
  draft: boolean
}
