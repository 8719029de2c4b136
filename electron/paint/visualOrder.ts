import bidiFactory from 'bidi-js'

const bidi = bidiFactory()

/** Words that run one way. backwards: printed from the right. */
export type DirectedText = { text: string; backwards: boolean }

/** Any letter of a script that is written from the right. */
const rightToLeft = /[\u0590-\u08FF\uFB1D-\uFDFF\uFE70-\uFEFC]/

/** Signs that turn what follows about whatever it is: taken out, so that no name can turn a dimension round. */
const turning = /[\u061C\u200E\u200F\u202A-\u202E\u2066\u2067]/g

/** Signs about a name that keep its direction to itself (U+2068 and U+2069): heeded, never printed. */
const isolating = /[\u2068\u2069]/g

/**
 * A line split where its direction turns, in the order the parts stand on the page. Each part keeps its letters in reading order, for
 * the face to join and set. The line as a whole reads from the left, as the papers do.
 */
export function visualOrder(line: string): DirectedText[] {
  const text = line.replace(turning, '')
  if (!rightToLeft.test(text)) return [{ text: text.replace(isolating, ''), backwards: false }]
  const { levels } = bidi.getEmbeddingLevels(text, 'ltr')
  const parts: { text: string; level: number }[] = []
  for (let i = 0; i < text.length; i++) {
    const letter = text[i] ?? ''
    if (letter === '\u2068' || letter === '\u2069') continue
    const level = levels[i] ?? 0
    const last = parts.at(-1)
    if (last?.level === level) last.text += letter
    else parts.push({ text: letter, level })
  }
  return reordered(parts).map((part) => ({ text: part.text, backwards: part.level % 2 === 1 }))
}

/** Turns round every stretch of parts at each level or deeper, deepest first (rule L2 of the Unicode bidirectional algorithm). */
function reordered(parts: { text: string; level: number }[]): { text: string; level: number }[] {
  const out = [...parts]
  for (let level = Math.max(...parts.map((part) => part.level)); level > 0; level--)
    for (let from = 0; from < out.length; from++) {
      let to = from
      while ((out[to]?.level ?? -1) >= level) to++
      if (to > from + 1) out.splice(from, to - from, ...out.slice(from, to).reverse())
      from = Math.max(from, to)
    }
  return out
}
