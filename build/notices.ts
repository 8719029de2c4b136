import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { inProject, outFolder } from './paths.ts'

type Locked = { version: string; license?: string; dependencies?: Record<string, string> }

/** What of other people's is in the packed program; everything else in package.json is for making and testing it. */
export const shippedPackages = [
  '@expo-google-fonts/ibm-plex-sans',
  '@lucide/vue',
  '@pdf-lib/fontkit',
  'better-sqlite3',
  'bidi-js',
  'dejavu-fonts-ttf',
  'papaparse',
  'pdf-lib',
  'pinia',
  'qr',
  'reka-ui',
  'valibot',
  'vue',
]

/** A package of somebody else's, by the place it lies in. */
export type Shipped = { place: string; name: string; version: string; licence: string }

/** The place a package is found at when one at `from` asks for it: beside it, else further out. */
const placeOf = (packages: Record<string, Locked>, name: string, from: string): string | undefined => {
  for (let at = from; ; at = at.slice(0, Math.max(0, at.lastIndexOf('node_modules/') - 1))) {
    const place = `${at === '' ? '' : `${at}/`}node_modules/${name}`
    if (packages[place]) return place
    if (at === '') return undefined
  }
}

/** The shipped packages with all that they ask for in turn, by name. */
export const shippedWithTheirs = (): Shipped[] => {
  const { packages } = JSON.parse(readFileSync(inProject('package-lock.json'), 'utf8')) as {
    packages: Record<string, Locked>
  }
  const found = new Map<string, Shipped>()
  const take = (name: string, from: string): void => {
    const place = placeOf(packages, name, from)
    const locked = place === undefined ? undefined : packages[place]
    if (place === undefined || !locked || found.has(place)) return
    found.set(place, { place, name, version: locked.version, licence: locked.license ?? '' })
    for (const theirs of Object.keys(locked.dependencies ?? {})) take(theirs, place)
  }
  for (const name of shippedPackages) take(name, '')
  return [...found.values()].toSorted((a, b) => (a.place < b.place ? -1 : 1))
}

const licenceText = (place: string): string => {
  const folder = inProject(place)
  if (!existsSync(folder)) return ''
  const names = readdirSync(folder).filter((name) => /^(licen[cs]e|copying|notice)/i.test(name))
  return names.map((name) => readFileSync(join(folder, name), 'utf8').trim()).join('\n\n')
}

/** Puts the licences of everything shipped into one file, since most of them ask to travel with the program. */
export const writeNotices = (): void => {
  const parts = shippedWithTheirs().map(({ place, name, version, licence }) =>
    [`${name} ${version} (${licence})`, '', licenceText(place)].join('\n').trim(),
  )
  const head = 'Bracework is made with the work of others, each under its own licence:'
  writeFileSync(join(outFolder, 'notices.txt'), `${[head, ...parts].join('\n\n----\n\n')}\n`)
}
