import { packageOf, targetOf, importsOf, type SourceFile } from './imports.ts'

/** Which rooms each room may use. The preload is a room of its own: it runs beside the page. */
const roomsFor: Readonly<Record<string, readonly string[]>> = {
  shared: ['shared'],
  db: ['shared', 'db'],
  renderer: ['shared', 'renderer'],
  electron: ['shared', 'db', 'electron'],
  preload: ['shared'],
  build: ['shared', 'db', 'electron', 'build'],
  tests: ['shared', 'db', 'renderer', 'electron', 'build', 'tests'],
}

/** Packages with a home: nobody else in the program may use them. */
const homes: readonly (readonly [name: RegExp, home: RegExp, homeInWords: string])[] = [
  [/^better-sqlite3$/, /^db\//, 'db/'],
  [/^(vue|pinia|reka-ui|@lucide\/vue)$/, /^renderer\//, 'renderer/'],
  [/^electron$/, /^electron\//, 'electron/'],
  [
    /^(pdf-lib|@pdf-lib\/fontkit|bidi-js)$/,
    /^electron\/(paintPdf\.ts|fonts\.ts|paint\/)/,
    'electron/paintPdf.ts and electron/paint/',
  ],
  [/^valibot$/, /^(shared|db|electron)\//, 'shared/, db/ and electron/'],
  [/^qr$/, /^shared\/papers\/labels\//, 'shared/papers/labels/'],
  [/^pdfjs-dist$/, /^renderer\/preview\//, 'renderer/preview/'],
  [/^papaparse$/, /^shared\/spreadsheet\//, 'shared/spreadsheet/'],
  [/^node:/, /^(db|electron)\//, 'db/ and electron/'],
]

/** Files that may take nothing of ours but what is named: the preload carries names, not parsers. */
const preloadMayUse = ['shared/requestNames.ts']

const roomOf = (path: string): string =>
  path === 'electron/preload.ts' ? 'preload' : (path.split('/')[0] ?? '')

const ofTools = (path: string): boolean => /^(build|tests)\//.test(path)

const packageFault = (path: string, specifier: string): string | undefined => {
  if (ofTools(path)) return undefined
  const name = packageOf(specifier)
  const known = homes.find(([pattern]) => pattern.test(name))
  if (!known) return `${path}: uses the package ${name}, which no room of the program may`
  return known[1].test(path) ? undefined : `${path}: uses ${name}, which belongs in ${known[2]}`
}

const roomFault = (path: string, target: string): string | undefined => {
  const room = roomOf(path)
  const other = target.split('/')[0] ?? ''
  if (room === 'preload' && other === 'shared' && !preloadMayUse.includes(target)) {
    return `${path}: the preload may use ${preloadMayUse.join(', ')} only, not ${target}`
  }
  if (roomsFor[room]?.includes(other)) return undefined
  if (room === 'tests' && target === 'package.json') return undefined
  return `${path}: ${room} may not use ${other === '' ? 'what lies outside the project' : target}`
}

const importFault = (path: string, specifier: string): string | undefined => {
  if (/^(\.\.\/){3}/.test(specifier)) return `${path}: climbs three folders with ${specifier}`
  const target = targetOf(path, specifier)
  return target === undefined ? packageFault(path, specifier) : roomFault(path, target)
}

/** What a file may not import, one line a fault. */
export const importFaults = (file: SourceFile): string[] =>
  importsOf(file)
    .map((specifier) => importFault(file.path, specifier))
    .filter((fault) => fault !== undefined)
