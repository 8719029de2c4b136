const beforeUnit = /(?<=[\d½⅓⅔¼¾⅛⅜⅝⅞]) (?=(?:mm|cm|m|km|kg|N|%)(?![\p{L}\d]))/gu
/** Between whole inches and their fraction, and between feet and inches: 38 ¾, 38 ¹¹⁄₁₆, 35 3/8", 5' 11. */
const withinInches = /(?<=\d) (?=[½⅓⅔¼¾⅛⅜⅝⅞¹²³⁰⁴-⁹]|\d+\/\d+["″])|(?<=\d['′]) (?=\d)/gu

/** A text whose figures stay whole and on one line with their units: the space between '40' and 'mm' no longer breaks. Nothing else changes. */
export const heldUnits = (text: string): string =>
  text.replace(beforeUnit, '\u00a0').replace(withinInches, '\u00a0')
