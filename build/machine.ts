import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { delimiter, join } from 'node:path'

const browserNames = ['chromium', 'chromium-browser', 'google-chrome-stable', 'google-chrome']

const fixedPlaces = [
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe',
]

/** The path of a program found by name on the PATH, or undefined. */
export const programNamed = (name: string, path = process.env['PATH'] ?? ''): string | undefined =>
  path
    .split(delimiter)
    .filter((folder) => folder !== '')
    .map((folder) => join(folder, name))
    .find((candidate) => existsSync(candidate))

/** The Chromium the tests drive: where BRACEWORK_CHROMIUM says, else on the PATH, else in its usual place. */
export const chromiumPath = (): string | undefined => {
  const chosen = process.env['BRACEWORK_CHROMIUM']
  if (chosen) return existsSync(chosen) ? chosen : undefined
  return (
    browserNames.map((name) => programNamed(name)).find((path) => path !== undefined) ??
    fixedPlaces.find((path) => existsSync(path))
  )
}

/** Debian packages the tests want and this machine lacks: a browser, the painter of PDF pages as pictures, and the tracer that sees and breaks the book's writes. */
export const missingPackages = (): string[] => [
  ...(chromiumPath() === undefined ? ['chromium'] : []),
  ...(programNamed('pdftoppm') === undefined ? ['poppler-utils'] : []),
  ...(process.platform === 'linux' && programNamed('strace') === undefined ? ['strace'] : []),
]

const isRoot = (): boolean => process.getuid?.() === 0

const apt = (...args: string[]): boolean =>
  spawnSync('apt-get', args, {
    stdio: ['ignore', 2, 2],
    env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
  }).status === 0

/**
 * Installs what the tests need where that can be done without asking (root on a Debian kind of machine).
 * Gives one line on what must be installed by hand, or undefined when all is there.
 */
export const provideTestPrograms = (): string | undefined => {
  const missing = missingPackages()
  if (missing.length === 0) return undefined
  const names = missing.join(' ')
  const byHand = `These tests need ${names}: run "apt-get install ${names}" as root, or set BRACEWORK_CHROMIUM to a Chromium.`
  if (!isRoot() || programNamed('apt-get') === undefined) return byHand
  const installed = apt('update') && apt('install', '-y', '--no-install-recommends', ...missing)
  return installed && missingPackages().length === 0 ? undefined : byHand
}

/** One line on why this Node can't run the book's store, or undefined when it can. */
export const nodeFault = (napi = Number(process.versions['napi'])): string | undefined =>
  napi >= 10
    ? undefined
    : `The job book's store needs Node 22.14 or newer (Node-API 10); this is ${process.version}. Run it through npm.`
