/** Any letter of a script that is written from the right. */
const fromTheRight = /[\u0590-\u08FF\uFB1D-\uFDFF\uFE70-\uFEFC]/

/** Signs that keep the direction of what is between them to itself (Unicode Annex 9, FSI and PDI). */
const [open, close] = ['\u2068', '\u2069']

const isolatedLines = (name: string): string =>
  name
    .split('\n')
    .map((line) => (fromTheRight.test(line) ? `${open}${line}${close}` : line))
    .join('\n')

/** Every text in a value, however deep. */
function textsIn(value: unknown): string[] {
  if (typeof value === 'string') return [value]
  if (typeof value !== 'object' || value === null) return []
  return Object.values(value).flatMap(textsIn)
}

const isText = (value: unknown): value is string => typeof value === 'string'

/** A value of the same shape with its texts changed. */
function withTexts<T>(value: T, change: (text: string) => string): T {
  const changed = (one: unknown): unknown => {
    if (isText(one)) return change(one)
    if (Array.isArray(one)) return one.map(changed)
    if (typeof one !== 'object' || one === null) return one
    return Object.fromEntries(Object.entries(one).map(([key, own]) => [key, changed(own)]))
  }
  return changed(value) as T
}

/**
 * What a paper is made from with every name that is written from the right kept to itself: beside it, and in sentences that hold it, sizes stay
 * where they are and their figures in order ("שער: 900 mm" would else come out with 900 before the name). names are what a person wrote;
 * the rest may speak of them. Unchanged where no name is written so.
 */
export function isolateNames<T>(value: T, names: unknown): T {
  const known = [...new Set(textsIn(names).filter((text) => fromTheRight.test(text)))].sort(
    (a, b) => b.length - a.length,
  )
  if (known.length === 0) return value
  const whole = new Set(known)
  return withTexts(value, (text) => {
    if (whole.has(text)) return isolatedLines(text)
    if (!fromTheRight.test(text)) return text
    const held = known.find((name) => text.includes(name))
    return held === undefined ? text : text.split(held).join(isolatedLines(held))
  })
}

/** A text without the signs that keep directions apart: for where it is no line on a page. */
export const withoutIsolation = (text: string): string => text.replaceAll(open, '').replaceAll(close, '')
