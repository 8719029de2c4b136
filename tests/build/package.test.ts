import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { Arch, build, Platform } from 'electron-builder'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { bundleIfStale } from '../../build/bundle.ts'
import { fontFiles } from '../../build/copyAssets.ts'
import { packagingFor, type PackedPlatform } from '../../build/packaging.ts'
import { inProject, projectRoot } from '../../build/paths.ts'
import { jobFileEnding } from '../../shared/jobFileEnding.ts'
import { readArchive, type ArchivedFile } from './readArchive.ts'
import { layOutElectron } from './standInElectron.ts'

const folder = mkdtempSync(join(tmpdir(), 'bracework-package-'))

const electronVersion = (): string =>
  JSON.parse(readFileSync(inProject('package.json'), 'utf8')).devDependencies.electron

type Packed = {
  platform: PackedPlatform
  arch: 'x64' | 'arm64'
  target: Platform
  resources: string
  program: string
}

/** The kinds of machine, the folder of the packed program's resources, and the program that carries Electron's switches. */
const machines: readonly Packed[] = [
  { platform: 'linux', arch: 'x64', target: Platform.LINUX, resources: 'resources', program: 'bracework' },
  {
    platform: 'win32',
    arch: 'x64',
    target: Platform.WINDOWS,
    resources: 'resources',
    program: 'Bracework.exe',
  },
  {
    platform: 'darwin',
    arch: 'arm64',
    target: Platform.MAC,
    resources: 'Bracework.app/Contents/Resources',
    program: 'Bracework.app/Contents/Frameworks/Electron Framework.framework/Electron Framework',
  },
]

/**
 * Packs for one kind of machine around a stand-in for Electron. Signing, and the mark that Windows keeps in the program
 * itself, need a real program; both are left out here alone.
 */
const pack = async ({ platform, arch, target }: Packed): Promise<string> => {
  const packaging = packagingFor(platform)
  const electronDist = join(folder, platform, 'electron')
  layOutElectron(electronDist, electronVersion(), platform)
  await build({
    projectDir: projectRoot,
    targets: target.createTarget('dir', Arch[arch]),
    publish: 'never',
    config: {
      ...packaging,
      electronDist,
      win: { ...packaging.win, signAndEditExecutable: false },
      mac: { ...packaging.mac, identity: null },
      disableAsarIntegrity: platform === 'win32',
      directories: { ...packaging.directories, output: join(folder, platform, 'packed') },
    },
  })
  const made = readdirSync(join(folder, platform, 'packed')).find((entry) => /unpacked$|^mac/.test(entry))
  return join(folder, platform, 'packed', made ?? '')
}

beforeAll(async () => {
  await bundleIfStale()
})

afterAll(() => rmSync(folder, { recursive: true, force: true }))

describe.each(machines)('packed for $platform $arch', (machine) => {
  const { platform, arch, resources, program } = machine
  const compiledPart = `node_modules/better-sqlite3/prebuilds/${platform}-${arch}.node`
  const made: { at: string; files: ArchivedFile[] } = { at: '', files: [] }
  const paths = (): string[] => made.files.map(({ path }) => path)

  beforeAll(async () => {
    made.at = await pack(machine)
    made.files = readArchive(join(made.at, resources, 'app.asar'))
  })

  test('the archive holds the program as it was built, byte for byte', () => {
    for (const path of [
      'build/out/main/main.cjs',
      'build/out/main/preload.cjs',
      'build/out/renderer/index.html',
      'build/out/gateSpec.schema.json',
      'build/out/notices.txt',
      'build/out/migrations/0001-job-book.sql',
      'build/out/fonts/DejaVuSans.ttf',
      'build/out/fonts/DejaVuSans-LICENSE.txt',
      'build/out/fonts/IBMPlexSans_400Regular.ttf',
      'build/out/fonts/IBMPlexSans-LICENSE.txt',
    ]) {
      expect(paths()).toContain(path)
      const archived = made.files.find((file) => file.path === path)
      expect(archived?.bytes.equals(readFileSync(inProject(path))), path).toBe(true)
    }
  })

  test('the archive starts at the main process', () => {
    const about = made.files.find(({ path }) => path === 'package.json')?.bytes.toString('utf8') ?? ''
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
    expect(
      built.filter((path) => !/^build\/out\/(main|renderer|fonts|migrations|languages)\//.test(path)),
    ).toEqual(['build/out/gateSpec.schema.json', 'build/out/notices.txt'])
    expect(paths().filter((path) => /\.(ts|vue|map|book|md|c|h|cpp)$/.test(path))).toEqual([])
  })

  test('only the store’s compiled part lies beside the archive, the same bytes as came with it', () => {
    expect(made.files.filter(({ unpacked }) => unpacked).map(({ path }) => path)).toEqual([compiledPart])
    const beside = readFileSync(join(made.at, resources, 'app.asar.unpacked', compiledPart))
    expect(beside.equals(readFileSync(inProject(compiledPart)))).toBe(true)
  })

  test('nothing of Electron’s own first screen is left, and the program runs from the archive alone', () => {
    expect(existsSync(join(made.at, resources, 'default_app.asar'))).toBe(false)
    expect(existsSync(join(made.at, resources, 'app'))).toBe(false)
    const carrier = readFileSync(join(made.at, program))
    const mark = Buffer.from('dL7pKGdnNz796PbbjQWNKmHXBZaB9tsX', 'latin1')
    const wire = carrier.toString('latin1', carrier.indexOf(mark) + mark.length + 2)
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

  test('nothing a person or a tool left lying about is in it', () => {
    const odd = /(^|\/)(\.[^/]+|.*\.(log|lock|tmp|bak|pdf|svg\.map|test\.js))$/
    expect(paths().filter((path) => odd.test(path))).toEqual([])
    const bytes = made.files.reduce((sum, { bytes: { length } }) => sum + length, 0)
    expect(bytes).toBeGreaterThan(1_000_000)
    expect(bytes).toBeLessThan(12_000_000)
    expect(made.files.filter(({ bytes: { length }, unpacked }) => length === 0 && !unpacked)).toEqual([])
  })

  test('every face and every step of the book is in it', () => {
    for (const file of fontFiles) expect(paths()).toContain(`build/out/fonts/${file.split('/').at(-1)}`)
    for (const step of readdirSync(inProject('db/migrations')))
      expect(paths()).toContain(`build/out/migrations/${step}`)
  })
})

test('a file that holds one job opens the program, on every kind of machine', () => {
  const [jobFile] = [packagingFor('win32').fileAssociations ?? []].flat()
  expect(jobFile).toMatchObject({ ext: jobFileEnding, role: 'Editor' })
  expect(jobFileEnding).toMatch(/^[a-z-]+$/)
  const plist = readFileSync(
    join(folder, 'darwin', 'packed', 'mac-arm64', 'Bracework.app', 'Contents', 'Info.plist'),
    'utf8',
  )
  expect(plist).toMatch(
    new RegExp(`<key>CFBundleTypeExtensions</key>\\s*<array>\\s*<string>${jobFileEnding}</string>`),
  )
})

test('taking the program off a machine leaves the job book where it is', () => {
  expect(packagingFor('win32').nsis).toMatchObject({ deleteAppDataOnUninstall: false, perMachine: false })
})
