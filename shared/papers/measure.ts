import { textWidth } from '../drawing/textWidth.ts'
import { mmOfPoint, type Measure } from './page.ts'

/** Measures without the font files at hand: right for plain Latin and figures, near enough for the rest. */
export const plainMeasure: Measure = (text, size, weight) => textWidth(text, size * mmOfPoint, weight)
