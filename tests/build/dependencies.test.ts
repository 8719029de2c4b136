import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { shippedPackages, shippedWithTheirs } from '../../build/notices.ts'
import { inProject } from '../../build/paths.ts'

const page = readFileSync(inProject('build/dependencies.md'), 'utf8')
const about = JSON.parse(readFileSync(inProject('package.json'), 'utf8'))
const lock: Record<string, { license?: string; hasInstallScript?: boolean }> = JSON.parse(
  readFileSync(inProject('package-lock.json'), 'utf8'),
).packages

type Row = { name: string; version: string; licence: string; what: string; upkeep: string }

const rowsUnder = (heading: string): Row[] => {
  const part = page.split(`## ${heading}`)[1]?.split('\n## ')[0] ?? ''
  return part
    .split('\n')
    .filter((line) => line.startsWith('| ') && !/^\| (package|---)/.test(line))
    .map((line) => line.split('|').map((cell) => cell.trim()))
    .map(([, name = '', version = '', licence = '', what = '', upkeep = '']) => ({
      name,
      version,
      licence,
      what,
      upkeep,
    }))
}

const rows = [...rowsUnder('Shipped'), ...rowsUnder('For making and testing it')]

/** Licences that let anybody use, change and pass on; the last ones of this list come with words of their own. */
const open =
  /^\(?(MIT|ISC|0BSD|BSD-[23]-Clause|Apache-2\.0|BlueOak-1\.0\.0|MPL-2\.0|Python-2\.0|Unlicense|WTFPL|OFL-1\.1|CC0-1\.0|Zlib)( (AND|OR) (MIT|ISC|Apache-2\.0|OFL-1\.1|CC0-1\.0|Zlib))*\)?$/

test('the page has each package of package.json once, at its version, and no other', () => {
  const named = { ...about.dependencies, ...about.devDependencies }
  expect(rows.map(({ name, version }) => `${name} ${version}`).sort()).toEqual(
    Object.entries(named)
      .map(([name, version]) => `${name} ${version}`)
      .sort(),
  )
})

test('each licence is the one that stands in the package’s own folder, and what it is for and its upkeep are told', () => {
  for (const { name, licence, what, upkeep } of rows) {
    const { license } = JSON.parse(readFileSync(inProject(`node_modules/${name}/package.json`), 'utf8'))
    expect([name, licence]).toEqual([name, license])
    expect(what.length, name).toBeGreaterThan(4)
    expect(upkeep, name).toMatch(/kept up|quiet|upkeep/)
  }
})

test('what is shipped is what the screens, the book and the papers are made with', () => {
  expect(rowsUnder('Shipped').map(({ name }) => name)).toEqual(shippedPackages)
})

test('every package there is, theirs too, is under an open licence', () => {
  const closed = Object.entries(lock)
    .filter(([place, { license = '' }]) => place !== '' && !open.test(license))
    .map(([place]) => place)
  // The letters of DejaVu: their own free licence and Bitstream Vera's, both packed beside them.
  expect(closed).toEqual(['node_modules/dejavu-fonts-ttf'])
})

test('the counts on the page are the counts there are', () => {
  const all = Object.keys(lock).filter((place) => place !== '').length
  const named = Object.keys(about.dependencies).length + Object.keys(about.devDependencies).length
  const theirs = shippedWithTheirs().length
  expect(page).toContain(
    `${named} packages are named in package.json, ${shippedPackages.length} of them shipped; with what they ask for in turn ${all} and ${theirs}.`,
  )
})

test('only the packages that the page names run anything on installing', () => {
  const scripts = Object.entries(lock).filter(([, { hasInstallScript }]) => hasInstallScript)
  const names = scripts.map(([place]) => place.replace('node_modules/', '')).sort()
  // Some versions of npm take better-sqlite3's recipe for building it for a script of its own; it is refused either way.
  expect(names.filter((name) => name !== 'better-sqlite3')).toEqual(['electron-winstaller', 'node'])
  expect(about.allowScripts).toMatchObject({
    ...{ node: true, 'electron-winstaller': false, 'better-sqlite3': false },
  })
})

test('the notices name each shipped package, and hold the text of its licence', () => {
  const notices = readFileSync(inProject('build/out/notices.txt'), 'utf8')
  for (const { name, version, licence } of shippedWithTheirs())
    expect(notices).toContain(`${name} ${version} (${licence})`)
  const parts = notices.split('\n----\n').slice(1)
  const bare = parts.filter((part) => part.trim().split('\n').length < 4).map((part) => part.trim())
  process.stdout.write(`packages shipped without a licence text of their own: ${bare.join(', ') || 'none'}\n`)
  expect(bare.length).toBeLessThanOrEqual(8)
})
