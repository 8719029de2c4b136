import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { inAmerican } from '../shared/language/americanWords.ts'
import { american, catalogueOf, isTag, type Catalogue, type Offered } from '../shared/language/catalogue.ts'

/** The languages at hand: each a file named by its tag (fr.json) in the program's folder of languages or in the book's. */
export type Languages = { offered: () => Offered[]; read: (tag: string) => Catalogue | undefined }

/** Beside the built program, else among the sources. */
const folders = ['../languages/', '../shared/language/'].map((path) =>
  fileURLToPath(new URL(path, import.meta.url)),
)

/** Where the languages that come with the program lie. */
export const shippedLanguages = folders.find((folder) => existsSync(join(folder, 'english.json'))) ?? ''

/** The English messages themselves, with where each stands. They are no other language. */
const english = 'english'

/** A language's file is read up to this size, bytes: twenty times the English one. */
const largest = 8_000_000

/** A file of a folder as it stands; undefined where it isn't there, is too large or isn't written as such files are. */
function readFile(path: string): unknown {
  try {
    return statSync(path).size > largest
      ? undefined
      : JSON.parse(readFileSync(path, 'utf8').replace(/^\uFEFF/, ''))
  } catch {
    return undefined
  }
}

const namesIn = (folder: string): string[] => {
  try {
    return readdirSync(folder).filter((name) => name.endsWith('.json'))
  } catch {
    return []
  }
}

/** American words, made from the English messages by the table of the trade's words. */
function americanCatalogue(folder: string): Catalogue | undefined {
  const messages = readFile(join(folder, `${english}.json`))
  if (typeof messages !== 'object' || messages === null) return undefined
  const told = Object.keys(messages).map((message) => [message, inAmerican(message)])
  return { language: 'American', locale: american, messages: Object.fromEntries(told) }
}

const stampOf = (path: string): number => {
  try {
    return statSync(path).mtimeMs
  } catch {
    return 0
  }
}

/**
 * The languages of some folders, those of later ones in front of those before. A file that can't be read is no language: the program goes on in English.
 * Each is read when wanted, and again only once its file has changed.
 */
export function languagesFrom(from: readonly string[]): Languages {
  const [shipped = ''] = from
  const kept = new Map<string, { stamp: number; catalogue: Catalogue | undefined }>()

  const fileOf = (tag: string): string => {
    const found = [...from].reverse().map((folder) => join(folder, `${tag}.json`))
    return found.find((path) => existsSync(path)) ?? join(shipped, `${english}.json`)
  }
  const load = (tag: string, path: string): Catalogue | undefined =>
    path.endsWith(`${english}.json`)
      ? tag === american
        ? americanCatalogue(shipped)
        : undefined
      : catalogueOf(readFile(path), tag)

  function read(tag: string): Catalogue | undefined {
    if (!isTag(tag) || tag === english) return undefined
    const path = fileOf(tag)
    const stamp = stampOf(path)
    const known = kept.get(tag)
    if (known?.stamp === stamp) return known.catalogue
    const catalogue = load(tag, path)
    kept.set(tag, { stamp, catalogue })
    return catalogue
  }
  function offered(): Offered[] {
    const tags = new Set([american, ...from.flatMap(namesIn).map((name) => name.slice(0, -5))])
    return [...tags].flatMap((tag) => {
      const found = read(tag)
      return found ? [{ tag, name: found.language }] : []
    })
  }
  return { offered, read }
}
