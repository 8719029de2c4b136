import * as v from 'valibot'
import { usualCutting } from '../pricing/buyTimber.ts'
import type { CuttingSettings } from './orderModel.ts'

const lengthUpTo = (most: number) => {
  const accepted = `a length in mm from 0 to ${most}, in whole tenths`
  return v.pipe(
    v.number(accepted),
    v.finite(accepted),
    v.minValue(0, accepted),
    v.maxValue(most, accepted),
    v.check((mm) => Number(mm.toFixed(1)) === mm, accepted),
  )
}

/** Reads what is lost at the saw, mm in whole tenths. */
export const cuttingShape = v.strictObject({
  kerf: lengthUpTo(20),
  endTrim: lengthUpTo(1000),
  leastOffcut: lengthUpTo(20_000),
})

/**
 * What holds until the workshop has said its own: a kerf of 4 mm, 20 mm lost in all on squaring a length bought, and offcuts of 450 mm
 * and more kept (a short ledge or brace still comes out of one). Common practice.
 */
export const standardCutting: CuttingSettings = { ...usualCutting, leastOffcut: 450 }
