import type { LengthUnit } from '../../job/job.ts'
import type { Order, RackPiece } from '../../ordering/orderModel.ts'
import type { Business } from '../../pricing/shapes.ts'
import type { Currency } from '../../pricing/terms.ts'
import type { PaperFormat } from '../page.ts'
import type { DustKnown } from '../sawSafety.ts'

/**
 * All a timber order is made from: the order with its plan as it was placed, the workshop as it stands on a paper that goes out, and what lies
 * on the rack, to say from which place a piece is taken; dust: what is known of the timber of its jobs.
 */
export type TimberOrderInput = {
  order: Order
  workshop: string
  business: Business
  rack: readonly Pick<RackPiece, 'id' | 'place' | 'note'>[]
  dust: DustKnown
  currency: Currency
  unit: LengthUnit
  format: PaperFormat
}
