const counts = [
  'no',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
]

/** A small number spelt out: 2 is 'two'; past twelve in figures. */
export const countWord = (count: number): string => counts[count] ?? String(count)

/** One thing with its article, several with their number: 'a latch', 'two hinges'. */
export const counted = (count: number, one: string, several = `${one}s`): string =>
  count === 1 ? `${/^[aeio]/.test(one) ? 'an' : 'a'} ${one}` : `${countWord(count)} ${several}`

/** Things in a row as they are said: 'a latch, a lock and a handle'. */
export function listed(things: readonly string[]): string {
  const last = things.at(-1) ?? ''
  return things.length < 2 ? last : `${things.slice(0, -1).join(', ')} and ${last}`
}

/** Words as a sentence opens with them. */
export const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1)
