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

/** Where one sentence ends and the next begins: its space belongs to the next. */
const sentenceEnd = /(?<=[.!?…][”)]?)(?=\s+[\p{Lu}“])|(?<=;)(?= )/u
const holdsTwo = /[.!?…][”)]?\s+[\p{Lu}“]/u

/** No text of the program's own has more joints than this; a longer one is a person's. */
const mostPieces = 60
const mostKept = 6000

/** A sentence longer than this is made of several. */
const longest = 700

/** Parts of a text that one message may reach over: pieces and the joints between them. */
const mostTogether = 17

const letters = /\p{L}{2}/u
const first = (text: string, change: (letter: string) => string): string =>
  change(text.charAt(0)) + text.slice(1)
const upper = (text: string): string => first(text, (letter) => letter.toLocaleUpperCase())
const lower = (text: string): string => first(text, (letter) => letter.toLocaleLowerCase())

/** Signs nobody types, one for each of a person's words in a sentence while it is looked up. */
const firstSign = 0xe100

/** Changes a text but for some words in it, which come through as they are. */
function untouched(text: string, words: readonly string[], change: (text: string) => string): string {
  if (words.length === 0) return change(text)
  const sign = (at: number) => String.fromCharCode(firstSign + at)
  const changed = change(words.reduce((rest, word, at) => rest.replaceAll(word, sign(at)), text))
  return words.reduce((rest, word, at) => rest.replaceAll(sign(at), word), changed)
}

/** A message with hardly a word of its own ('{0} of {1}') fits nearly anything. */
const isWeak = (message: string): boolean => message.replace(/\{\d+\}|\P{L}/gu, '').length < 6

/**
 * How much more than part of a sentence would stand in a gap: 0 words without a joint, 1 some with joints, 2 with a colon or semicolon; 3 and it can't be, the text
 * was made from other messages. The least is taken.
 */
function looseness(value: string, message: string): 0 | 1 | 2 | 3 {
  if (holdsTwo.test(value)) return 3
  if (!/[,:;(] |[,:(–·]|\n/.test(value)) return 0
  if (isWeak(message)) return 3
  return /[;:] /.test(value) ? 2 : 1
}

/** Looks texts up in a catalogue's messages, and writes figures as its place does. Pure but for what it remembers of texts already found. */
export function lookUp({ messages, locale }: Pick<Catalogue, 'messages' | 'locale'>, own: OwnWords): Told {
  const exact = new Map(Object.entries(messages))
  const figured = figuresIn(locale)
  const patterns = messagePatterns([...exact.keys()])
  const found = new Map<string, string>()
  const stretches = new Map<string, { told: string | undefined }>()
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

  /** A heading that stands as a sentence: its full stop is set where it is shown. */
  function withoutEnd(text: string): string | undefined {
    const told = text.endsWith('.') ? whole(text.slice(0, -1)) : undefined
    return told === undefined ? undefined : `${told}.`
  }

  /** From a message with gaps: the one into whose gaps least falls that could be a message of its own. */
  function fromPattern(text: string): string | undefined {
    const other = text === lower(text) ? upper(text) : lower(text)
    const two = holdsTwo.test(text)
    if (text.length > longest) return undefined
    const looser: Partial<Record<1 | 2, () => string>> = {}
    for (const { message, gaps, matcher } of patterns(text)) {
      if (two && !holdsTwo.test(message)) continue
      const match = matcher().exec(text) ?? matcher().exec(other)
      if (!match) continue
      const held = match.slice(1)
      const filled = (): string => {
        const values: string[] = []
        gaps.forEach((gap, at) => (values[gap] = sentence(held[at] ?? '')))
        return fillGaps(exact.get(message) ?? message, values)
      }
      const loose = Math.max(...held.map((value) => looseness(value, message)))
      if (loose === 0) return filled()
      if (loose === 1 || loose === 2) looser[loose] ??= filled
    }
    return (looser[1] ?? looser[2])?.()
  }

  /** A figure and what it counts or is the price of, or a word and its figure: '3 boards', '£4.43 a metre', 'rip 58'. */
  function besideFigure(text: string): string | undefined {
    const [, before = '', words = '', after = ''] =
      /^([^\p{L}]*\d[^\p{L}]* )(\p{L}[^]*)()$/u.exec(text) ??
      /^()(\p{L}[\p{L} ]*)( [^\p{L}]*\d[^\p{L}]*)$/u.exec(text) ??
      []
    const told = words === '' || own.has(words) ? undefined : whole(words)
    return told === undefined ? undefined : `${figured(before)}${told}${figured(after)}`
  }

  /** A few words put together of messages: 'three ledges', 'a thumb latch'. */
  function wordByWord(text: string): string | undefined {
    const words = text.split(' ')
    if (words.length < 2 || words.length > 5 || own.has(text)) return undefined
    for (let at = words.length - 1; at > 0; at -= 1) {
      const [start, rest] = [words.slice(0, at).join(' '), words.slice(at).join(' ')]
      const [told, after] = [whole(start), whole(rest) ?? wordByWord(rest)]
      if (told !== undefined && after !== undefined) return `${told} ${after}`
    }
    return undefined
  }

  /** One stretch of a text, its joints to the neighbours kept; undefined where no message fits. */
  function stretch(text: string): string | undefined {
    const known = stretches.get(text)
    if (known !== undefined) return known.told
    const told = newStretch(text)
    stretches.set(text, { told })
    return told
  }

  function newStretch(text: string): string | undefined {
    if (own.has(text.trim())) return text
    const { lead, text: bare, tail } = bareMessage(text)
    if (own.has(bare)) return text
    const told =
      whole(bare) ?? withoutEnd(bare) ?? fromPattern(bare) ?? besideFigure(bare) ?? wordByWord(bare)
    return told === undefined ? undefined : `${lead}${told}${tail}`
  }

  const leftOver = (piece: string): string => (own.has(piece.trim()) ? piece : figured(piece))

  /** Neighbouring parts told together as far as messages reach, the longest first; what no message reaches is told by `alone`. */
  function together(parts: readonly string[], alone: (part: string) => string): string {
    let out = ''
    for (let from = 0; from < parts.length;) {
      let to = Math.min(parts.length, from + mostTogether)
      let told: string | undefined
      for (; to > from && told === undefined; to -= 1) {
        const part = parts.slice(from, to).join('')
        told = letters.test(part) && to - from < parts.length ? stretch(part) : undefined
      }
      out += told ?? alone(parts[from] ?? '')
      from = told === undefined ? from + 1 : to + 1
    }
    return out
  }

  function byPieces(text: string): string {
    const pieces = text.split(joints)
    if (pieces.length === 1) return leftOver(text)
    return pieces.length > mostPieces ? text : together(pieces, leftOver)
  }

  function bySentences(text: string): string {
    const sentences = text.split(sentenceEnd)
    if (sentences.length > mostPieces) return text
    return sentences.length > 1 ? together(sentences, byPieces) : byPieces(text)
  }

  function sentence(text: string): string {
    if (own.has(text.trim())) return text
    if (!letters.test(text)) return figured(text)
    if (kept.own !== own.count() || found.size > mostKept || stretches.size > 4 * mostKept) {
      found.clear()
      stretches.clear()
    }
    kept.own = own.count()
    const known = found.get(text)
    if (known !== undefined) return known
    const told = untouched(text, own.within(text), (rest) => stretch(rest) ?? bySentences(rest))
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
