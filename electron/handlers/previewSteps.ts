import type { PriceBook } from '../../shared/pricing/book.ts'
import type { NewPrice } from '../../shared/pricing/price.ts'
import type { RisePreview } from '../../shared/pricing/quotation.ts'
import type { StandingJob } from '../../shared/pricing/riseEffects.ts'
import { risePreview } from '../../shared/pricing/risePreview.ts'

type Asked = { book: PriceBook; newPrices: NewPrice[]; quoted: StandingJob[]; day: string }

/** What a rise would do, a step at a time. */
export function* previewSteps(asked: Asked): Generator<void, RisePreview> {
  yield
  return risePreview(asked)
}
