import { toDisplayString, type App } from 'vue'
import type { Drawing } from '../../shared/drawing/drawing.ts'
import { drawingIn } from '../../shared/language/drawingIn.ts'
import { heldUnits } from '../../shared/units/heldUnits.ts'
import { fillGaps } from '../../shared/language/fillGaps.ts'
import type { Told } from '../../shared/language/lookUp.ts'

/**
 * What the window speaks: told is null for the program's own British English, which is never looked up; locale is for dates and numbers; listen is
 * told each answer of the book, for the words in it that a person wrote.
 */
export const spoken: { told: Told | null; locale: string; listen: ((answer: unknown) => void) | null } = {
  told: null,
  locale: 'en-GB',
  listen: null,
}

/** A text on its way to the page, in the chosen language; whatever else it is comes back as it came. */
export const said = (value: unknown): unknown =>
  spoken.told && typeof value === 'string' ? spoken.told.sentence(value) : value

/** A message with what stands in its gaps, in the chosen language. */
export function phrase(message: string, values: readonly unknown[] = []): string {
  const words = values.map(toDisplayString)
  return spoken.told ? spoken.told.message(message, words) : fillGaps(message, words)
}

/** A text as it is laid on the page: figures keep to the line of their units. */
export const held = (value: unknown): unknown => (typeof value === 'string' ? heldUnits(value) : value)

/** A drawing with its words in the chosen language, before room is found for them. */
export const inWords = (drawing: Drawing): Drawing =>
  spoken.told ? drawingIn(drawing, spoken.told.sentence) : drawing

/** Gives every template the three functions that the build writes round its words (`build/language/wrapTemplate.ts`). */
export const speaking = {
  install(app: App): void {
    app.config.globalProperties['$said'] = said
    app.config.globalProperties['$phrase'] = phrase
    app.config.globalProperties['$held'] = held
  },
}
