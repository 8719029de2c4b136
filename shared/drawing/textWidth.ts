/** Advance widths of IBM Plex Sans, thousandths of the type size, from the space to the tilde. */
const widths = [
  236, 284, 419, 713, 598, 927, 694, 242, 335, 335, 450, 600, 272, 399, 272, 383, 600, 600, 600, 600, 600,
  600, 600, 600, 600, 600, 292, 292, 600, 600, 600, 477, 891, 641, 653, 621, 671, 583, 559, 695, 707, 400,
  510, 634, 501, 812, 707, 708, 606, 708, 640, 581, 572, 678, 609, 891, 613, 593, 580, 317, 383, 317, 600,
  565, 600, 534, 580, 503, 580, 549, 324, 528, 568, 250, 250, 527, 272, 873, 568, 560, 580, 580, 367, 487,
  351, 568, 492, 768, 507, 499, 464, 343, 314, 343, 600,
]

const others: Record<string, number> = {
  '⁄': 147,
  '″': 471,
  '′': 260,
  '°': 470,
  '½': 872,
  '¼': 872,
  '¾': 872,
  '⅛': 876,
  '⅜': 876,
  '⅝': 876,
  '⅞': 876,
}

const widthOf = (character: string): number => {
  const code = character.codePointAt(0) ?? 32
  if (code >= 32 && code < 127) return widths[code - 32] ?? 600
  if ('⁰¹²³⁴⁵⁶⁷⁸⁹₀₁₂₃₄₅₆₇₈₉'.includes(character)) return 359
  return others[character] ?? (code > 0x2e80 ? 1000 : 640)
}

/** Bolder faces set a little wider. */
const byWeight = { regular: 1, semibold: 1.03, bold: 1.06 }

/**
 * Width of a line of words in the unit of size, near enough to place it: exact for plain Latin in IBM Plex Sans Regular.
 * A paper that must break lines measures with the real fonts instead.
 */
export function textWidth(text: string, size: number, weight: keyof typeof byWeight = 'regular'): number {
  let sum = 0
  for (const character of text) sum += widthOf(character)
  return (sum / 1000) * size * byWeight[weight]
}
