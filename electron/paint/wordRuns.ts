import type { Face, PaperFonts } from '../fonts.ts'
import { mmOfPoint, type Measure, type Weight } from '../../shared/papers/page.ts'
import { visualOrder } from './visualOrder.ts'

/** A stretch of words that one face sets. width in thousandths of the type size. */
export type WordRun = { face: Face; text: string; width: number }

/** Printed where no face has a character, so that the gap is seen. */
const standIn = '□'

const covers = (face: Face, character: string): boolean =>
  face.font.hasGlyphForCodePoint(character.codePointAt(0) ?? 0)

/** The face for a character: the text face, the one that steps in, or undefined when neither has it. */
function faceFor(character: string, fonts: PaperFonts, weight: Weight): Face | undefined {
  const { text, other } = fonts[weight]
  return covers(text, character) ? text : covers(other, character) ? other : undefined
}

/** As wide as it is painted: glyph after glyph by their own widths. A face's kerning isn't painted, so it isn't measured. */
function widthOf(face: Face, text: string): number {
  const { glyphs } = face.font.layout(text)
  return (glyphs.reduce((sum, glyph) => sum + glyph.advanceWidth, 0) * 1000) / face.font.unitsPerEm
}

/** Neighbouring characters of one face, joined. Words of another script keep to one face, or their letters wouldn't join. */
function faceRuns(text: string, fonts: PaperFonts, weight: Weight): { face: Face; text: string }[] {
  const runs: { face: Face; text: string }[] = []
  for (const character of text) {
    const found = faceFor(character, fonts, weight)
    const shown = found ? character : standIn
    const face = found ?? fonts[weight].other
    const last = runs.at(-1)
    if (last && (last.face === face || (character === ' ' && covers(last.face, ' ')))) last.text += shown
    else runs.push({ face, text: shown })
  }
  return runs
}

type Known = Record<Weight, Map<string, WordRun[]>>

/** What has been set already, for each set of faces: papers repeat themselves, and asking a face is slow. */
const known = new WeakMap<PaperFonts, Known>()

function knownTo(fonts: PaperFonts): Known {
  const found = known.get(fonts)
  if (found) return found
  const made: Known = { regular: new Map(), semibold: new Map() }
  known.set(fonts, made)
  return made
}

/** Lines remembered in one weight before the memory is begun afresh: some dozens of papers. */
const mostKnown = 10000

/**
 * A line of words as runs, left to right as they are printed: one form of each accented letter, right-to-left names in their own
 * order, each character in a face that has it.
 */
export function wordRuns(text: string, fonts: PaperFonts, weight: Weight): WordRun[] {
  const own = knownTo(fonts)[weight]
  const found = own.get(text)
  if (found) return found
  if (own.size >= mostKnown) own.clear()
  const runs = setRuns(text, fonts, weight)
  own.set(text, runs)
  return runs
}

const setRuns = (text: string, fonts: PaperFonts, weight: Weight): WordRun[] =>
  visualOrder(text.normalize('NFC').replace(/[\p{Cc}\p{Zl}\p{Zp}]/gu, ' ')).flatMap((part) => {
    const runs = faceRuns(part.text, fonts, weight)
    return (part.backwards ? runs.reverse() : runs).map((run) => ({
      ...run,
      width: widthOf(run.face, run.text),
    }))
  })

/** Width of set runs at a type size in points, mm. */
export const runsWidth = (runs: WordRun[], size: number): number =>
  (runs.reduce((sum, run) => sum + run.width, 0) / 1000) * size * mmOfPoint

/** Characters of a text that no face of the papers has: they print as □, and the person is told. */
export const uncovered = (text: string, fonts: PaperFonts): string[] => [
  ...new Set(
    [...text.normalize('NFC').replace(/\p{Cc}/gu, ' ')].filter(
      (character) => !faceFor(character, fonts, 'regular'),
    ),
  ),
]

/** Measures words with the faces themselves. */
export const measureWith =
  (fonts: PaperFonts): Measure =>
  (text, size, weight) =>
    runsWidth(wordRuns(text, fonts, weight), size)
