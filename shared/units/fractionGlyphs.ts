/** The fractions that fonts carry as one glyph; 16ths and finer are built from small figures. */
const single: Readonly<Record<string, string>> = {
  '1/2': '½',
  '1/4': '¼',
  '3/4': '¾',
  '1/8': '⅛',
  '3/8': '⅜',
  '5/8': '⅝',
  '7/8': '⅞',
}

const raised = '⁰¹²³⁴⁵⁶⁷⁸⁹'
const lowered = '₀₁₂₃₄₅₆₇₈₉'
const fractionSlash = '⁄'

const small = (figures: number, set: string): string =>
  [...String(figures)].map((figure) => set[Number(figure)]).join('')

/** A fraction set as one sign: 5/8 as ⅝, 11/16 as ¹¹⁄₁₆. Both are whole numbers of at least 0. */
export const fractionGlyphs = (numerator: number, denominator: number): string =>
  single[`${numerator}/${denominator}`] ??
  `${small(numerator, raised)}${fractionSlash}${small(denominator, lowered)}`
