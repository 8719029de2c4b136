import { readFileSync } from 'node:fs'
import { inProject } from '../../build/paths.ts'
import type { Catalogue } from '../../shared/language/catalogue.ts'

const plain = 'aceinorsuyAEIOUSCN'
const accented = 'áçéíñóřšúýÁÉÍÓÚŠÇŇ'

/** Brackets that no text of the program has: what stands between them was looked up. */
export const [open, close] = ['⟦', '⟧']

/** A message of a language nobody speaks: a third longer, its letters accented, in brackets. Its gaps stay. */
export function pseudoOf(message: string): string {
  const letters = message
    .split(/(\{\d+\})/)
    .map((part) =>
      part.startsWith('{')
        ? part
        : [...part].map((letter) => accented[plain.indexOf(letter)] ?? letter).join(''),
    )
  const longer = '~'.repeat(Math.ceil(message.replace(/\{\d+\}/g, '').length / 3))
  return `${open}${letters.join('')}${longer}${close}`
}

export const englishMessages = (): string[] =>
  Object.keys(
    JSON.parse(readFileSync(inProject('shared/language/english.json'), 'utf8')) as Record<string, string>,
  )

/** The whole catalogue of that language. */
export const pseudoCatalogue = (): Catalogue => ({
  language: 'Tryout',
  locale: 'en-GB',
  messages: Object.fromEntries(englishMessages().map((message) => [message, pseudoOf(message)])),
})

/**
 * Words of a shown text that weren't looked up: whatever was has an accent on every letter that can take one. ex, 36 and mm can't be told
 * from English and are left out.
 */
export const plainWords = (text: string): string[] =>
  (text.match(/[\p{L}’]+/gu) ?? []).filter(
    (word) => word.length > 1 && [...word].some((letter) => plain.includes(letter)),
  )
