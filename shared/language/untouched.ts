/** Signs nobody types, one for each of a person's words in a text while it is looked up (Unicode's private use). */
const firstSign = 0xe100

/** Changes a text but for some words in it, which come through as they are. */
export function untouched(text: string, words: readonly string[], change: (text: string) => string): string {
  if (words.length === 0) return change(text)
  const sign = (at: number) => String.fromCharCode(firstSign + at)
  const changed = change(words.reduce((rest, word, at) => rest.replaceAll(word, sign(at)), text))
  return words.reduce((rest, word, at) => rest.replaceAll(sign(at), word), changed)
}
