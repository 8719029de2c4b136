import * as v from 'valibot'
import { isTag, type Catalogue, type Offered } from './catalogue.ts'

/** The tag of a language that has a file, or '' for British English, the program's own. */
export const languageTag = v.pipe(
  v.string('a language of the list'),
  v.maxLength(40, 'a language of the list'),
  v.check((tag) => tag === '' || isTag(tag), 'a language of the list'),
)

/** What the requests about languages take. */
export const languageTakes = {
  'language.offered': v.strictObject({}),
  'language.read': v.strictObject({ tag: languageTag }),
} as const

/** What they give; null: there is no such language here, or its file can't be read. */
export type LanguageReplies = {
  'language.offered': Offered[]
  'language.read': Catalogue | null
}
