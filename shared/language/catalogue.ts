/**
 * Another language for the program's own words: its name in its own words, where its dates and numbers are from (a tag such as 'fr-FR'), and
 * for each English message what is said instead. Gaps {0}, {1} may come in another order. What isn't there stays English.
 */
export type Catalogue = { language: string; locale: string; messages: Record<string, string> }

/** A language that can be chosen: the tag it is kept under ('fr'), and its name. */
export type Offered = { tag: string; name: string }

/** A tag as a file of a language is named by: 'fr', 'de-AT'. */
export const isTag = (text: string): boolean => /^[a-z]{2,3}(-[A-Za-z0-9]{2,8})*$/.test(text)

/** The tag American words go under; British ones, the program's own, are ''. */
export const american = 'en-US'

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

function localeOf(asked: unknown, tag: string): string {
  try {
    return Intl.getCanonicalLocales(typeof asked === 'string' ? asked : tag)[0] ?? 'en-GB'
  } catch {
    return 'en-GB'
  }
}

/** A language's file as it was read, with what isn't words left out; undefined where it is no such file. tag is its file's name. */
export function catalogueOf(value: unknown, tag: string): Catalogue | undefined {
  if (!isRecord(value) || typeof value['language'] !== 'string' || !isRecord(value['messages']))
    return undefined
  const messages = Object.entries(value['messages']).filter(
    (entry): entry is [string, string] => typeof entry[1] === 'string' && entry[1] !== '',
  )
  return {
    language: value['language'].slice(0, 60),
    locale: localeOf(value['locale'], tag),
    messages: Object.fromEntries(messages),
  }
}
