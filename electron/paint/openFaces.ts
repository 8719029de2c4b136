import type { Font } from '@pdf-lib/fontkit'
import type { Face, PaperFonts } from '../fonts.ts'

type Laid = ReturnType<Font['layout']>

/** Lines remembered for one face before the memory is begun afresh: some dozens of papers. */
const mostKnown = 20000

const remembered = new WeakMap<Face, Font>()

/**
 * An open face hands the same glyph out again with the characters it first stood for (a fraction's figure for a plain one), so what a
 * paper says to a reader of its text would hang on the papers before it. Each glyph gets the characters it stands for here.
 */
function keepOwnCharacters(font: Font): void {
  const glyphOf = font.getGlyph.bind(font)
  const getGlyph: Font['getGlyph'] = (id, codePoints) => {
    const glyph = glyphOf(id, codePoints)
    return Object.create(glyph, { codePoints: { value: codePoints ?? [], enumerable: true } }) as typeof glyph
  }
  Object.defineProperty(font, 'getGlyph', { value: getGlyph })
}

/**
 * A face opened once for every paper, that lays the same line out once: opening a face and asking it for its rules of setting is most
 * of what painting a card would cost.
 */
function openedOnce(face: Face): Font {
  const known = remembered.get(face)
  if (known) return known
  keepOwnCharacters(face.font)
  const lines = new Map<string, Laid>()
  const layout: Font['layout'] = (text, features) => {
    const key = `${text} ${JSON.stringify(features ?? null)}`
    const found = lines.get(key)
    if (found) return found
    if (lines.size > mostKnown) lines.clear()
    const laid = face.font.layout(text, features)
    lines.set(key, laid)
    return laid
  }
  const opened = new Proxy(face.font, {
    get: (font, key) => {
      if (key === 'layout') return layout
      const value: unknown = Reflect.get(font, key, font)
      return typeof value === 'function' ? (value.bind(font) as unknown) : value
    },
  })
  remembered.set(face, opened)
  return opened
}

/** What the PDF library opens faces with: the ones that are open already. Throws on bytes of another face. */
export const openFaces = (fonts: PaperFonts): { create: (bytes: Uint8Array) => Font } => ({
  create: (bytes) => {
    const faces = Object.values(fonts).flatMap(({ text, other }) => [text, other])
    const face = faces.find((one) => one.bytes === bytes)
    if (!face) throw new RangeError('openFaces opens the faces of the papers only')
    return openedOnce(face)
  },
})
