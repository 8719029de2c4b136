import type { Figured } from './figuresIn.ts'
import type { OwnWords } from './ownWords.ts'

const first = (text: string, change: (letter: string) => string): string =>
  change(text.charAt(0)) + text.slice(1)
const upper = (text: string): string => first(text, (letter) => letter.toLocaleUpperCase())
const lower = (text: string): string => first(text, (letter) => letter.toLocaleLowerCase())

/** A text with its first letter the other way: small for large, large for small. */
export const otherCase = (text: string): string => (text === lower(text) ? upper(text) : lower(text))

/** A text that is one message without gaps, or a few of them side by side. Each answers undefined for any other text. */
export type PlainMessages = {
  /** As it stands, with its first letter the other way, or with a full stop that is set where it is shown. */
  whole: (text: string) => string | undefined
  /** A figure and what it counts or is the price of, or a word and its figure: '3 boards', '£4.43 a metre', 'rip 58'; or a few words: 'three ledges'. */
  joined: (text: string) => string | undefined
}

const beforeFigure = /^([^\p{L}]*\d[^\p{L}]* )(\p{L}[^]*)()$/u
const afterFigure = /^()(\p{L}[\p{L} ]*)( [^\p{L}]*\d[^\p{L}]*)$/u

/** Most words that are put together of messages. */
const mostWords = 5

export function plainMessages(
  exact: ReadonlyMap<string, string>,
  own: OwnWords,
  figured: Figured,
): PlainMessages {
  function whole(text: string): string | undefined {
    const same = exact.get(text)
    if (same !== undefined) return same
    const small = exact.get(lower(text))
    if (small !== undefined) return upper(small)
    const large = exact.get(upper(text))
    if (large !== undefined) return lower(large)
    const unended = text.endsWith('.') ? whole(text.slice(0, -1)) : undefined
    return unended === undefined ? undefined : `${unended}.`
  }
  function besideFigure(text: string): string | undefined {
    const [, before = '', words = '', after = ''] = beforeFigure.exec(text) ?? afterFigure.exec(text) ?? []
    const told = words === '' || own.has(words) ? undefined : whole(words)
    return told === undefined ? undefined : `${figured(before)}${told}${figured(after)}`
  }
  function wordByWord(text: string): string | undefined {
    const words = text.split(' ')
    if (words.length < 2 || words.length > mostWords || own.has(text)) return undefined
    for (let at = words.length - 1; at > 0; at -= 1) {
      const rest = words.slice(at).join(' ')
      const [told, after] = [whole(words.slice(0, at).join(' ')), whole(rest) ?? wordByWord(rest)]
      if (told !== undefined && after !== undefined) return `${told} ${after}`
    }
    return undefined
  }
  return { whole, joined: (text) => besideFigure(text) ?? wordByWord(text) }
}
