import { bareMessage } from './bareMessage.ts'
import type { Catalogue } from './catalogue.ts'
import { figuresIn } from './figuresIn.ts'
import { fillGaps } from './fillGaps.ts'
import { holdsTwo, inParts, isWorded, looseness } from './joints.ts'
import { messagePatterns } from './messagePatterns.ts'
import type { OwnWords } from './ownWords.ts'
import { otherCase, plainMessages } from './plainMessages.ts'
import { untouched } from './untouched.ts'

/**
 * Words in the chosen language. sentence: a finished English text, found as a whole, then among the messages with gaps, then piece by piece.
 * message: a message with gaps and what goes in them, which are looked up too. What a person wrote comes back as it is.
 */
export type Told = {
  sentence: (text: string) => string
  message: (message: string, values: readonly string[]) => string
}

type Sentence = Told['sentence']

/** A text longer than this isn't one message with its gaps filled. */
const longest = 700

/** Finds the message with gaps that a text was made from: the one into whose gaps least falls that could be a message of its own. */
function fromPatterns(exact: ReadonlyMap<string, string>, sentence: Sentence) {
  const patterns = messagePatterns([...exact.keys()])
  return (text: string): string | undefined => {
    if (text.length > longest) return undefined
    const two = holdsTwo(text)
    const looser: Partial<Record<number, () => string>> = {}
    for (const { message, gaps, matcher } of patterns(text)) {
      if (two && !holdsTwo(message)) continue
      const match = matcher().exec(text) ?? matcher().exec(otherCase(text))
      if (!match) continue
      const held = match.slice(1)
      const filled = (): string => {
        const values: string[] = []
        gaps.forEach((gap, at) => (values[gap] = sentence(held[at] ?? '')))
        return fillGaps(exact.get(message) ?? message, values)
      }
      const loose = Math.max(...held.map((value) => looseness(value, message)))
      if (loose === 0) return filled()
      looser[loose] ??= filled
    }
    return (looser[1] ?? looser[2])?.()
  }
}

/** Most texts that are remembered. */
const mostKept = 20_000

/** Remembers what came of each text, for as long as no more words of a person's are known. */
function remembering<T>(own: OwnWords, find: (text: string) => T): (text: string) => T {
  const kept = new Map<string, { told: T }>()
  const at = { count: own.count() }
  return (text) => {
    if (at.count !== own.count() || kept.size > mostKept) kept.clear()
    at.count = own.count()
    const known = kept.get(text)
    if (known) return known.told
    const told = find(text)
    kept.set(text, { told })
    return told
  }
}

/** Looks texts up in a catalogue's messages, and writes figures as its place does. Pure but for what it remembers of texts already found. */
export function lookUp({ messages, locale }: Pick<Catalogue, 'messages' | 'locale'>, own: OwnWords): Told {
  const exact = new Map(Object.entries(messages))
  const figured = figuresIn(locale)
  const { whole, joined } = plainMessages(exact, own, figured)
  const fromPattern = fromPatterns(exact, (text) => sentence(text))

  /** One stretch of a text, its joints to the neighbours kept; undefined where no message fits. */
  const stretch = remembering(own, (text): string | undefined => {
    if (own.has(text.trim())) return text
    const { lead, text: bare, tail } = bareMessage(text)
    if (own.has(bare)) return text
    const told = whole(bare) ?? fromPattern(bare) ?? joined(bare)
    return told === undefined ? undefined : `${lead}${told}${tail}`
  })
  const leftOver: Sentence = (piece) => (own.has(piece.trim()) ? piece : figured(piece))

  const sentence: Sentence = remembering(own, (text) => {
    if (own.has(text.trim())) return text
    if (!isWorded(text)) return figured(text)
    return untouched(text, own.within(text), (rest) => stretch(rest) ?? inParts(rest, stretch, leftOver))
  })
  function message(text: string, values: readonly string[]): string {
    const { lead, text: bare, tail } = bareMessage(text)
    return fillGaps(`${lead}${whole(bare) ?? bare}${tail}`, values.map(sentence))
  }
  return { sentence, message }
}
