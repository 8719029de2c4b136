import { lookUp } from '../../shared/language/lookUp.ts'
import { noteOwnWords, ownWords } from '../../shared/language/ownWords.ts'
import { request } from '../api.ts'
import { spoken } from './said.ts'

const remembered = 'bracework.language'

/** The tag of the language this window was last in; '' for British English. */
export const languageBefore = (): string => window.localStorage.getItem(remembered) ?? ''

const own = ownWords()

/** Notes what the book answered, so that no word a person wrote is ever taken for one of ours. Nothing is done in British English. */
function listenTo(answer: unknown): void {
  if (spoken.told) noteOwnWords(answer, own)
}

/** Has the window speak a language before its first page is drawn. Where it can't be read, British English stays. */
export async function speak(tag: string): Promise<void> {
  if (tag === '') return
  const found = await request('language.read', { tag })
  if (!found.ok || !found.value) return
  spoken.told = lookUp(found.value, own)
  spoken.locale = found.value.locale
  document.documentElement.lang = found.value.locale
  spoken.listen = listenTo
}

/**
 * Follows what the book says is spoken in the workshop: another language than this window's is remembered and the window opened again, since words
 * are looked up once. Gives whether it does.
 */
export function followLanguage(tag = ''): boolean {
  if (tag === languageBefore()) return false
  window.localStorage.setItem(remembered, tag)
  window.location.reload()
  return true
}
