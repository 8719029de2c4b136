/** A message with gaps, ready to know a finished sentence again. */
export type MessagePattern = { message: string; gaps: number[]; matcher: () => RegExp }

const gap = /\{(\d+)\}/g
const words = (text: string): string[] => text.toLowerCase().match(/[\p{L}\p{M}’']+/gu) ?? []

/** The whole words of a message that no gap touches: a sentence without all of them isn't made from it. */
const ownWordsOf = (message: string): string[] =>
  words(message.replace(/[\p{L}\p{M}’']*\{\d+\}[\p{L}\p{M}’']*/gu, ' '))

const literal = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')

function patternOf(message: string): MessagePattern {
  const gaps = [...message.matchAll(gap)].map((found) => Number(found[1]))
  const made: { matcher?: RegExp } = {}
  const matcher = (): RegExp =>
    (made.matcher ??= new RegExp(
      `^${message
        .split(/\{\d+\}/)
        .map(literal)
        .join('([^]*?)')}$`,
    ))
  return { message, gaps, matcher }
}

const fixedLength = (message: string): number => message.replace(gap, '').length

/**
 * Finds the messages with gaps that a finished sentence may be made from, those with most words of their own first. Each is kept under the rarest of its
 * words, and is offered only where all of them stand in the sentence, so that one is held against a few of the thousands. A message with no whole word of
 * its own can't be told and is left out.
 */
export function messagePatterns(messages: readonly string[]): (sentence: string) => MessagePattern[] {
  const known = messages
    .filter((message) => message.includes('{0}'))
    .map((message) => ({
      pattern: patternOf(message),
      length: fixedLength(message),
      own: ownWordsOf(message),
    }))
    .sort((a, b) => b.length - a.length)
  const often = new Map<string, number>()
  for (const { own } of known) for (const word of new Set(own)) often.set(word, (often.get(word) ?? 0) + 1)
  const byWord = new Map<string, { pattern: MessagePattern; own: string[]; rank: number }[]>()
  known.forEach(({ pattern, own }, rank) => {
    const [rarest] = [...own].sort((a, b) => (often.get(a) ?? 0) - (often.get(b) ?? 0))
    if (rarest === undefined) return
    const under = byWord.get(rarest)
    if (under) under.push({ pattern, own, rank })
    else byWord.set(rarest, [{ pattern, own, rank }])
  })
  return (sentence) => {
    const held = new Set(words(sentence))
    return [...held]
      .flatMap((word) => byWord.get(word) ?? [])
      .filter(({ own }) => own.every((word) => held.has(word)))
      .sort((a, b) => a.rank - b.rank)
      .map(({ pattern }) => pattern)
  }
}
