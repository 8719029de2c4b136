/** Where a text made of several messages may be parted. */
const joints = /(\s*[;:·•\n]\s*|, |\. |\? |! | – | — | \(|\)|“|”| \/ )/

/** Where one sentence ends and the next begins: its space belongs to the next. */
const sentenceEnd = /(?<=[.!?…][”)]?)(?=\s+[\p{Lu}“])|(?<=;)(?= )/u
const twoSentences = /[.!?…][”)]?\s+[\p{Lu}“]/u

/** No text of the program's own has more pieces than this; a longer one is a person's. */
const mostPieces = 60

/** Parts of a text that one message may reach over: pieces and the joints between them. */
const mostTogether = 17

/** Whether a text has a word in it. */
export const isWorded = (text: string): boolean => /\p{L}{2}/u.test(text)

/** Whether a text is more than one sentence. */
export const holdsTwo = (text: string): boolean => twoSentences.test(text)

/** A message with hardly a word of its own ('{0} of {1}') fits nearly anything. */
const isWeak = (message: string): boolean => message.replace(/\{\d+\}|\P{L}/gu, '').length < 6

/**
 * How much more than part of a sentence would stand in a gap of a message: 0 words without a joint, 1 some with joints, 2 with a colon or semicolon;
 * 3 and it can't be, the text was made from other messages.
 */
export function looseness(value: string, message: string): 0 | 1 | 2 | 3 {
  if (holdsTwo(value)) return 3
  if (!/[,:;(] |[,:(–·]|\n/.test(value)) return 0
  if (isWeak(message)) return 3
  return /[;:] /.test(value) ? 2 : 1
}

type Change = (part: string) => string

/** Neighbouring parts told together as far as a message reaches, the longest first; what none reaches is told by `alone`. */
function together(
  parts: readonly string[],
  stretch: (part: string) => string | undefined,
  alone: Change,
): string {
  let out = ''
  for (let from = 0; from < parts.length;) {
    let to = Math.min(parts.length, from + mostTogether)
    let told: string | undefined
    for (; to > from && told === undefined; to -= 1) {
      const part = parts.slice(from, to).join('')
      told = isWorded(part) && to - from < parts.length ? stretch(part) : undefined
    }
    out += told ?? alone(parts[from] ?? '')
    from = told === undefined ? from + 1 : to + 1
  }
  return out
}

/** A text told a sentence at a time, and a sentence that no message fits piece by piece; rest changes what is left over. */
export function inParts(text: string, stretch: (part: string) => string | undefined, rest: Change): string {
  const byPieces = (sentence: string): string => {
    const pieces = sentence.split(joints)
    if (pieces.length === 1) return rest(sentence)
    return pieces.length > mostPieces ? sentence : together(pieces, stretch, rest)
  }
  const sentences = text.split(sentenceEnd)
  if (sentences.length > mostPieces) return text
  return sentences.length > 1 ? together(sentences, stretch, byPieces) : byPieces(text)
}
