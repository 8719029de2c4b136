import type { Face, PaperFonts } from '../fonts.ts'
import { mmOfPoint, type Measure, type Weight } from '../../shared/papers/page.ts'
import { visualOrder } from './visualOrder.ts'

/** A stretch of words that one face sets. width in thousandths of the type size. */
export type WordRun = { face: Face; text: string; width: number }

/** Printed where no face has a character, so that the gap is seen. */
const standIn = '□'

/** From here on letters may be of a script that the face's opener can't set: it throws then, whatever the face has. */
const firstDoubtful = 0x0700

const settable = new WeakMap<Face, Map<number, boolean>>()

/** Whether a letter can be set at all, tried out once. */
function canSet(face: Face, code: number): boolean {
  const known = settable.get(face) ?? new Map<number, boolean>()
  settable.set(face, known)
  const found = known.get(code)
  if (found !== undefined) return found
  const set = (): boolean => {
    try {
      return face.font.layout(String.fromCodePoint(code)).glyphs.length > 0
    } catch (cause) {
      if (cause instanceof ReferenceError) return false
      throw cause
    }
  }
  const made = set()
  known.set(code, made)
  return made
}

function covers(face: Face, character: string): boolean {
  const code = character.codePointAt(0) ?? 0
  return face.font.hasGlyphForCodePoint(code) && (code < firstDoubtful || canSet(face, code))
}

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

/** Signs without a shape of their own: spaces of no width, soft hyphens, which shape of a picture is meant. */
const shapeless = /[\u00AD\u034F\u180E\u200B\u2060-\u2064\uFE00-\uFE0F\uFEFF]/gu

/** Signs that join letters or keep them apart, where there are none of a script that joins: they belong to pictures then. */
const joining = /(?<![\u0600-\u0FFF])[\u200C\u200D]|[\u200C\u200D](?![\u0600-\u0FFF])/gu

/** A text as it is printed: accents and letters one sign where there is such a one, breaks as spaces, nothing that has no shape. */
const printable = (text: string): string =>
  text
    .normalize('NFC')
    .replace(/[\p{Cc}\p{Zl}\p{Zp}]/gu, ' ')
    .replace(shapeless, '')
    .replace(joining, '')

const setRuns = (text: string, fonts: PaperFonts, weight: Weight): WordRun[] =>
  visualOrder(printable(text)).flatMap((part) => {
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
    visualOrder(printable(text)).flatMap((part) =>
      [...part.text].filter((character) =>
        (['regular', 'semibold'] as const).some((weight) => !faceFor(character, fonts, weight)),
      ),
    ),
  ),
]

/** Measures words with the faces themselves. */
export const measureWith =
  (fonts: PaperFonts): Measure =>
  (text, size, weight) =>
    runsWidth(wordRuns(text, fonts, weight), size)
