import { countWord } from './countWords.ts'
import type { Telling } from './described.ts'

/** The finish put on at the workshop, or that it is left bare; nothing where nothing is known of it. */
export function finishWords({ finish, kind }: Telling): string[] {
  if (finish === undefined) return []
  if (finish === null)
    return [`${kind === 'pair' ? 'They are' : 'It is'} left bare, for you to finish as you like.`]
  const coats = `${countWord(finish.coats)} ${finish.coats === 1 ? 'coat' : 'coats'}`
  return [`Finished at the workshop with ${coats} of ${finish.name}.`]
}
