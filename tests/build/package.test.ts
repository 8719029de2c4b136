import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { build, Platform } from 'electron-builder'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { bundleIfStale } from '../../build/bundle.ts'
import { packaging } from '../../build/packaging.ts'
import { inProject, projectRoot } from '../../build/paths.ts'
import { readArchive, type ArchivedFile } from './readArchive.ts'
import { layOutElectron } from './standInElectron.ts'

const folder = mkdtempSync(join(tmpdir(), 'bracework-package-'))
const packed: { folder: string; files: ArchivedFile[] } = { folder: '', files: [] }
const paths = (): string[] => packed.files.map(({ path }) => path)
const compiledPart = `node_modules/better-sqlite3/prebuilds/linux-${process.arch}.node`

const electronVersion = (): string =>
  JSON.parse(readFileSync(inProject('package.json'), 'utf8')).devDependencies.electron

beforeAll(async () => {
  await bundleIfStale()
  layOutElectron(join(folder, 'electron'), electronVersion())
  await build({
    projectDir: projectRoot,
    targets: Platform.LINUX.createTarget('dir'),
    publish: 'never',
    config: {
      ...packaging,
      electronDist: join(folder, 'electron'),
      directories: { ...packaging.directories, output: join(folder, 'packed') },
    },
  })
  const name = readdirSync(join(folder, 'packed')).find((entry) => entry.endsWith('-unpacked'))
  packed.folder = join(folder, 'packed', name ?? '')
  packed.files = readArchive(join(packed.folder, 'resources', 'app.asar'))
})

afterAll(() => rmSync(folder, { recursive: true, force: true }))

test('the archive holds the program as it was built, byte for byte', () => {
  for (const path of [
    'build/out/main/main.cjs',
    'build/out/main/preload.cjs',
    'build/out/renderer/index.html',
    'build/out/gateSpec.schema.json',
    'build/out/migrations/0001-job-book.sql',
    'build/out/fonts/DejaVuSans.ttf',
    'build/out/fonts/DejaVuSans-LICENSE.txt',
    'build/out/fonts/IBMPlexSans_400Regular.ttf',
    'build/out/fonts/IBMPlexSans-LICENSE.txt',
  ]) {
    expect(paths()).toContain(path)
    const archived = packed.files.find((file) => file.path === path)
    expect(archived?.bytes.equals(readFileSync(inProject(path))), path).toBe(true)
  }
})

test('the archive starts at the main process', () => {
  const about = packed.files.find(({ path }) => path === 'package.json')?.bytes.toString('utf8') ?? ''
  const { main, name } = JSON.parse(about)
  expect(name).toBe('bracework')
  expect(paths()).toContain(main)
})

test('of all packages only the store is in it, with the files it runs by and no other', () => {
  const modules = paths().filter((path) => path.startsWith('node_modules/'))
  expect(modules.filter((path) => !path.startsWith('node_modules/better-sqlite3/lib/')).sort()).toEqual([
    'node_modules/better-sqlite3/LICENSE',
    'node_modules/better-sqlite3/package.json',
    compiledPart,
  ])
  expect(modules).toContain('node_modules/better-sqlite3/lib/index.js')
})

test('no source, no test, no tool and no book is in it', () => {
  expect([...new Set(paths().map((path) => path.split('/')[0]))].sort()).toEqual([
    'build',
    'node_modules',
    'package.json',
  ])
  const built = paths().filter((path) => path.startsWith('build/'))
  expect(built.filter((path) => !/^build\/out\/(main|renderer|fonts|migrations)\//.test(path))).toEqual([
    'build/out/gateSpec.schema.json',
  ])
  expect(paths().filter((path) => /\.(ts|vue|map|book|md|c|h|cpp)$/.test(path))).toEqual([])
})

test('only the store’s compiled part lies beside the archive, the same bytes as came with it', () => {
  expect(packed.files.filter(({ unpacked }) => unpacked).map(({ path }) => path)).toEqual([compiledPart])
  const beside = readFileSync(join(packed.folder, 'resources', 'app.asar.unpacked', compiledPart))
  expect(beside.equals(readFileSync(inProject(compiledPart)))).toBe(true)
})

test('nothing of Electron’s own first screen is left, and the program runs from the archive alone', () => {
  expect(existsSync(join(packed.folder, 'resources', 'default_app.asar'))).toBe(false)
  expect(existsSync(join(packed.folder, 'resources', 'app'))).toBe(false)
  const program = readFileSync(join(packed.folder, 'bracework'))
  const mark = Buffer.from('dL7pKGdnNz796PbbjQWNKmHXBZaB9tsX', 'latin1')
  const wire = program.toString('latin1', program.indexOf(mark) + mark.length + 2)
  const [runAsNode, cookies, nodeOptions, inspect, integrity, onlyArchive, , fileRights] = wire
  expect({ runAsNode, cookies, nodeOptions, inspect, integrity, onlyArchive, fileRights }).toEqual({
    runAsNode: '0',
    cookies: '1',
    nodeOptions: '0',
    inspect: '0',
    integrity: '1',
    onlyArchive: '1',
    fileRights: '0',
  })
})
