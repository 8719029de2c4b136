import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { parse } from 'vue/compiler-sfc'
import { inProject } from '../paths.ts'
import { scriptTexts } from './scriptTexts.ts'
import { templateTexts } from './templateTexts.ts'
import { silentFiles } from './whatCounts.ts'

/** The rooms whose words reach the joiner. */
const rooms = ['renderer', 'shared', 'electron', 'db']

/** Each message and the files it stands in, commas between. */
export type Messages = Record<string, string>

function filesUnder(folder: string): string[] {
  return readdirSync(inProject(folder), { withFileTypes: true }).flatMap((entry) => {
    const path = `${folder}/${entry.name}`
    if (entry.isDirectory()) return filesUnder(path)
    return /\.(ts|vue)$/.test(path) && !path.endsWith('.d.ts') ? [path] : []
  })
}

/** The messages of one source; file decides how it is read. */
export function textsOf(file: string, source: string): string[] {
  if (!file.endsWith('.vue')) return scriptTexts(source)
  const { descriptor } = parse(source, { filename: file })
  const template = descriptor.template?.ast
  const scripts = [descriptor.script, descriptor.scriptSetup].flatMap((script) =>
    script ? [script.content] : [],
  )
  return [...(template ? templateTexts(template) : []), ...scripts.flatMap((script) => scriptTexts(script))]
}

const byCode = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0)

/** All messages of the program as its sources have them now, in order. */
export function messagesNow(): Messages {
  const found = new Map<string, Set<string>>()
  for (const file of rooms.flatMap(filesUnder).sort(byCode)) {
    if (silentFiles.some((silent) => silent.test(file))) continue
    for (const text of textsOf(file, readFileSync(inProject(file), 'utf8')))
      found.set(text, (found.get(text) ?? new Set()).add(file))
  }
  return Object.fromEntries(
    [...found].sort(([a], [b]) => byCode(a, b)).map(([text, files]) => [text, [...files].join(', ')]),
  )
}

/** The file of the English messages: one a line, and after it the files it stands in. */
export const catalogueFile = 'shared/language/english.json'

/** What that file holds while the sources are as they are now. */
export const catalogueNow = (): string => `${JSON.stringify(messagesNow(), null, 2)}\n`

/** Writes the English messages where the sources have gone on since. Gives whether it wrote. */
export function writeCatalogue(): boolean {
  const text = catalogueNow()
  const path = inProject(catalogueFile)
  if (existsSync(path) && readFileSync(path, 'utf8') === text) return false
  writeFileSync(path, text)
  return true
}

if (import.meta.main)
  process.stdout.write(`${catalogueFile} ${writeCatalogue() ? 'written' : 'is as it should be'}.\n`)
