const oneGlyphFraction = '¼-¾⅐-⅞↉'
const raised = '⁰¹²³⁴-⁹'
const lowered = '₀-₉'
const smallFigures = `${oneGlyphFraction}${raised}${lowered}`

/** Places where a small figure touches a full-size one: 36⅝, 36¹¹⁄₁₆. Without a gap 36⅝ would turn into 365/8. */
const touching = new RegExp(
  [
    `(?<=\\p{Nd})(?=[${smallFigures}])`,
    `(?<=[${smallFigures}])(?=[\\p{Nd}${oneGlyphFraction}])`,
    `(?<=[${raised}])(?=[${lowered}])`,
    `(?<=[${oneGlyphFraction}${lowered}])(?=[${raised}])`,
  ].join('|'),
  'gu',
)

/**
 * What was typed, in the plain signs of a keyboard: ' and " for feet and inches, - for every dash, 5/8 for ⅝,
 * full-width figures made plain, small letters, one plain space for any white space, invisible marks dropped.
 * A closing full stop goes ('72 in.', '1830.'). No sign that could carry a meaning is dropped otherwise.
 */
export function plainText(typed: string): string {
  return typed
    .replace(touching, ' ')
    .replace(/[´`]/g, "'")
    .replace(/[\u00ad\u200b-\u200f\u202a-\u202e\u2060\u2066-\u2069\ufeff]/g, '')
    .normalize('NFKC')
    .replace(/[‘’‛′ʹ]/g, "'")
    .replace(/[“”„‟ʺ]/g, '"')
    .replace(/(?<!')''(?!')/g, '"')
    .replace(/[‐‑‒–—−]/g, '-')
    .replace(/[⁄∕]/g, '/')
    .toLowerCase()
    .replace(/\s+/g, ' ')
    .replace(/ ?\/ ?/g, '/')
    .trim()
    .replace(/(?<=[\p{L}\p{Nd}"'])\.$/u, '')
}
