/** A message with gaps, ready to know a finished sentence again. */
export type MessagePattern = { message: string; gaps: number[]; matcher: () => RegExp }

const gap = /\{(\d+)\}/g
const words = (text: string): string[] => text.toLowerCase().match(/[\p{L}\p{M}’']+/gu) ?? []

/** A whole word of a message that no gap touches, the longest: a sentence without it isn't made from that message. */
function anchorOf(message: string): string | undefined {
  const whole = message.replace(/[\p{L}\p{M}’']*\{\d+\}[\p{L}\p{M}’']*/gu, ' ')
  return words(whole).sort((a, b) => b.length - a.length)[0]
}

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
 * Finds the messages with gaps that a finished sentence may be made from, those with most words of their own first. Each is kept under one of its words,
 * so that a sentence is held against a few of the thousands only. A message with no whole word of its own can't be told and is left out.
 */
export function messagePatterns(messages: readonly string[]): (sentence: string) => MessagePattern[] {
  const byWord = new Map<string, MessagePattern[]>()
  for (const message of messages) {
    const anchor = message.includes('{0}') ? anchorOf(message) : undefined
    if (anchor === undefined) continue
    const known = byWord.get(anchor)
    if (known) known.push(patternOf(message))
    else byWord.set(anchor, [patternOf(message)])
  }
  return (sentence) =>
    [...new Set(words(sentence))]
      .flatMap((word) => byWord.get(word) ?? [])
      .sort((a, b) => fixedLength(b.message) - fixedLength(a.message))
}
