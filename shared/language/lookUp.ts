import { bareMessage } from './bareMessage.ts'
import { fillGaps } from './fillGaps.ts'
import { figuresIn } from './figuresIn.ts'
import { messagePatterns } from './messagePatterns.ts'
import type { Catalogue } from './catalogue.ts'
import type { OwnWords } from './ownWords.ts'

/**
 * Words in the chosen language. sentence: a finished English text, found as a whole, then among the messages with gaps, then piece by piece.
 * message: a message with gaps and what goes in them, which are looked up too. What a person wrote comes back as it is.
 */
export type Told = {
  sentence: (text: string) => string
  message: (message: string, values: readonly string[]) => string
}

/** Where a text made of several messages may be parted. */
const joints = /(\s*[;:·•\n]\s*|, |\. |\? |! | – | — | \(|\)|“|”| \/ )/

/** No text of the program's own has more joints than this; a longer one is a person's. */
const mostPieces = 60
const mostKept = 6000

const letters = /\p{L}{2}/u
const first = (text: string, change: (letter: string) => string): string =>
  change(text.charAt(0)) + text.slice(1)
const upper = (text: string): string => first(text, (letter) => letter.toLocaleUpperCase())
const lower = (text: string): string => first(text, (letter) => letter.toLocaleLowerCase())

/** Looks texts up in a catalogue's messages, and writes figures as its place does. Pure but for what it remembers of texts already found. */
export function lookUp({ messages, locale }: Pick<Catalogue, 'messages' | 'locale'>, own: OwnWords): Told {
  const exact = new Map(Object.entries(messages))
  const figured = figuresIn(locale)
  const patterns = messagePatterns([...exact.keys()])
  const found = new Map<string, string>()
  const kept = { own: own.count() }

  /** A message as it stands, or with its first letter the other way. */
  function whole(text: string): string | undefined {
    const same = exact.get(text)
    if (same !== undefined) return same
    const small = exact.get(lower(text))
    if (small !== undefined) return upper(small)
    const large = exact.get(upper(text))
    return large === undefined ? undefined : lower(large)
  }

  function fromPattern(text: string): string | undefined {
    for (const { message, gaps, matcher } of [...patterns(text)]) {
      const match = matcher().exec(text) ?? matcher().exec(lower(text)) ?? matcher().exec(upper(text))
      if (!match) continue
      const values: string[] = []
      gaps.forEach((gap, at) => (values[gap] = sentence(match[at + 1] ?? '')))
      return fillGaps(exact.get(message) ?? message, values)
    }
    return undefined
  }

  /** A figure and what it counts or is the price of: '3 boards', '£4.43 a metre'. */
  function afterFigure(text: string): string | undefined {
    const [, figure, rest] = /^([^\p{L}]*\d[^\p{L}]* )(\p{L}[^]*)$/u.exec(text) ?? []
    const told = rest === undefined || own.has(rest) ? undefined : whole(rest)
    return figure === undefined || told === undefined ? undefined : `${figured(figure)}${told}`
  }

  /** One stretch of a text, its joints to the neighbours kept; undefined where no message fits. */
  function stretch(text: string): string | undefined {
    if (own.has(text.trim())) return text
    const { lead, text: bare, tail } = bareMessage(text)
    if (own.has(bare)) return text
    const told = whole(bare) ?? fromPattern(bare) ?? afterFigure(bare)
    return told === undefined ? undefined : `${lead}${told}${tail}`
  }

  const leftOver = (piece: string): string => (own.has(piece.trim()) ? piece : figured(piece))

  function byPieces(text: string): string {
    const pieces = text.split(joints)
    if (pieces.length === 1) return figured(text)
    if (pieces.length > mostPieces) return text
    let out = ''
    for (let from = 0; from < pieces.length;) {
      let to = pieces.length
      let told: string | undefined
      for (; to > from && told === undefined; to -= 1) {
        const part = pieces.slice(from, to).join('')
        told = letters.test(part) && part !== text ? stretch(part) : undefined
      }
      out += told ?? leftOver(pieces[from] ?? '')
      from = told === undefined ? from + 1 : to + 1
    }
    return out
  }

  function sentence(text: string): string {
    if (own.has(text.trim())) return text
    if (!letters.test(text)) return figured(text)
    if (kept.own !== own.count() || found.size > mostKept) found.clear()
    kept.own = own.count()
    const known = found.get(text)
    if (known !== undefined) return known
    const told = stretch(text) ?? byPieces(text)
    found.set(text, told)
    return told
  }

  function message(text: string, values: readonly string[]): string {
    const { lead, text: bare, tail } = bareMessage(text)
    const said = `${lead}${whole(bare) ?? bare}${tail}`
    return fillGaps(said, values.map(sentence))
  }
  return { sentence, message }
}
